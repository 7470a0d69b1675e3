"""What a price log that is kept in columns can be asked, so that nobody goes through a million rows for it.

The same is asked of rows in a tuple by the functions of `price_rows` and `price_log`, which call these where
they can; this module is light, so that a short log imports nothing for it.
"""

from abc import abstractmethod
from collections.abc import Collection, Iterable, Iterator, Sequence
from datetime import date
from typing import Literal

from spindlewise.catalog.price_row import PriceRow

Offered = tuple[str, str, str, str, str, str]
"""What makes two rows prices of one offer: product, region, seller, kind, currency, tax."""


class ByColumns(Sequence[PriceRow]):
    """Rows in the log's order; each answer is that of looking through all of them one by one."""

    @abstractmethod
    def of_products(self, products: Iterable[str]) -> tuple[PriceRow, ...]:
        """The rows of these products, in the log's order."""

    @abstractmethod
    def not_among(self, part: Literal["product", "region"], known: Collection[str]) -> tuple[PriceRow, ...]:
        """The rows whose product or region is none of those known."""

    @abstractmethod
    def dated_outside(self, first: date, last: date) -> tuple[PriceRow, ...]:
        """The rows dated before the first day or after the last."""

    @abstractmethod
    def newest(self, region: str, day: date) -> dict[Offered, PriceRow]:
        """The newest row of each offer in the region dated on or before the day; offers by first sight."""

    @abstractmethod
    def earliest(self) -> dict[tuple[str, str], PriceRow]:
        """The earliest row of each region and currency; of one day the one further up."""

    @abstractmethod
    def jumps(self, most: int) -> Iterator[tuple[PriceRow, PriceRow]]:
        """Rows of one offer next to each other in time, of which one has more than so many times the amount
        of the other; in order of the later row's date and line.
        """

    @abstractmethod
    def with_row(self, row: PriceRow, line: bytes) -> Sequence[PriceRow]:
        """These rows and one more below, which keeps its own line number; `line` is how the log has it."""

    @abstractmethod
    def without(self, product: str, region: str) -> "ByColumns":
        """These rows without those of the product in the region."""
