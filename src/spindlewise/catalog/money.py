"""Money in its own currency, dated exchange and tax rates, and conversion that never looks ahead."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from decimal import Context, Decimal
from pathlib import Path

from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_text import read_rows
from spindlewise.catalog.price_row import TAXES, Tax
from spindlewise.problems import Problem
from spindlewise.units import to_minor_unit

_EXACT = Context(prec=60)  # three numbers of 15 digits multiply exactly; not the thread's context

RATE_HEADER = ("date", "base", "quote", "rate")
TAX_HEADER = ("date", "region", "rate_pct", "habit")


@dataclass(frozen=True, slots=True)
class Money:
    """An amount in a currency, not rounded."""

    amount: Decimal
    currency: str


@dataclass(frozen=True, slots=True)
class RateRow:
    """On a day, one unit of `base` was so many units of `quote`."""

    date: Day
    base: str
    quote: str
    rate: Decimal


@dataclass(frozen=True, slots=True)
class TaxRow:
    """From a day on, a region's tax on goods in percent, and whether its shops show prices with it."""

    date: Day
    region: str
    rate_pct: Decimal
    habit: Tax


@dataclass(frozen=True, slots=True)
class Converted:
    """Money in another currency, not rounded, and the dated rates that it took (none, one or two)."""

    money: Money
    via: tuple[RateRow, ...]


@dataclass(frozen=True, slots=True)
class Taxed:
    """An amount with tax in (or out), not rounded, and the dated tax rate that it took."""

    amount: Decimal
    row: TaxRow


@dataclass(frozen=True, slots=True)
class MissingRate:
    """No rate between the two dated on or before the day, not even over a third currency."""

    base: str
    quote: str
    day: Day


@dataclass(frozen=True, slots=True)
class MissingTax:
    """No tax rate of the region dated on or before the day."""

    region: str
    day: Day


class RateTable:
    """Dated exchange rates.

    >>> table = RateTable([RateRow(Day(2026, 1, 1), "EUR", "USD", Decimal("1.25"))])
    >>> to_minor_units(table.convert(Money(Decimal("900"), "USD"), "EUR", Day(2026, 2, 1)).money)
    Money(amount=Decimal('720.00'), currency='EUR')
    >>> table.convert(Money(Decimal("900"), "USD"), "EUR", Day(2025, 2, 1))
    MissingRate(base='USD', quote='EUR', day=datetime.date(2025, 2, 1))
    """

    def __init__(self, rows: Iterable[RateRow] = ()) -> None:
        """`rows` in any order; of two for one pair on one day the later given counts."""
        self.rows = tuple(rows)
        self._by_pair: dict[tuple[str, str], list[RateRow]] = {}
        for row in sorted(self.rows, key=lambda r: r.date):
            self._by_pair.setdefault(_pair(row.base, row.quote), []).append(row)
        self._currencies = sorted({currency for pair in self._by_pair for currency in pair})

    def convert(self, money: Money, to: str, day: Day) -> Converted | MissingRate:
        """Convert with the newest rate dated on or before the day; a later one is never seen.

        A rate between the two, in either direction, goes first. Else two rates over one third currency: the
        one whose older rate is newest, of equals the first by its code. Nothing is rounded to minor units;
        where a division does not come out even, 60 digits are kept.
        """
        if money.currency == to:
            return Converted(money, ())
        direct = self.newest(money.currency, to, day)
        if direct is not None:
            return _along(money, to, (direct,))
        crossings = []
        for third in self._currencies:
            first, second = self.newest(money.currency, third, day), self.newest(third, to, day)
            if first is not None and second is not None:
                crossings.append((first, second))
        if not crossings:
            return MissingRate(money.currency, to, day)
        return _along(money, to, max(crossings, key=lambda legs: sorted(row.date for row in legs)))

    def newest(self, one: str, other: str, day: Day) -> RateRow | None:
        """The newest rate between two currencies dated on or before the day, in either direction."""
        rows = self._by_pair.get(_pair(one, other), [])
        found = bisect_right(rows, day, key=lambda r: r.date)
        return rows[found - 1] if found else None


class TaxTable:
    """Dated tax rates by region.

    >>> table = TaxTable([TaxRow(Day(2026, 1, 1), "EU", Decimal(20), "in")])
    >>> table.with_tax(Decimal("100.00"), "EU", Day(2026, 1, 1)).amount
    Decimal('120.0000')
    """

    def __init__(self, rows: Iterable[TaxRow] = ()) -> None:
        """`rows` in any order; of two for one region on one day the later given counts."""
        self.rows = tuple(rows)
        self._by_region: dict[str, list[TaxRow]] = {}
        for row in sorted(self.rows, key=lambda r: r.date):
            self._by_region.setdefault(row.region, []).append(row)

    def rate(self, region: str, day: Day) -> TaxRow | None:
        """The newest rate of the region dated on or before the day."""
        rows = self._by_region.get(region, [])
        found = bisect_right(rows, day, key=lambda r: r.date)
        return rows[found - 1] if found else None

    def with_tax(self, amount: Decimal, region: str, day: Day) -> Taxed | MissingTax:
        """An amount without tax as it is paid with it: times 1 + rate."""
        row = self.rate(region, day)
        return MissingTax(region, day) if row is None else Taxed(_EXACT.multiply(amount, _factor(row)), row)

    def without_tax(self, amount: Decimal, region: str, day: Day) -> Taxed | MissingTax:
        """An amount with tax as it would be without it: divided by 1 + rate."""
        row = self.rate(region, day)
        return MissingTax(region, day) if row is None else Taxed(_EXACT.divide(amount, _factor(row)), row)


def to_minor_units(money: Money) -> Money:
    """The money in whole minor units of its currency, halves away from zero: what a till would take.

    For the edge only: an amount that is still converted or taxed is not rounded.
    """
    return Money(to_minor_unit(money.amount, money.currency), money.currency)


def read_rates(path: Path, shown: str) -> tuple[RateTable, list[Problem]]:
    """The file rates.csv: every row that is right, and every problem of every other."""
    rows, problems = read_rows(path, shown, RATE_HEADER)
    found: list[RateRow] = []
    lines: dict[tuple[Day, tuple[str, str]], int] = {}
    for row in rows:
        reader = FieldReader(row, RATE_HEADER, problems)
        day, base = reader.day("date"), reader.currency("base")
        quote, rate = reader.currency("quote"), reader.decimal("rate")
        if base is not None and base == quote:
            reader.wrong("quote", "same-currency", f"{base} against itself", "name two different currencies")
        elif day and base and quote and rate:
            first = lines.setdefault((day, _pair(base, quote)), row.line)
            if first != row.line:
                told = f"{base} and {quote} have a rate of {day.isoformat()} in line {first} already"
                reader.wrong("date", "repeated-rate", told, "take one of them out")
            else:
                found.append(RateRow(day, base, quote, rate))
    return RateTable(found), problems


def read_taxes(path: Path, shown: str) -> tuple[TaxTable, list[Problem]]:
    """The file taxes.csv: every row that is right, and every problem of every other. A rate may be 0."""
    rows, problems = read_rows(path, shown, TAX_HEADER)
    found: list[TaxRow] = []
    lines: dict[tuple[Day, str], int] = {}
    for row in rows:
        reader = FieldReader(row, TAX_HEADER, problems)
        day, region = reader.day("date"), reader.text("region", 8)
        rate, habit = reader.decimal("rate_pct", zero_allowed=True), reader.word("habit", TAXES)
        if rate is not None and rate > 100:
            reader.wrong("rate_pct", "tax-rate", f"{rate:f} % is no tax rate", "write percent, such as 20")
        elif day and region and rate is not None and habit:
            first = lines.setdefault((day, region), row.line)
            if first != row.line:
                told = f"{region} has a rate of {day.isoformat()} in line {first} already"
                reader.wrong("date", "repeated-rate", told, "take one of them out")
            else:
                found.append(TaxRow(day, region, rate, habit))
    return TaxTable(found), problems


def _pair(one: str, other: str) -> tuple[str, str]:
    return (one, other) if one <= other else (other, one)


def _along(money: Money, to: str, rows: tuple[RateRow, ...]) -> Converted:
    """All products first, then one division: a third currency costs no digit."""
    amount, divisor, currency = money.amount, Decimal(1), money.currency
    for row in rows:
        if row.base == currency:
            amount, currency = _EXACT.multiply(amount, row.rate), row.quote
        else:
            divisor, currency = _EXACT.multiply(divisor, row.rate), row.base
    return Converted(Money(amount if divisor == 1 else _EXACT.divide(amount, divisor), to), rows)


def _factor(row: TaxRow) -> Decimal:
    return _EXACT.add(1, row.rate_pct.scaleb(-2, context=_EXACT))
