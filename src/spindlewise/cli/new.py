"""`spindlewise new`: a commented starting file, or a whole catalog to start from; nothing is overwritten."""

import re
from pathlib import Path
from typing import Annotated

import typer

from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.opening import demo_folder, own_folder
from spindlewise.cli.options import Catalog, common
from spindlewise.cli.printing import answer

STARTS = Path(__file__).parent / "starts"
LONGEST_ID = 60


def add_to(app: typer.Typer) -> None:
    """Add the group of commands."""
    group = typer.Typer(
        no_args_is_help=True,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        help="Start a product, a buyer or a catalog.",
    )
    group.command("product")(product)
    group.command("buyer")(buyer)
    group.command("catalog")(catalog)
    app.add_typer(group, name="new")


Name = Annotated[str, typer.Argument(metavar="NAME", help="Its name; the id is made from it.")]


def product(ctx: typer.Context, name: Name, catalog: Catalog = None) -> None:
    """Write products/ID.yaml with every key explained."""
    folder = own_folder(common(ctx, catalog).catalog)
    identifier = id_from(name)
    template = folder / "TEMPLATE.yaml"
    text = (template if template.is_file() else demo_folder() / "TEMPLATE.yaml").read_text("utf-8")
    _write(folder / "products" / f"{identifier}.yaml", product_text(text, identifier, name))


def product_text(template: str, identifier: str, name: str) -> str:
    """The catalog's template under this id and name."""
    text = re.sub(r"(?m)^id: .*$", f"id: {identifier}", template, count=1)
    text = re.sub(r"(?m)^name: .*$", lambda _: f"name: {_quoted(name)}", text, count=1)
    # a bench file that is not there yet is an error, so the example's figures name no file
    text = re.sub(r"source: bench/[a-z]+\.csv, ", "source: own bench, ", text)
    return text.replace("$schema=../schemas/", "$schema=../../schemas/", 1)


def buyer(ctx: typer.Context, name: Name, catalog: Catalog = None) -> None:
    """Write buyers/ID.yaml with every key explained."""
    folder = own_folder(common(ctx, catalog).catalog)
    identifier = id_from(name)
    text = (STARTS / "buyer.yaml").read_text("utf-8")
    text = text.replace("id: example-buyer", f"id: {identifier}", 1)
    text = text.replace("name: Example Buyer", f"name: {_quoted(name)}", 1)
    _write(folder / "buyers" / f"{identifier}.yaml", text)


def catalog(name: Annotated[str, typer.Argument(metavar="DIR", help="The folder to make.")]) -> None:
    """Make a folder that checks without errors and can be filled."""
    folder, demo = Path(name), demo_folder()
    template = (demo / "TEMPLATE.yaml").read_text("utf-8")
    files = {
        "catalog.yaml": (STARTS / "catalog.yaml").read_text("utf-8"),
        "criteria.yaml": (demo / "criteria.yaml").read_text("utf-8"),
        "TEMPLATE.yaml": template,
        "products/example-pedal.yaml": product_text(template, "example-pedal", "Example Pedal"),
        "prices.csv": (STARTS / "prices.csv").read_text("utf-8"),
        "rates.csv": "date,base,quote,rate\n",
        "taxes.csv": "date,region,rate_pct,habit\n2025-01-01,EU,20,in\n",
        "buyers/example-buyer.yaml": (STARTS / "buyer.yaml").read_text("utf-8"),
    }
    if folder.exists() and any(folder.iterdir() if folder.is_dir() else (folder,)):
        from spindlewise.catalog.durable import CannotWrite

        raise CannotWrite(f"{folder}: stands there already and is not overwritten")
    for path, text in files.items():
        _write(folder / path, text)


def id_from(name: str) -> str:
    """An id made from a name: lower case, hyphens for whatever is no letter or digit.

    >>> id_from("Brisk Nine / left")
    'brisk-nine-left'
    """
    identifier = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")[:LONGEST_ID].rstrip("-")
    if len(identifier) < 2 or not name.isprintable():
        wrong_usage(f"no id can be made from {name[:60]!r}; use two letters or digits at least")
    return identifier


def _quoted(name: str) -> str:
    return name if re.fullmatch(r"[A-Za-z][A-Za-z0-9 ]*", name) else f"'{name.replace(chr(39), chr(39) * 2)}'"


def _write(path: Path, text: str) -> None:
    from spindlewise.catalog.durable import CannotWrite, create_file, reason

    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{path.parent}: {reason(error)}") from error
    create_file(path, text.encode())
    answer(f"{path}\n")
