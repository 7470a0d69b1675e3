"""The price log: append only, one dated price a line; read strictly, and as it stood on a day.

A row may be dated before the one above it: what was seen earlier may be entered later. Of two rows of one
offer on one day, the one further down counts.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

from spindlewise.catalog.by_columns import ByColumns, Offered
from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_text import LARGEST_BYTES, Row, read_rows
from spindlewise.catalog.durable import append_line
from spindlewise.catalog.price_row import HEADER, KINDS, TAXES, PriceRow, row_line
from spindlewise.problems import Problem

if TYPE_CHECKING:
    from spindlewise.catalog.long_log import LongLog

LARGE_BYTES = 1024 * 1024
"""From this size on, importing numpy and reading by columns costs less than it saves."""


def read_price_log(path: Path, shown: str) -> tuple[Sequence[PriceRow], list[Problem]]:
    """All rows that are right, in the log's order, and every problem of every other."""
    large = _large(path)
    return read_strictly(path, shown) if large is None else (large, [])


def read_strictly(path: Path, shown: str) -> tuple[list[PriceRow], list[Problem]]:
    """The same, field by field."""
    rows, problems = read_rows(path, shown, HEADER)
    found: list[PriceRow] = []
    lines: dict[tuple[str, ...], int] = {}
    for row in rows:
        price = price_of(row, problems)
        if price is None:
            continue
        first = lines.setdefault(row.fields, row.line)
        if first == row.line:
            found.append(price)
        else:
            told = f"the same row stands in line {first} already"
            FieldReader(row, HEADER, problems).wrong("date", "repeated-row", told, "take one of them out")
    return found, problems


def _large(path: Path) -> "LongLog | None":
    """A large log of which every line is plainly right; None leaves it to the strict reader."""
    try:
        if not LARGE_BYTES <= path.stat().st_size <= LARGEST_BYTES:
            return None
        raw = path.read_bytes()
    except OSError:
        return None
    from spindlewise.catalog.long_log import long_log

    return long_log(raw)


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
    until = reader.day("valid_until", may_be_empty=True)
    source = reader.text("source")
    if day and until and until < day:
        told = f"{until.isoformat()} lies before {day.isoformat()}"
        reader.wrong("valid_until", "expired-at-once", told, "write the last day on which it holds")
    if kind == "offer" and not row.fields[HEADER.index("valid_until")]:
        tip = "write its last day, or the kind street"
        reader.wrong("valid_until", "endless-offer", "an offer holds for a time, and none is written", tip)
    if not (day and product and region and currency and amount and tax and kind and seller and source):
        return None
    if not reader.faultless:
        return None
    return PriceRow(
        row.line, day, product, region, currency, amount, tax, kind, seller, until, source
    )  # fmt: skip


def append_price(path: Path, price: PriceRow) -> None:
    """Append one row: locked, in one write, synced to the disk; nothing that stands there is rewritten.

    A log that is not there begins with its header. The caller has validated the row (`price_of`).
    Raises CannotWrite (an OSError) where the log cannot be written or its last line is torn.
    """
    append_line(path, row_line(price).encode(), header=(",".join(HEADER) + "\n").encode())


def offered(row: PriceRow) -> Offered:
    """What makes two rows prices of the same offer, of which the newer replaces the older."""
    return row.product, row.region, row.seller, row.kind, row.currency, row.tax


def newest(rows: Iterable[PriceRow], region: str, day: date) -> dict[Offered, PriceRow]:
    """The newest row of each offer in the region dated on or before the day, expired or not."""
    if isinstance(rows, ByColumns):
        return rows.newest(region, day)
    return {offer: seen[-1] for offer, seen in _observed(rows, region, day).items()}


def prices_in_force(rows: Iterable[PriceRow], region: str, day: date) -> dict[str, list[PriceRow]]:
    """The prices that hold on the day, by product: the newest of each offer, if it has not expired."""
    found: dict[str, list[PriceRow]] = {}
    for row in newest(rows, region, day).values():
        if row.in_force(day):
            found.setdefault(row.product, []).append(row)
    return found


@dataclass(frozen=True, slots=True)
class PriceFall:
    """A fall against the price of the same offer that was observed before it."""

    now: PriceRow
    before: PriceRow

    @property
    def by(self) -> Decimal:
        """By how much it fell, in the offer's currency and on its tax basis."""
        return self.before.amount - self.now.amount

    @property
    def share_pct(self) -> float:
        """By how many percent of the former price."""
        return float(self.by / self.before.amount * 100)


def price_falls(rows: Iterable[PriceRow], region: str, since: date, day: date) -> list[PriceFall]:
    """The falls dated after `since` and by the day, in order, each against the observation just before it."""
    falls = [
        PriceFall(now, before)
        for seen in _observed(rows, region, day).values()
        for before, now in pairwise(seen)
        if now.amount < before.amount and now.date > since
    ]
    return sorted(falls, key=lambda fall: (fall.now.date, fall.now.line))


def falls_in_force(rows: Iterable[PriceRow], product: str, region: str, day: date) -> list[PriceFall]:
    """The product's prices that hold on the day and are lower than the same offer's price before.

    A first observation is no fall, whatever another seller, a list price or another tax basis says.
    """
    observed = _observed((row for row in rows if row.product == product), region, day)
    latest = [PriceFall(seen[-1], seen[-2]) for seen in observed.values() if len(seen) > 1]
    falls = [fall for fall in latest if fall.by > 0 and fall.now.in_force(day)]
    return sorted(falls, key=lambda fall: (fall.now.date, fall.now.line))


def with_amount(row: PriceRow, amount: Decimal) -> PriceRow:
    """The same offer at another amount, for what-if questions."""
    return replace(row, amount=amount)


def _observed(rows: Iterable[PriceRow], region: str, day: date) -> dict[Offered, list[PriceRow]]:
    """Each offer's rows in the region dated on or before the day, by date and line; offers by first sight."""
    found: dict[Offered, list[PriceRow]] = {}
    for row in sorted(rows, key=lambda r: (r.date, r.line)):
        if row.region == region and row.date <= day:
            found.setdefault(offered(row), []).append(row)
    return found
