"""What a product costs over the buyer's years: price, cells or charging, bearings; by year and by hour."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Context, Decimal

_EXACT = Context(prec=28)  # not the thread's context: the same input must give the same digits


@dataclass(frozen=True, slots=True)
class Upkeep:
    """One thing that is bought again and again: a set of cells, a charge, bearings, a seal service.

    It is due after so many hours, or so many years, whichever comes first; None in one of both means that it
    does not wear that way, None in both that nobody knows. `price` is for the whole (all cells of a set), as
    observed; None is unknown. The first is in the product unless `first_included` is False.
    Raises ValueError for prices below zero and intervals that are not more than zero.
    """

    name: str
    price: Decimal | None
    every_hours: Decimal | None = None
    every_years: Decimal | None = None
    first_included: bool = True

    def __post_init__(self) -> None:
        if self.price is not None and not (self.price.is_finite() and self.price >= 0):
            raise ValueError(f"{self.name} has the price {self.price}; a price is zero or more")
        for interval in (self.every_hours, self.every_years):
            if interval is not None and not (interval.is_finite() and interval > 0):
                raise ValueError(f"{self.name} is due every {interval}; an interval is more than zero")


@dataclass(frozen=True, slots=True)
class CostLine:
    """One line of the account: how often something is paid, at what price, and what that makes."""

    name: str
    times: Decimal
    price: Decimal
    amount: Decimal


@dataclass(frozen=True, slots=True)
class Ownership:
    """What is known of the cost, in the currency of its prices, and the names of all that is not.

    `known_total` is a lower bound while `unknown` is not empty: an unknown part is never taken as free.
    `per_hour` is None for a buyer who does not ride.
    """

    lines: tuple[CostLine, ...]
    known_total: Decimal
    per_year: Decimal
    per_hour: Decimal | None
    unknown: tuple[str, ...]

    @property
    def complete(self) -> bool:
        """Whether every part is known, so that the total is the total."""
        return not self.unknown


def cells(name: str, cell_price: Decimal | None, cells_in_set: int, set_hours: Decimal | None) -> Upkeep:
    """Sets of spare cells at the price observed for one cell.

    >>> cells("coin cells", Decimal("2.50"), 2, Decimal(120)).price
    Decimal('5.00')
    """
    price = None if cell_price is None else _EXACT.multiply(cell_price, Decimal(cells_in_set))
    return Upkeep(name, price, every_hours=set_hours)


def charging(
    name: str, energy_wh: Decimal | None, price_per_kwh: Decimal | None, charge_hours: Decimal | None
) -> Upkeep:
    """Charges from the mains: the energy one charge draws, at the price of a kilowatt hour.

    >>> charging("charging", Decimal(4), Decimal("0.25"), Decimal(50)).price
    Decimal('0.001')
    """
    price = None
    if energy_wh is not None and price_per_kwh is not None:
        price = _EXACT.divide(_EXACT.multiply(energy_wh, price_per_kwh), Decimal(1000))
    return Upkeep(name, price, every_hours=charge_hours, first_included=False)


def ownership(
    price: Decimal | None, years: Decimal, hours_per_year: Decimal, upkeep: Sequence[Upkeep] = ()
) -> Ownership:
    """The account over these years of riding: the purchase and each thing as often as it has to be bought.

    Things are bought whole: 150 hours on cells that last 100 take one set beside the first, and one that
    lasts to the last hour is not replaced. What the product fetches when sold is left out.
    Raises ValueError for years that are not more than zero and hours below zero.

    >>> account = ownership(Decimal(600), Decimal(3), Decimal(200),
    ...     [cells("cells", Decimal(2), 2, Decimal(150)), Upkeep("bearings", None)])
    >>> account.known_total, account.per_year, account.per_hour, account.unknown
    (Decimal('612'), Decimal('204'), Decimal('1.02'), ('bearings',))
    """
    if not (years.is_finite() and years > 0):
        raise ValueError(f"{years} years of owning were given; there must be more than zero")
    if not (hours_per_year.is_finite() and hours_per_year >= 0):
        raise ValueError(f"{hours_per_year} hours a year were given; there must be zero or more")
    if price is not None and not (price.is_finite() and price >= 0):
        raise ValueError(f"the price is {price}; a price is zero or more")
    lines = [] if price is None else [CostLine("purchase", Decimal(1), price, price)]
    unknown = ["purchase"] if price is None else []
    for part in upkeep:
        times = _times_due(part, years, hours_per_year)
        if times is None or part.price is None:
            unknown.append(part.name)
        else:
            lines.append(CostLine(part.name, times, part.price, _EXACT.multiply(times, part.price)))
    total = Decimal(0)
    for line in lines:
        total = _EXACT.add(total, line.amount)
    hours = _EXACT.multiply(years, hours_per_year)
    return Ownership(
        lines=tuple(lines),
        known_total=total,
        per_year=_EXACT.divide(total, years),
        per_hour=_EXACT.divide(total, hours) if hours else None,
        unknown=tuple(unknown),
    )


def _times_due(part: Upkeep, years: Decimal, hours_per_year: Decimal) -> Decimal | None:
    """How often it is bought: as many as are used up or begun, less the one that came with the product."""
    spans: list[Decimal] = []
    if part.every_hours is not None:
        spans.append(_EXACT.divide(_EXACT.multiply(years, hours_per_year), part.every_hours))
    if part.every_years is not None:
        spans.append(_EXACT.divide(years, part.every_years))
    if not spans:
        return None
    begun = max(spans).to_integral_value(ROUND_CEILING)
    return max(Decimal(0), begun - 1) if part.first_included else begun
