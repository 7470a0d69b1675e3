"""Money in its own currency, dated exchange and tax rates, and conversion that never looks ahead."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from decimal import Context, Decimal
from pathlib import Path

from spindlewise.catalog.csv_text import FieldReader, read_rows
from spindlewise.problems import Problem
from spindlewise.units import to_minor_unit

_EXACT = Context(prec=40)  # not the thread's context: the same input must give the same digits


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
    habit: str


@dataclass(frozen=True, slots=True)
class Converted:
    """Money in another currency, and the dated rates that it took."""

    money: Money
    via: tuple[RateRow, ...]


@dataclass(frozen=True, slots=True)
class Taxed:
    """An amount with tax in (or out), and the dated tax rate that it took."""

    amount: Decimal
    row: TaxRow


@dataclass(frozen=True, slots=True)
class MissingRate:
    """No rate between the two dated on or before the day."""

    base: str
    quote: str
    day: Day


@dataclass(frozen=True, slots=True)
class MissingTax:
    """No tax rate of the region dated on or before the day."""

    region: str
    day: Day


class RateTable:
    """Dated exchange rates."""

    def __init__(self, rows: Iterable[RateRow] = ()) -> None:
        """`rows` in any order; of two on one day the later given counts."""
        self.rows = tuple(rows)

    def convert(self, money: Money, to: str, day: Day) -> Converted | MissingRate:
        """Convert with the newest rate dated on or before the day: direct, inverse, or over one currency.

        Nothing is rounded here.
        """
        if money.currency == to:
            return Converted(money, ())
        one = self._step(money, to, day)
        if one:
            return one
        through = sorted({c for r in self.rows for c in (r.base, r.quote)} - {money.currency, to})
        for currency in through:
            first = self._step(money, currency, day)
            second = self._step(first.money, to, day) if first else None
            if first and second:
                return Converted(second.money, first.via + second.via)
        return MissingRate(money.currency, to, day)

    def _step(self, money: Money, to: str, day: Day) -> Converted | None:
        pair = {money.currency, to}
        usable = [r for r in self.rows if {r.base, r.quote} == pair and r.date <= day]
        if not usable:
            return None
        newest = max(enumerate(usable), key=lambda item: (item[1].date, item[0]))[1]
        if newest.base == money.currency:
            amount = _EXACT.multiply(money.amount, newest.rate)
        else:
            amount = _EXACT.divide(money.amount, newest.rate)
        return Converted(Money(amount, to), (newest,))


class TaxTable:
    """Dated tax rates by region."""

    def __init__(self, rows: Iterable[TaxRow] = ()) -> None:
        """`rows` in any order."""
        self.rows = tuple(rows)

    def rate(self, region: str, day: Day) -> TaxRow | None:
        """The newest rate of the region dated on or before the day."""
        usable = [r for r in self.rows if r.region == region and r.date <= day]
        return max(usable, key=lambda r: r.date, default=None)

    def with_tax(self, amount: Decimal, region: str, day: Day) -> Taxed | MissingTax:
        """An amount without tax as it is paid with it."""
        row = self.rate(region, day)
        if row is None:
            return MissingTax(region, day)
        return Taxed(_EXACT.multiply(amount, 1 + row.rate_pct / 100), row)

    def without_tax(self, amount: Decimal, region: str, day: Day) -> Taxed | MissingTax:
        """An amount with tax as it would be without it."""
        row = self.rate(region, day)
        if row is None:
            return MissingTax(region, day)
        return Taxed(_EXACT.divide(amount, 1 + row.rate_pct / 100), row)


def to_minor_units(money: Money) -> Money:
    """The money in whole minor units of its currency, halves up: what a till would take."""
    return Money(to_minor_unit(money.amount, money.currency), money.currency)


RATE_HEADER = ("date", "base", "quote", "rate")
TAX_HEADER = ("date", "region", "rate_pct", "habit")


def read_rates(path: Path, shown: str) -> tuple[RateTable, list[Problem]]:
    """The file rates.csv."""
    rows, problems = read_rows(path, shown, RATE_HEADER)
    found = []
    for row in rows:
        reader = FieldReader(row, RATE_HEADER, problems)
        day, base = reader.day("date"), reader.currency("base")
        quote, rate = reader.currency("quote"), reader.decimal("rate")
        if base is not None and base == quote:
            reader.wrong("quote", "same-currency", f"{base} against itself", "name two different currencies")
        elif day and base and quote and rate:
            found.append(RateRow(day, base, quote, rate))
    return RateTable(found), problems


def read_taxes(path: Path, shown: str) -> tuple[TaxTable, list[Problem]]:
    """The file taxes.csv."""
    rows, problems = read_rows(path, shown, TAX_HEADER)
    found = []
    for row in rows:
        reader = FieldReader(row, TAX_HEADER, problems)
        day, region = reader.day("date"), reader.text("region", 8)
        rate, habit = reader.decimal("rate_pct"), reader.word("habit", ("in", "out"))
        if rate is not None and rate > 100:
            reader.wrong(
                "rate_pct", "tax-rate", f"{rate:f} % is no tax rate", "write percent, for instance 20"
            )
        elif day and region and rate and habit:
            found.append(TaxRow(day, region, rate, habit))
    return TaxTable(found), problems


def newest_rates(rows: Sequence[RateRow], day: Day) -> tuple[RateRow, ...]:
    """The newest rate of each pair by the day, for showing what was used."""
    found: dict[tuple[str, str], RateRow] = {}
    for row in sorted(rows, key=lambda r: r.date):
        if row.date <= day:
            found[(row.base, row.quote)] = row
    return tuple(found[pair] for pair in sorted(found))
