"""Cost of ownership over the buyer's years: what comes beside the price, and the whole as a criterion."""

from collections.abc import Hashable
from dataclasses import dataclass
from decimal import Decimal

from spindlewise.answer.market import Market
from spindlewise.answer.merits import MeritSpan, Yardstick
from spindlewise.answer.paid import Paid
from spindlewise.answer.standing import Standing
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.figure import Known, figure
from spindlewise.catalog.model import DatedPrice
from spindlewise.catalog.money import MissingRate, MissingTax, Money
from spindlewise.catalog.product import Battery, Product, Service
from spindlewise.cost.ownership import Ownership, Upkeep, ownership
from spindlewise.decide.break_even import PriceScale, PriceTerm
from spindlewise.units import minor_digits

TYPICAL_YEARS = Decimal(3)
TYPICAL_HOURS_PER_YEAR = Decimal(250)
"""Stand in where a buyer weighs ownership without saying for how long. Design choice, no source."""


@dataclass(frozen=True, slots=True)
class Owned:
    """One product's account over the buyer's years, in the buyer's currency, and how it scores."""

    account: Ownership
    years: Decimal
    hours_per_year: Decimal
    beside_price: float
    """What the account adds to the price, in the value curves' currency."""
    standings: dict[str, Standing]
    merits: dict[str, MeritSpan]


def riding_key(buyer: Buyer) -> Hashable:
    """All of a buyer that bears on ownership."""
    return buyer.region, buyer.currency, buyer.riding.years, buyer.riding.hours_per_year


def states_riding(buyer: Buyer) -> bool:
    """Whether the buyer says for how long, or how much, they ride: then the account is worth showing."""
    return not (isinstance(buyer.riding.years, str) and isinstance(buyer.riding.hours_per_year, str))


def own_all(catalog: Catalog, yardstick: Yardstick, market: Market, buyer: Buyer) -> dict[str, Owned]:
    """The account of every product that has a price, by product id."""
    return {
        name: own(product, catalog, yardstick, market, buyer) for name, product in catalog.products.items()
    }


def own(product: Product, catalog: Catalog, yardstick: Yardstick, market: Market, buyer: Buyer) -> Owned:
    """The account of one product; where no price is known, of its upkeep alone."""
    years, hours = buyer.riding.years, buyer.riding.hours_per_year
    over = TYPICAL_YEARS if isinstance(years, str) else Decimal(repr(years))
    yearly = TYPICAL_HOURS_PER_YEAR if isinstance(hours, str) else Decimal(repr(hours))
    paid = market.prices[product.id]
    price = paid.amount if isinstance(paid, Paid) else Decimal(0)
    account = ownership(price, over, yearly, upkeep(product, catalog, market))
    beside = float((account.known_total - price) * market.factor)
    name, unit = "ownership", market.currency
    if not isinstance(paid, Paid):
        standing = Standing(name, None, None, None, unit, "unknown", None, paid.because)
        return Owned(account, over, yearly, beside, {name: standing}, {name: yardstick.merits(standing)})
    term = PriceTerm(yardstick.curves[name], 1.0, beside)
    scale = PriceScale((term,), market.factor, minor_digits(paid.currency))
    merit = float(scale.points(int(paid.amount.scaleb(scale.exponent)))) / 100.0
    # what nobody knows the price of can only add to the cost
    worst = yardstick.curves[name].over(*yardstick.spans[name])[0]
    least = min(merit, worst) if account.unknown else merit
    note = f"over {over.normalize():f} years at {yearly.normalize():f} h"
    if account.unknown:
        note += f"; at least, not known: {', '.join(account.unknown)}"
    standing = Standing(
        name,
        float(account.known_total),
        None,
        None,
        unit,
        "worked out",
        paid.row.date,
        "price and upkeep",
        note,
        not_measured=account.unknown,
    )
    return Owned(account, over, yearly, beside, {name: standing}, {name: (least, merit, merit)})


def upkeep(product: Product, catalog: Catalog, market: Market) -> list[Upkeep]:
    """What of a product is bought again and again, with its price in this market; None where nobody knows."""
    found: list[Upkeep] = []
    battery = product.battery
    if battery == "unknown":
        found.append(Upkeep("batteries", None))
    elif isinstance(battery, Battery) and battery.spare_prices != "not applicable":
        hours = figure(product, "running_hours", market.day)
        every = Decimal(repr(hours.value)) if isinstance(hours, Known) else None
        found.append(Upkeep("spare cells", _side_price(battery.spare_prices, catalog, market), every))
    if product.service == "unknown":
        found.append(Upkeep("service", None))
    elif isinstance(product.service, Service):
        interval = figure(product, "service_hours", market.day)
        every = Decimal(repr(interval.value)) if isinstance(interval, Known) else None
        found.append(
            Upkeep(product.service.what, _side_price(product.service.prices, catalog, market), every)
        )
    return found


def _side_price(prices: tuple[DatedPrice, ...] | str, catalog: Catalog, market: Market) -> Decimal | None:
    """The newest observed price by the day, in the buyer's currency with tax in; the buyer's region first."""
    if isinstance(prices, str):
        return None
    seen = [p for p in prices if p.date <= market.day]
    for price in sorted(seen, key=lambda p: (p.region != market.region, -p.date.toordinal())):
        amount = price.amount
        if price.tax == "out":
            taxed = catalog.taxes.with_tax(amount, price.region, market.day)
            if isinstance(taxed, MissingTax):
                continue
            amount = taxed.amount
        converted = catalog.rates.convert(Money(amount, price.currency), market.currency, market.day)
        if not isinstance(converted, MissingRate):
            return converted.money.amount
    return None
