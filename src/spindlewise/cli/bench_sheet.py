"""`spindlewise bench sheet`: what to note before a ride, as a ride.yaml to fill in or a page to print."""

from pathlib import Path
from typing import Annotated

import typer

from spindlewise.cli.bench_out import make_folder
from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.opening import known_product, open_desk
from spindlewise.cli.options import AsOf, Catalog, common
from spindlewise.cli.printing import answer, remark

PRINTS = ("text", "html")


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("sheet")(sheet)


def sheet(
    ctx: typer.Context,
    product: Annotated[str, typer.Argument(metavar="PRODUCT", help="The product that will be ridden.")],
    beside: Annotated[
        list[str] | None,
        typer.Option(
            metavar="KIND",
            help="Another meter on the bike: pedals, crank, spider, hub or trainer; may be repeated, and the "
            "first is the reference. Without it: spider.",
        ),
    ] = None,
    as_print: Annotated[
        str | None, typer.Option("--print", metavar="|".join(PRINTS), help="A page to print instead of YAML.")
    ] = None,
    output: Annotated[
        Path | None, typer.Option("--output", "-o", metavar="FILE", help="Write it here, as a new file.")
    ] = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
) -> None:
    """Begin the sheet of a ride.

    Firmware, battery, zero offset of each side, temperature, crank length set, the torque as the maker says
    it: what nobody notes before a ride nobody knows after it.
    """
    asked = common(ctx, catalog, as_of)
    desk = open_desk(asked)
    from spindlewise.answer.bench_sheet import KINDS, pre_test
    from spindlewise.catalog.durable import create_file
    from spindlewise.render.as_print import as_print as printed
    from spindlewise.render.as_text import as_text
    from spindlewise.render.words_sheet import sheet_blocks
    from spindlewise.render.yaml_sheet import sheet_yaml

    if as_print is not None and as_print not in PRINTS:
        wrong_usage(f"--print {as_print!r} is not known; choose one of {', '.join(PRINTS)}")
    found = desk.catalog.products[known_product(product, desk.catalog)]
    others = beside or ["spider"]
    strangers = [kind for kind in others if kind not in KINDS]
    if strangers:
        wrong_usage(f"--beside {strangers[0]!r} is no kind of meter; choose of {', '.join(KINDS)}")
    if found.kind != "power pedal":
        wrong_usage(f"{found.id} is a plain pedal and reads no power; name a power pedal")
    begun = pre_test(found, desk.day, others)
    if as_print is None:
        text = sheet_yaml(begun)
    elif as_print == "text":
        text = as_text(sheet_blocks(begun))
    else:
        text = printed(sheet_blocks(begun), f"Before the ride: {found.maker} {found.name}")
    if output is None:
        answer(text)
    else:
        make_folder(output.parent)
        create_file(output, text.encode())
        remark(f"{output} written.")
