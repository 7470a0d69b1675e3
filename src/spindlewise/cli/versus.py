"""`spindlewise versus`: two products side by side for a buyer."""

from typing import Annotated

import typer

from spindlewise.cli.asked import (
    BothSides,
    Budget,
    Currency,
    Order,
    Present,
    Receivers,
    Region,
    RiderMass,
    Statements,
    Weights,
    asking_buyer,
)
from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.opening import known_product, open_desk
from spindlewise.cli.options import AsOf, BuyerName, Catalog, Json, common
from spindlewise.cli.printing import answer, page


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("versus")(versus)


def versus(
    ctx: typer.Context,
    first: Annotated[str, typer.Argument(metavar="A", help="One product.")],
    second: Annotated[str, typer.Argument(metavar="B", help="The other.")],
    buyer: BuyerName = None,
    budget: Budget = None,
    region: Region = None,
    currency: Currency = None,
    receiver: Receivers = None,
    weights: Weights = None,
    order: Order = None,
    rider_mass: RiderMass = None,
    both_sides: BothSides = False,
    present: Present = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Set two products side by side for one buyer.

    Who gains where, at which price each would score as much, and what changing from A to B does to the bike.
    """
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.versus import versus as compared
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_versus import SCHEMA, versus_json
    from spindlewise.render.words_versus import versus_blocks

    names = [known_product(name, desk.catalog) for name in (first, second)]
    if names[0] == names[1]:
        wrong_usage(f"{first} is named twice; name two different products")
    stated = Statements(
        buyer, budget, region, currency, receiver, weights, order, rider_mass, both_sides, present
    )
    found = compared(desk, asking_buyer(stated, desk.catalog), names[0], names[1])
    if asked.json:
        answer(as_json(SCHEMA, versus_json(found)))
    else:
        page(versus_blocks(desk.catalog, found))
