"""Opens what a command works on: the catalog's folder, the desk on its day, a buyer."""

import os
from datetime import date, datetime
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from spindlewise.cli.endings import bad_data, cannot, wrong_usage
from spindlewise.cli.options import Common
from spindlewise.problems import quoted

if TYPE_CHECKING:
    from spindlewise.answer.desk import Desk
    from spindlewise.buyer.buyer import Buyer
    from spindlewise.catalog.catalog import Catalog
    from spindlewise.catalog.shelf import Shelf


def catalog_folder(stated: Path | None) -> Path:
    """The folder stated, else ./catalog if a catalog is there, else the demo."""
    if stated is not None:
        return stated
    here = Path("catalog")
    return here if (here / "catalog.yaml").is_file() else demo_folder()


def own_folder(stated: Path | None) -> Path:
    """The folder to write into: the one stated, else ./catalog; never the demo, which is not the user's."""
    folder = catalog_folder(stated)
    if stated is None and folder == demo_folder():
        wrong_usage(
            "there is no catalog in this folder to write into; name one with --catalog, or begin one with "
            "`spindlewise new catalog DIR`"
        )
    return folder


def demo_folder() -> Path:
    """The demo: packed into an installed package, else the repository's own folder."""
    packed = Path(str(files("spindlewise") / "demo_catalog"))
    return packed if packed.is_dir() else Path(__file__).resolve().parents[3] / "catalog"


def open_desk(asked: Common) -> "Desk":
    """The desk on the day that holds; ends the command where the catalog has errors."""
    from spindlewise.answer.desk import Desk
    from spindlewise.catalog.kept import open_kept

    catalog, problems = open_kept(catalog_folder(asked.catalog), shelf())
    if catalog is None:
        bad_data(problems)
    return Desk(catalog, reading_day(catalog, asked.as_of))


def shelf() -> "Shelf | None":
    """Where catalogs that were read are kept between runs: in the user's cache folder (XDG base directories).

    None where SPINDLEWISE_KEEP=no says so, or where there is no such folder.
    """
    from spindlewise.catalog.shelf import Shelf

    if os.environ.get("SPINDLEWISE_KEEP") == "no" or not hasattr(os, "geteuid"):
        return None
    home = os.environ.get("HOME", "")
    for cache in (Path(os.environ.get("XDG_CACHE_HOME", "")), Path(home, ".cache")):
        if cache.is_absolute():  # a relative one is to be ignored
            return Shelf(cache / "spindlewise")
    return None


def reading_day(catalog: "Catalog", stated: date | None) -> date:
    """The day stated, else the day that the catalog pins, else today."""
    pinned = catalog.settings.as_of
    if stated is not None:
        return stated
    return today() if isinstance(pinned, str) else pinned


def today() -> date:
    """Today, where the user is."""
    return datetime.now().astimezone().date()


def open_buyer(name: str, catalog: "Catalog") -> "Buyer":
    """A buyer by the path of a file or by id; ends the command where there is none or it has errors."""
    from spindlewise.answer.asking import buyer_problems
    from spindlewise.buyer.buyer import Buyer
    from spindlewise.catalog.reading import read_record

    path = buyer_path(name, catalog.folder)
    buyer, document, problems = read_record(Buyer, path)
    if buyer is not None and document is not None:
        problems += buyer_problems(catalog, buyer, document)
    if buyer is None or any(problem.level == "error" for problem in problems):
        bad_data(problems)
    return buyer


def buyer_path(name: str, folder: Path) -> Path:
    """Where the buyer's file is: an id means one of the catalog's own."""
    from spindlewise.answer.stated import did_you_mean

    if name.endswith((".yaml", ".yml")) or "/" in name or "\\" in name:
        path = Path(name)
        if not path.is_file():
            cannot(f"{name}: there is no such file")
        return path
    path = folder / "buyers" / f"{name}.yaml"
    known = [each.stem for each in (folder / "buyers").glob("*.yaml")]
    if name not in known:
        wrong_usage(f"the catalog has no buyer {quoted(name)}; {did_you_mean(name, known)}")
    return path


def known_product(name: str, catalog: "Catalog") -> str:
    """The product's id, if the catalog has it; ends the command with the near one otherwise."""
    from spindlewise.answer.stated import did_you_mean

    if name not in catalog.products:
        demo = " (this is the demo; --catalog names yours)" if catalog.folder == demo_folder() else ""
        near = did_you_mean(name, catalog.products)
        wrong_usage(f"the catalog has no product {quoted(name)}{demo}; {near}")
    return name
