"""A long price log as columns: numbers by line, and each distinct offer once."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from spindlewise.catalog.price_row import Kind, Tax
from spindlewise.catalog.text_numbers import Codes, Ints

Offered: TypeAlias = tuple[str, str, str, Kind, str, Tax]

NO_DAY = 0
"""In place of a last day that is not stated."""


@dataclass(frozen=True, slots=True, eq=False)
class PriceColumns:
    """All lines of a log in its order; every array has one entry a line.

    `offers` are product, region, seller, kind, currency and tax, as `price_log.offered` has them.
    """

    starts: NDArray[np.uint32]
    """Where in the text each line begins, in bytes."""
    days: Codes
    """Days as ordinals, day 1 of year 1 as 1."""
    until: Codes
    """Last days as ordinals, NO_DAY where none is stated."""
    offer: Codes
    """Indices into `offers`."""
    minor: Ints
    """Amounts in minor units of the offer's currency."""
    offers: tuple[Offered, ...]

    def __len__(self) -> int:
        return len(self.days)

    def offers_where(self, column: int, values: Iterable[str]) -> NDArray[np.bool_]:
        """By line: whether this part of its offer is among the values."""
        wanted = frozenset(values)
        mask = np.array([parts[column] in wanted for parts in self.offers], dtype=np.bool_)
        found: NDArray[np.bool_] = mask[self.offer] if len(self.offers) else np.zeros(0, np.bool_)
        return found

    def picked(self, which: NDArray[np.bool_]) -> "PriceColumns":
        """Only these lines."""
        return PriceColumns(
            self.starts[which],
            self.days[which],
            self.until[which],
            self.offer[which],
            self.minor[which],
            self.offers,
        )

    def followed_by(self, other: "PriceColumns", at: int) -> "PriceColumns":
        """These lines and those of the other below them, whose text begins at byte `at` of the whole."""
        numbers = {offer: number for number, offer in enumerate(self.offers)}
        renumbered = np.array([numbers.setdefault(o, len(numbers)) for o in other.offers], np.int32)
        own = renumbered[other.offer] if len(renumbered) else other.offer
        return PriceColumns(
            np.concatenate([self.starts, other.starts + np.uint32(at)]),
            np.concatenate([self.days, other.days]),
            np.concatenate([self.until, other.until]),
            np.concatenate([self.offer, own]),
            np.concatenate([self.minor, other.minor]),
            tuple(numbers),
        )

    def likeness(self) -> Ints:
        """A number for each line, the same for lines that say the same but for source and spelling.

        Unlike lines may have it in common by chance; overflow is meant, it wraps around.
        """
        found = np.zeros(len(self), np.int64)
        for column in (self.days, self.offer, self.minor, self.until):
            found = (found ^ column) * np.int64(0x1E3779B97F4A7C15)
            found ^= found >> 29
        return found
