"""What a buyer pays: the lowest price in force in the buyer's region, tax in, in the buyer's currency."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.money import MissingRate, MissingTax, Money, to_minor_units
from spindlewise.catalog.price_row import PriceRow


@dataclass(frozen=True, slots=True)
class Paid:
    """An amount in the buyer's currency, tax in, in whole minor units, and the row of the log behind it."""

    amount: Decimal
    currency: str
    row: PriceRow
    conversion: tuple[str, ...]
    """How the logged amount became this one; empty where it is the logged amount itself."""
    age_days: int


@dataclass(frozen=True, slots=True)
class Unpriced:
    """No price that counts, and why."""

    because: str


def paid_for(
    product: str,
    rows: Mapping[str, Sequence[PriceRow]],
    catalog: Catalog,
    region: str,
    currency: str,
    day: date,
) -> Paid | Unpriced:
    """The least that the product costs on the day, among its prices in force in the region.

    Offers whose rate or tax rate is missing drop out, with the reason where nothing remains.
    """
    found: list[Paid] = []
    reasons: list[str] = []
    for row in rows.get(product, ()):
        paid = as_paid(row, catalog, currency, day)
        if isinstance(paid, Paid):
            found.append(paid)
        else:
            reasons.append(paid.because)
    if found:
        return min(found, key=lambda p: (p.amount, p.row.line))
    return Unpriced(reasons[0] if reasons else f"no price in force in {region} on {day.isoformat()}")


def as_paid(row: PriceRow, catalog: Catalog, currency: str, day: date) -> Paid | Unpriced:
    """One logged price as the buyer pays it."""
    steps: list[str] = []
    money = Money(row.amount, row.currency)
    if row.tax == "out":
        taxed = catalog.taxes.with_tax(money.amount, row.region, day)
        if isinstance(taxed, MissingTax):
            return Unpriced(f"no tax rate for {row.region} dated on or before {day.isoformat()}")
        steps.append(f"tax of {taxed.row.rate_pct.normalize():f} % added")
        money = Money(taxed.amount, row.currency)
    if row.currency != currency:
        converted = catalog.rates.convert(money, currency, day)
        if isinstance(converted, MissingRate):
            return Unpriced(f"no rate from {row.currency} to {currency} dated on or before {day.isoformat()}")
        steps += [
            f"1 {rate.base} = {rate.rate.normalize():f} {rate.quote} ({rate.date.isoformat()})"
            for rate in converted.via
        ]
        money = converted.money
    amount = to_minor_units(money).amount
    return Paid(amount, currency, row, tuple(steps), (day - row.date).days)
