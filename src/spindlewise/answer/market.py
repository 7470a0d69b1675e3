"""A market: every product as buyers of one region and currency meet it on one day."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from spindlewise.answer.claims import weight_standing
from spindlewise.answer.figures import UNPRICED
from spindlewise.answer.merits import MeritSpan, Yardstick
from spindlewise.answer.paid import Paid, Unpriced, paid_for
from spindlewise.answer.standing import Standing
from spindlewise.answer.worked_out import WorkedOut
from spindlewise.catalog.as_of import standing_notices
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.money import MissingRate, Money
from spindlewise.catalog.price_log import prices_in_force
from spindlewise.decide.break_even import PriceScale, PriceTerm
from spindlewise.decide.claims_record import ClaimsRecord
from spindlewise.units import minor_digits

MARKET_CRITERIA = ("price", "weight", *UNPRICED)
"""The criteria that do not depend on who asks."""


class NoMarket(ValueError):  # noqa: N818  # an answer of its kind, not an error of the program
    """The region or currency cannot be served on this day; the message says what is missing."""


@dataclass(frozen=True, slots=True)
class Market:
    """Prices, receiver-free standings and their merits for all products, by product id in order of id."""

    region: str
    currency: str
    day: date
    factor: Decimal
    """So much of the value curves' currency is one unit of the buyer's."""
    prices: dict[str, Paid | Unpriced]
    standings: Mapping[str, Mapping[str, Standing]]
    """By product, then by criterion."""
    merits: Mapping[str, Mapping[str, MeritSpan]]
    held_back: frozenset[str]
    """Products with a standing safety notice."""


def open_market(
    catalog: Catalog, yardstick: Yardstick, record: ClaimsRecord, region: str, currency: str, day: date
) -> Market:
    """Work out the market once; many buyers may then be served from it."""
    if region not in catalog.settings.regions:
        known = ", ".join(sorted(catalog.settings.regions))
        raise NoMarket(f"the catalog knows no region {region}; it knows {known}")
    unit = catalog.rates.convert(Money(Decimal(1), currency), yardstick.currency, day)
    if isinstance(unit, MissingRate):
        raise NoMarket(f"no rate from {currency} to {yardstick.currency} on or before {day.isoformat()}")
    factor = unit.money.amount
    in_force = prices_in_force(catalog.prices, region, day)
    products = catalog.products
    prices = {name: paid_for(name, in_force, catalog, region, currency, day) for name in products}
    earned = price_merits(yardstick, prices, currency, factor)

    def standing(name: str, criterion: str) -> Standing:
        if criterion == "price":
            return price_standing(prices[name], currency)
        if criterion == "weight":
            return weight_standing(products[name], day, record)
        return UNPRICED[criterion](products[name], day)

    def standings_of(name: str) -> Mapping[str, Standing]:
        return WorkedOut(MARKET_CRITERIA, lambda criterion: standing(name, criterion))

    def merit(name: str, criterion: str) -> MeritSpan:
        return earned[name] if criterion == "price" else yardstick.merits(standings[name][criterion])

    def merits_of(name: str) -> Mapping[str, MeritSpan]:
        return WorkedOut(MARKET_CRITERIA, lambda criterion: merit(name, criterion))

    standings = WorkedOut(products, standings_of)
    held_back = frozenset(name for name, product in products.items() if standing_notices(product, day))
    return Market(region, currency, day, factor, prices, standings, WorkedOut(products, merits_of), held_back)


def price_scale(yardstick: Yardstick, currency: str, factor: Decimal, share: float) -> PriceScale:
    """How prices in the buyer's currency become points, for the criterion price alone."""
    return PriceScale((PriceTerm(yardstick.curves["price"], share),), factor, minor_digits(currency))


def price_merits(
    yardstick: Yardstick, prices: Mapping[str, Paid | Unpriced], currency: str, factor: Decimal
) -> dict[str, MeritSpan]:
    """The merit of each price, by the very arithmetic with which break-even prices are found."""
    scale = price_scale(yardstick, currency, factor, 1.0)
    minor = {n: int(p.amount.scaleb(scale.exponent)) for n, p in prices.items() if isinstance(p, Paid)}
    merits = (scale.points(list(minor.values())) / 100.0).tolist()
    found = {name: (merit, merit, merit) for name, merit in zip(minor, merits, strict=True)}
    for name, paid in prices.items():
        if isinstance(paid, Unpriced):
            found[name] = yardstick.merits(price_standing(paid, yardstick.currency))
    return found


def price_standing(paid: Paid | Unpriced, currency: str) -> Standing:
    """The price as a standing, in the buyer's currency."""
    if isinstance(paid, Unpriced):
        return Standing("price", None, None, None, currency, "unknown", None, paid.because)
    row = paid.row
    source = f"{row.seller} ({row.kind}), {row.date.isoformat()}"
    note = "; ".join(paid.conversion)
    return Standing(
        "price", float(paid.amount), None, None, currency, "observed price", row.date, source, note
    )
