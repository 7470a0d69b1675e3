"""`spindlewise price history`: what a product has cost."""

from typing import Annotated

import typer

from spindlewise.cli.opening import known_product, open_desk
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer, page


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("history")(history)


def history(
    ctx: typer.Context,
    product: Annotated[str, typer.Argument(metavar="PRODUCT", help="The product's id.")],
    region: Annotated[
        str | None, typer.Option(metavar="CODE", help="Only prices seen in this region.")
    ] = None,
    whole: Annotated[
        bool, typer.Option("--all", help="Show every price, not the newest and those in force alone.")
    ] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say what a product has cost, and which prices hold."""
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.price_record import price_record
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_prices import HISTORY_SCHEMA, history_json
    from spindlewise.render.words_prices import history_blocks

    name, day = known_product(product, desk.catalog), desk.day.isoformat()
    lines = price_record(desk.catalog.prices, name, desk.day)
    lines = tuple(line for line in lines if region is None or line.row.region == region.upper())
    if asked.json:
        answer(as_json(HISTORY_SCHEMA, history_json(name, lines, day)))
    else:
        page(history_blocks(desk.catalog, name, lines, day, whole))
