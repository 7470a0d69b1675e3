"""The rows of a price log, in its order, and those of one product without looking through all of them."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date
from functools import cached_property
from typing import Literal

from spindlewise.catalog.by_columns import ByColumns
from spindlewise.catalog.price_row import PriceRow, row_line


class PriceRows(tuple[PriceRow, ...]):
    """All rows in the log's order; sorted out by product once, when that is first asked for.

    A page for each product would otherwise look through the whole log for each product.
    """

    @cached_property
    def by_product(self) -> Mapping[str, tuple[PriceRow, ...]]:
        """Each product's rows, in the log's order."""
        found: dict[str, list[PriceRow]] = {}
        for row in self:
            found.setdefault(row.product, []).append(row)
        return {product: tuple(rows) for product, rows in found.items()}


def rows_of(rows: Iterable[PriceRow], product: str) -> Sequence[PriceRow]:
    """The rows of one product, in their order."""
    if isinstance(rows, ByColumns):
        return rows.of_products((product,))
    if isinstance(rows, PriceRows):
        return rows.by_product.get(product, ())
    return [row for row in rows if row.product == product]


def rows_of_all(rows: Sequence[PriceRow], products: Iterable[str]) -> tuple[PriceRow, ...]:
    """The rows of these products, in the log's order."""
    if isinstance(rows, ByColumns):
        return rows.of_products(products)
    if isinstance(rows, PriceRows):
        found = [row for product in products for row in rows.by_product.get(product, ())]
        return tuple(sorted(found, key=lambda row: row.line))
    wanted = frozenset(products)
    return tuple(row for row in rows if row.product in wanted)


def rows_not_among(
    rows: Iterable[PriceRow], part: Literal["product", "region"], known: Collection[str]
) -> Iterable[PriceRow]:
    """The rows whose product or region is none of those known."""
    if isinstance(rows, ByColumns):
        return rows.not_among(part, known)
    return (row for row in rows if getattr(row, part) not in known)


def rows_dated_outside(rows: Iterable[PriceRow], first: date, last: date) -> Iterable[PriceRow]:
    """The rows dated before the first day or after the last."""
    if isinstance(rows, ByColumns):
        return rows.dated_outside(first, last)
    return (row for row in rows if not first <= row.date <= last)


def with_one_more(rows: Sequence[PriceRow], row: PriceRow) -> Sequence[PriceRow]:
    """The rows and one more below them."""
    return rows.with_row(row, row_line(row).encode()) if isinstance(rows, ByColumns) else (*rows, row)


def without_those(rows: Sequence[PriceRow], product: str, region: str) -> Sequence[PriceRow]:
    """The rows without those of the product in the region."""
    if isinstance(rows, ByColumns):
        return rows.without(product, region)
    return tuple(row for row in rows if row.product != product or row.region != region)
