"""A standing: one figure of one product as it counts for one criterion, with where it comes from."""

from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from typing import Literal

Origin = Literal[
    "measured",
    "reported",
    "claimed",
    "predicted",
    "observed price",
    "worked out",
    "worked out from claims",
    "unknown",
    "none",
    "not applicable",
]
"""The grade of an observation; or predicted from the catalog's record; or worked out from several figures.

From claims, where nothing of it was seen on the bench.
"""


@dataclass(frozen=True, slots=True)
class Standing:
    """The figure, its interval, its origin; `value` is None where there is no figure.

    `low` and `high` are in the unit of `value` and None where nobody states an interval.
    """

    criterion: str
    value: float | str | None
    low: float | None
    high: float | None
    unit: str
    origin: Origin
    date: Day | None
    source: str
    note: str = ""
    possible: tuple[str, ...] = ()
    """Where it is unknown which of several steps holds: those that remain possible; empty for all."""
    not_measured: tuple[str, ...] = ()
    """Where a figure is worked out: the causes or parts of it that nobody has measured or priced."""

    @property
    def is_known(self) -> bool:
        """Whether there is a figure at all."""
        return self.value is not None
