"""The rows of a price log, in its order, and those of one product without looking through all of them."""

from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property

from spindlewise.catalog.price_row import PriceRow


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
    if isinstance(rows, PriceRows):
        return rows.by_product.get(product, ())
    return [row for row in rows if row.product == product]


def rows_of_all(rows: Sequence[PriceRow], products: Iterable[str]) -> tuple[PriceRow, ...]:
    """The rows of these products, in the log's order."""
    if isinstance(rows, PriceRows):
        found = [row for product in products for row in rows.by_product.get(product, ())]
        return tuple(sorted(found, key=lambda row: row.line))
    wanted = frozenset(products)
    return tuple(row for row in rows if row.product in wanted)
