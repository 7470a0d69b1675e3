"""A long price log: looked up by columns, its rows made one by one where they are asked for."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from datetime import date
from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING, Literal, overload

import numpy as np

from spindlewise.catalog.by_columns import ByColumns, Offered
from spindlewise.catalog.column_cutting import MOST_WHOLE
from spindlewise.catalog.columns_reading import last_field, line_at, plain_text, read_columns
from spindlewise.catalog.price_columns import NO_DAY, PriceColumns
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.text_numbers import Ints
from spindlewise.units import minor_digits

if TYPE_CHECKING:
    from numpy.typing import NDArray

FIRST_NUMBER = 2
"""The line below the header."""
_PARTS = {"product": 0, "region": 1, "currency": 4}
"""Where a part of an offer stands in it."""
MOST_MINOR = MOST_WHOLE * 10**4
_BATCH = 4096
"""So many rows are made at once: taken singly, numbers out of an array cost more than the rows."""


class LongLog(ByColumns):
    """All rows of a log in its order, as a tuple of them would have them, and answers without making them."""

    __slots__ = ("_numbers", "columns", "text")

    def __init__(self, text: bytes, columns: PriceColumns, numbers: Ints | None = None) -> None:
        """`numbers` are the lines' own where they do not simply follow each other below the header."""
        self.text = text
        self.columns = columns
        self._numbers = numbers

    def __len__(self) -> int:
        """How many rows there are."""
        return len(self.columns)

    @overload
    def __getitem__(self, index: int) -> PriceRow: ...
    @overload
    def __getitem__(self, index: slice) -> tuple[PriceRow, ...]: ...
    def __getitem__(self, index: int | slice) -> PriceRow | tuple[PriceRow, ...]:
        """One row, or several."""
        if isinstance(index, slice):
            return tuple(self._rows(range(len(self))[index]))
        return next(self._rows([range(len(self))[index]]))

    def __iter__(self) -> Iterator[PriceRow]:
        """The rows in order."""
        return self._rows(range(len(self)))

    def __eq__(self, other: object) -> bool:
        """Whether the other holds equal rows in the same order."""
        if not isinstance(other, Sequence) or len(other) != len(self):
            return False
        return all(one == another for one, another in zip(self, other, strict=True))

    __hash__ = None  # type: ignore[assignment]  # nobody looks a log up by what it holds

    def of_products(self, products: Iterable[str]) -> tuple[PriceRow, ...]:
        """The rows of these products, in the log's order."""
        return self._those(self.columns.offers_where(_PARTS["product"], products))

    def not_among(self, part: Literal["product", "region"], known: Collection[str]) -> tuple[PriceRow, ...]:
        """The rows whose product or region is none of those known."""
        return self._those(~self.columns.offers_where(_PARTS[part], known))

    def dated_outside(self, first: date, last: date) -> tuple[PriceRow, ...]:
        """The rows dated before the first day or after the last."""
        days = self.columns.days
        return self._those((days < first.toordinal()) | (days > last.toordinal()))

    def newest(self, region: str, day: date) -> dict[Offered, PriceRow]:
        """The newest row of each offer in the region dated on or before the day; offers by first sight."""
        columns = self.columns
        seen = columns.offers_where(_PARTS["region"], (region,)) & (columns.days <= day.toordinal())
        ordered = self._by_day(np.flatnonzero(seen))
        offers = columns.offer[ordered]
        last, first = np.full((2, len(columns.offers)), -1, np.int64)
        last[offers] = ordered  # of several, the last one stays
        first[offers[::-1]] = np.arange(len(ordered))[::-1]
        there = np.flatnonzero(last >= 0)
        there = there[np.argsort(first[there])]
        rows = self._rows(last[there].tolist())
        return {columns.offers[number]: row for number, row in zip(there.tolist(), rows, strict=True)}

    def earliest(self) -> dict[tuple[str, str], PriceRow]:
        """The earliest row of each region and currency; of one day the one further up."""
        columns = self.columns
        market = {(o[_PARTS["region"]], o[_PARTS["currency"]]): None for o in columns.offers}
        found: dict[tuple[str, str], int] = {}
        for key in market:
            alike = np.array([(o[1], o[4]) == key for o in columns.offers], np.bool_)
            rows = np.flatnonzero(alike[columns.offer])
            if len(rows):
                found[key] = int(rows[np.argmin(columns.days[rows])])
        in_order = sorted(found, key=lambda key: found[key])
        return dict(zip(in_order, self._rows([found[key] for key in in_order]), strict=True))

    def jumps(self, most: int) -> Iterator[tuple[PriceRow, PriceRow]]:
        """Rows of one offer next to each other in time of which the later is more than so many times the
        other, or the other more than so many times the later; in order of the later row's date and line.
        """
        columns = self.columns
        by_day = self._by_day(np.arange(len(self)))
        ordered = by_day[np.argsort(columns.offer[by_day], kind="stable")]
        before, after = ordered[:-1], ordered[1:]
        one, other = columns.minor[before], columns.minor[after]
        jump = (columns.offer[before] == columns.offer[after]) & ((other > one * most) | (one > other * most))
        place = np.empty(len(self), np.int64)
        place[by_day] = np.arange(len(self))
        pairs = np.flatnonzero(jump)
        pairs = pairs[np.argsort(place[after[pairs]])]
        return zip(self._rows(before[pairs].tolist()), self._rows(after[pairs].tolist()), strict=True)

    def with_row(self, row: PriceRow, line: bytes) -> Sequence[PriceRow]:
        """The log with one more row below, which keeps its own line number; `line` is how it is written."""
        minor = int(row.amount.scaleb(minor_digits(row.currency)))
        if minor > MOST_MINOR:
            return (*self, row)
        offer = (row.product, row.region, row.seller, row.kind, row.currency, row.tax)
        until = NO_DAY if row.valid_until is None else row.valid_until.toordinal()
        more = PriceColumns(
            np.zeros(1, np.uint32),
            np.array([row.date.toordinal()], np.int32),
            np.array([until], np.int32),
            np.zeros(1, np.int32),
            np.array([minor]),
            (offer,),
        )
        columns = self.columns.followed_by(more, len(self.text))
        return LongLog(self.text + line, columns, np.append(self._line_numbers(), row.line))

    def without(self, product: str, region: str) -> "LongLog":
        """The log without the rows of this product in this region."""
        out = self.columns.offers_where(0, (product,)) & self.columns.offers_where(1, (region,))
        return LongLog(self.text, self.columns.picked(~out), self._line_numbers()[~out])

    def _line_numbers(self) -> Ints:
        return np.arange(len(self)) + FIRST_NUMBER if self._numbers is None else self._numbers

    def _by_day(self, rows: Ints) -> Ints:
        """These rows by date, of one day by line."""
        days = self.columns.days[rows]
        if self._numbers is None:
            return rows[np.argsort(days, kind="stable")]
        return rows[np.lexsort((self._numbers[rows], days))]

    def _those(self, which: "NDArray[np.bool_]") -> tuple[PriceRow, ...]:
        return tuple(self._rows(np.flatnonzero(which).tolist()))

    def _rows(self, indices: Sequence[int] | Ints) -> Iterator[PriceRow]:
        for begin in range(0, len(indices), _BATCH):
            yield from self._batch(np.asarray(indices[begin : begin + _BATCH], np.int64))

    def _batch(self, indices: Ints) -> Iterator[PriceRow]:
        columns, text = self.columns, self.text
        numbers = indices + FIRST_NUMBER if self._numbers is None else self._numbers[indices]
        parts = (numbers, columns.days, columns.until, columns.offer, columns.minor, columns.starts)
        lists = (numbers.tolist(), *(part[indices].tolist() for part in parts[1:]))
        for number, day, until, offer, minor, start in zip(*lists, strict=True):
            product, region, seller, kind, currency, tax = columns.offers[offer]
            yield PriceRow(
                number,
                _day(day),
                product,
                region,
                currency,
                Decimal(minor).scaleb(-minor_digits(currency)),
                tax,
                kind,
                seller,
                None if until == NO_DAY else _day(until),
                last_field(line_at(text, start)),
            )


def long_log(raw: bytes) -> LongLog | None:
    """The log in these bytes of a file, or None where anything is not plainly right."""
    text = plain_text(raw)
    columns = read_columns(text)
    return None if columns is None else LongLog(text, columns)


@lru_cache(maxsize=65_536)
def _day(ordinal: int) -> date:
    return date.fromordinal(ordinal)
