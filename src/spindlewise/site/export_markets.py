"""The markets of an export: per region its money, and per product the price in force and the upkeep."""

from spindlewise.answer.desk import Desk
from spindlewise.answer.market import Market, NoMarket, price_scale
from spindlewise.answer.owning import upkeep
from spindlewise.answer.paid import Paid
from spindlewise.render.as_json import Json
from spindlewise.render.words_figures import paid_words
from spindlewise.units import minor_digits


def exported_markets(desk: Desk) -> list[Json]:
    """Every region of the catalog in its own currency; one that cannot be served says why."""
    found: list[Json] = []
    for code, facts in desk.catalog.settings.regions.items():
        head: dict[str, Json] = {"code": code, "name": facts.name, "currency": facts.currency}
        try:
            market = desk.market(code, facts.currency)
        except NoMarket as none:
            found.append({**head, "missing": str(none)})
            continue
        scale = price_scale(desk.yardstick, facts.currency, market.factor, 1.0)
        found.append(
            {
                **head,
                "digits": minor_digits(facts.currency),
                "per_minor_unit": float(scale.per_minor_unit),
                "factor": float(market.factor),
                "prices": {name: _price(desk, market, name) for name in market.prices},
                "upkeep": _upkeep(desk, market),
            }
        )
    return found


def _price(desk: Desk, market: Market, name: str) -> dict[str, Json]:
    paid = market.prices[name]
    merits: list[Json] = list(market.merits[name]["price"])
    if not isinstance(paid, Paid):
        return {"because": paid.because, "merits": merits}
    old_after = desk.catalog.settings.price_age_days
    row = paid.row
    short = f"{row.kind} until {row.valid_until.isoformat()}" if row.valid_until else row.kind
    if row.valid_until is None and paid.age_days > old_after:
        short += f", old: {row.date.isoformat()}"
    return {
        "minor_units": int(paid.amount.scaleb(minor_digits(paid.currency))),
        "merits": merits,
        "short": short,
        "said": paid_words(paid, old_after),
    }


def _upkeep(desk: Desk, market: Market) -> dict[str, Json]:
    """What is bought again and again, by product: its name, its price and the hours after which it is due."""
    found: dict[str, Json] = {}
    for name, product in desk.catalog.products.items():
        parts = upkeep(product, desk.catalog, market)
        if parts:
            found[name] = [
                {
                    "name": part.name,
                    "price": None if part.price is None else f"{part.price:f}",
                    "every_hours": None if part.every_hours is None else f"{part.every_hours:f}",
                }
                for part in parts
            ]
    return found
