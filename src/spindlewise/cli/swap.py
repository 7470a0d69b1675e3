"""`spindlewise swap`: what changes on the bike when one product takes the place of another."""

from typing import Annotated

import typer

from spindlewise.cli.endings import NO_ANSWER
from spindlewise.cli.opening import known_product, open_buyer, open_desk
from spindlewise.cli.options import AsOf, BuyerName, Catalog, Json, common
from spindlewise.cli.printing import answer, page


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("swap")(swap)


def swap(
    ctx: typer.Context,
    old: Annotated[str, typer.Argument(metavar="OLD", help="The product on the bike today.")],
    new: Annotated[str, typer.Argument(metavar="NEW", help="The product that takes its place.")],
    buyer: BuyerName = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say what a swap does to the bike.

    Saddle height, stance width, weight, the tools that it takes, and cautions.

    Cranks, shoes and saddle height come from the buyer; without one they stay as they are.
    """
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.swap_asked import swap_asked
    from spindlewise.fit.saddle import SaddleChange
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_swap import SCHEMA, swap_asked_json
    from spindlewise.render.naming import naming
    from spindlewise.render.words_rank import notice_of_invention
    from spindlewise.render.words_swap import swap_blocks

    products, cautions = desk.catalog.products, desk.catalog.settings.cautions
    before, after = (products[known_product(name, desk.catalog)] for name in (old, new))
    who = open_buyer(buyer, desk.catalog) if buyer else None
    found = swap_asked(before, after, desk.day, who, cautions)
    if asked.json:
        answer(as_json(SCHEMA, swap_asked_json(found)))
    else:
        page((*swap_blocks(found, naming(desk.catalog)), *notice_of_invention(desk.catalog)))
    if not isinstance(found.swap.saddle, SaddleChange):
        raise typer.Exit(NO_ANSWER)
