"""`spindlewise ladder`: what each gram saved costs."""

from typing import Annotated

import typer

from spindlewise.cli.asked import Budget, Currency, Region, Statements, asking_buyer
from spindlewise.cli.opening import known_product, open_desk
from spindlewise.cli.options import AsOf, BuyerName, Catalog, Json, common
from spindlewise.cli.printing import answer, page


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("ladder")(ladder)


def ladder(
    ctx: typer.Context,
    buyer: BuyerName = None,
    budget: Budget = None,
    region: Region = None,
    currency: Currency = None,
    start: Annotated[
        str | None,
        typer.Option("--from", metavar="PRODUCT", help="Start here in place of the buyer's present pedals."),
    ] = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say what each gram saved costs.

    From the present pedals up, only the steps that are worth their price.
    """
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.ladder import climb
    from spindlewise.answer.ranking import rank
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_ladder import SCHEMA, ladder_json
    from spindlewise.render.naming import naming
    from spindlewise.render.words_ladder import ladder_blocks
    from spindlewise.render.words_rank import notice_of_invention

    baseline = known_product(start, desk.catalog) if start else None
    stated = Statements(buyer=buyer, budget=budget, region=region, currency=currency)
    who = asking_buyer(stated, desk.catalog)
    found = climb(desk, rank(desk, who), baseline)
    if asked.json:
        answer(as_json(SCHEMA, ladder_json(found)))
    else:
        noticed = desk.market(who.region, who.currency).held_back
        blocks = ladder_blocks(found, naming(desk.catalog), noticed)
        page((*blocks, *notice_of_invention(desk.catalog)))
