"""`spindlewise price at`: the ranking at a price that is not yet true."""

from typing import Annotated

import typer

from spindlewise.cli.asked import (
    BothSides,
    Budget,
    Order,
    Receivers,
    Region,
    RiderMass,
    Statements,
    Weights,
    amount_from,
    asking_buyer,
)
from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.opening import known_product, open_desk
from spindlewise.cli.options import AsOf, BuyerName, Catalog, Json, common
from spindlewise.cli.printing import answer, page


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("at")(at)


def at(
    ctx: typer.Context,
    product: Annotated[str, typer.Argument(metavar="PRODUCT", help="The product's id.")],
    amount: Annotated[str, typer.Argument(metavar="AMOUNT", help="The price, tax in.")],
    currency: Annotated[
        str | None, typer.Option(metavar="CODE", help="Of the price; without it the buyer's.")
    ] = None,
    buyer: BuyerName = None,
    budget: Budget = None,
    region: Region = None,
    receiver: Receivers = None,
    weights: Weights = None,
    order: Order = None,
    rider_mass: RiderMass = None,
    both_sides: BothSides = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Rank at a price that is not yet true; nothing is written."""
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.break_evens import break_evens
    from spindlewise.answer.price_change import at_price, price_change
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_prices import CHANGE_SCHEMA, change_json
    from spindlewise.render.naming import naming
    from spindlewise.render.words_prices import change_blocks
    from spindlewise.units import money_text, to_minor_unit

    name = known_product(product, desk.catalog)
    stated = Statements(
        buyer=buyer,
        budget=budget,
        region=region,
        receivers=receiver,
        weights=weights,
        order=order,
        rider_mass=rider_mass,
        both_sides=both_sides,
    )
    who = asking_buyer(stated, desk.catalog)
    money = currency.upper() if currency else who.currency
    try:
        price = amount_from(amount)
        if price != to_minor_unit(price, money):
            wrong_usage(f"{amount} has more decimals than {money} has")
    except ValueError as error:
        wrong_usage(str(error))
    after = at_price(desk, name, who.region, money, price)
    change = price_change(desk, after, who, name)
    if asked.json:
        row = after.catalog.prices[-1]
        even = break_evens(after, change.after)
        answer(as_json(CHANGE_SCHEMA, change_json(change, row, even, written=False)))
    else:
        title = f"If the {naming(desk.catalog).product(name)} cost {money_text(price, money)}"
        page(change_blocks(desk.catalog, change, title, true=False))
