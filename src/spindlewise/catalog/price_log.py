"""The price log: append only, one dated price a line; read strictly, and as it stood on a day."""

import csv
import io
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import cast

from spindlewise.catalog.csv_text import FieldReader, Row, read_rows
from spindlewise.catalog.durable import append_line
from spindlewise.catalog.price_row import HEADER, KINDS, TAXES, Kind, PriceRow, Tax
from spindlewise.problems import Problem

Offered = tuple[str, str, str, str, str]


def read_price_log(path: Path, shown: str) -> tuple[list[PriceRow], list[Problem]]:
    """All rows that are right, and every problem of every other."""
    rows, problems = read_rows(path, shown, HEADER)
    found: list[PriceRow] = []
    seen: dict[tuple[str, ...], int] = {}
    for row in rows:
        price = price_of(row, problems)
        if price is None:
            continue
        first = seen.setdefault(row.fields, row.line)
        if first != row.line:
            reader = FieldReader(row, HEADER, problems)
            reader.wrong(
                "date", "repeated-row", f"the same row stands in line {first}", "take one of them out"
            )
            continue
        found.append(price)
    return found, problems


def price_of(row: Row, problems: list[Problem]) -> PriceRow | None:
    """One row as a price, or None with what is wrong added to `problems`."""
    reader = FieldReader(row, HEADER, problems)
    day = reader.day("date")
    product = reader.text("product", 60)
    region = reader.text("region", 8)
    currency = reader.currency("currency")
    amount = reader.amount("amount", currency)
    tax = reader.word("tax", TAXES)
    kind = reader.word("kind", KINDS)
    seller = reader.text("seller", 120)
    had = len(problems)
    until = reader.day("valid_until", may_be_empty=True)
    source = reader.text("source")
    if day and until and until < day:
        reader.wrong(
            "valid_until",
            "expired-at-once",
            f"{until} lies before {day}",
            "write the last day on which it holds",
        )
    if kind == "offer" and until is None and len(problems) == had:
        reader.wrong(
            "valid_until", "endless-offer", "an offer needs its last day", "write the day, or kind street"
        )
    if None in (day, product, region, currency, amount, tax, kind, seller, source) or len(problems) > had:
        return None
    return PriceRow(
        row.line,
        cast(date, day),
        cast(str, product),
        cast(str, region),
        cast(str, currency),
        cast(Decimal, amount),
        cast(Tax, tax),
        cast(Kind, kind),
        cast(str, seller),
        until,
        cast(str, source),
    )


def row_line(price: PriceRow) -> str:
    """The row as one line of the log, with its end (RFC 4180 quoting, a line feed as the end)."""
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerow(price.cells())
    return text.getvalue()


def append_price(path: Path, price: PriceRow) -> None:
    """Append one row: locked, in one write, synced to the disk; nothing that stands there is rewritten.

    Raises CannotWrite (an OSError) where the log cannot be written or its last line is torn.
    """
    append_line(path, row_line(price).encode(), header=(",".join(HEADER) + "\n").encode())


def offered(row: PriceRow) -> Offered:
    """What makes two rows prices of the same offer, of which the newer replaces the older."""
    return row.product, row.seller, row.kind, row.currency, row.tax


def newest(rows: Iterable[PriceRow], region: str, day: date) -> dict[Offered, PriceRow]:
    """The newest row of each offer in the region dated on or before the day, expired or not."""
    found: dict[Offered, PriceRow] = {}
    for row in rows:
        if row.region != region or row.date > day:
            continue
        key = offered(row)
        if key not in found or (row.date, row.line) > (found[key].date, found[key].line):
            found[key] = row
    return found


def prices_in_force(rows: Iterable[PriceRow], region: str, day: date) -> dict[str, list[PriceRow]]:
    """The prices that hold on the day, by product: the newest of each offer, if it has not expired."""
    found: dict[str, list[PriceRow]] = {}
    for row in newest(rows, region, day).values():
        if row.in_force(day):
            found.setdefault(row.product, []).append(row)
    return found


@dataclass(frozen=True, slots=True)
class PriceFall:
    """A fall against a price of the same offer that was observed before."""

    now: PriceRow
    before: PriceRow

    @property
    def by(self) -> Decimal:
        """By how much it fell."""
        return self.before.amount - self.now.amount

    @property
    def share_pct(self) -> float:
        """By how many percent of the former price."""
        return float(self.by / self.before.amount * 100)


def price_falls(rows: Iterable[PriceRow], region: str, since: date, day: date) -> list[PriceFall]:
    """The falls observed after `since` and by the day, each against the observation just before it."""
    last: dict[Offered, PriceRow] = {}
    falls: list[PriceFall] = []
    for row in sorted(rows, key=lambda r: (r.date, r.line)):
        if row.region != region or row.date > day:
            continue
        before = last.get(offered(row))
        if before is not None and row.amount < before.amount and row.date > since:
            falls.append(PriceFall(row, before))
        last[offered(row)] = row
    return falls


def with_amount(row: PriceRow, amount: Decimal) -> PriceRow:
    """The same offer at another amount, for what-if questions."""
    return replace(row, amount=amount)
