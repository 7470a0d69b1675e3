"""Budget of an uncertainty: causes with their standard uncertainties and biases, and what they come to."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

COVERAGE = 2.0
"""The coverage factor k; about 95 % where many causes of like size meet."""


@dataclass(frozen=True, slots=True)
class Contribution:
    """One cause: its standard uncertainty, the bias it leaves uncorrected, and how both were come by.

    A cause that nobody has measured counts by the least kind end of what is plausible;
    `kindest_standard_pct` is then its standard uncertainty at the kind end, and None for every other cause.
    """

    name: str
    standard_pct: float
    kind: Literal["rectangular", "normal", "fixed", "not measured"]
    note: str
    bias_pct: float = 0.0
    kindest_standard_pct: float | None = None

    @property
    def least_pct(self) -> float:
        """The standard uncertainty at its kindest: the only one, where the cause is known."""
        return self.standard_pct if self.kindest_standard_pct is None else self.kindest_standard_pct

    @property
    def reach_pct(self) -> float:
        """How far this cause alone may carry the reading: size of the bias plus k standard uncertainties."""
        return abs(self.bias_pct) + COVERAGE * self.standard_pct


@dataclass(frozen=True, slots=True)
class Budget:
    """The uncertainty of one reading of total power, in percent of the truth.

    The error lies in `low_error_pct` to `high_error_pct`, and `expanded_pct` is the farther end from zero.
    `expanded_low_pct` and `expanded_high_pct` are the same at the kindest and the least kind balance of the
    range, the first with causes that nobody has measured at the kind end of what is plausible. All are None
    where the reading has no total power or a figure in `missing` is unknown; `contributions` then lists what
    is known. `left_out` names causes of which nothing is known and that are therefore not in the figure.
    `largest` is the cause that reaches farthest, empty where there is none.
    """

    expanded_pct: float | None
    combined_pct: float | None
    bias_pct: float | None
    low_error_pct: float | None
    high_error_pct: float | None
    expanded_low_pct: float | None
    expanded_high_pct: float | None
    contributions: tuple[Contribution, ...]
    largest: str
    missing: tuple[str, ...]
    left_out: tuple[str, ...]
    note: str
    known_low_pct: float | None = None
    """As `expanded_low_pct`, but with causes that nobody has measured at their least kind."""

    @property
    def not_measured(self) -> tuple[str, ...]:
        """The causes that nobody has measured and that count by what is plausible."""
        return tuple(c.name for c in self.contributions if c.kind == "not measured")


def combine(causes: Sequence[Contribution]) -> tuple[float, float]:
    """Give the sum of the biases and the combined standard uncertainty, for causes that are independent.

    >>> combine([Contribution("a", 3.0, "normal", ""), Contribution("b", 4.0, "normal", "", -1.0)])
    (-1.0, 5.0)
    """
    return math.fsum(c.bias_pct for c in causes), math.hypot(*(c.standard_pct for c in causes))


def largest(causes: Sequence[Contribution]) -> str:
    """Name the cause that reaches farthest, the first of level ones; empty where none reaches anywhere."""
    farthest = max(causes, key=lambda cause: cause.reach_pct, default=None)
    return farthest.name if farthest is not None and farthest.reach_pct > 0 else ""
