"""Causes that nobody has measured: what they may plausibly add to the uncertainty of a reading."""

from __future__ import annotations

import math
from dataclasses import dataclass

from spindlewise.reception.budget import Contribution


@dataclass(frozen=True, slots=True)
class Plausible:
    """From the kindest to the least kind figure that is plausible, in percent; ValueError out of order."""

    low_pct: float
    high_pct: float

    def __post_init__(self) -> None:
        if not 0 <= self.low_pct <= self.high_pct < math.inf:
            raise ValueError(
                f"plausible from {self.low_pct} to {self.high_pct}; 0 <= low <= high, both finite, is needed"
            )

    def over(self, degrees: float) -> Plausible:
        """A figure for ten degrees, in proportion for so many.

        >>> Plausible(0.2, 1.0).over(5)
        Plausible(low_pct=0.1, high_pct=0.5)
        """
        return Plausible(self.low_pct * degrees / 10, self.high_pct * degrees / 10)


@dataclass(frozen=True, slots=True)
class Unmeasured:
    """What is plausible of each cause where it was not measured.

    `temperature` is the drift over ten degrees without a new zero offset; `bench_spread` is one standard
    deviation of the difference from a reference, which no claim of a tolerance speaks of.
    """

    temperature: Plausible
    bench_spread: Plausible


def not_measured(name: str, plausible: Plausible, what: str, divisor: float = 1.0) -> Contribution:
    """Give the cause as it counts while nobody has measured it: at the least kind end of what is plausible.

    The kind end is kept beside it, so that the reading's figure has a range. Leaving the cause out would make
    a meter that nobody has tried look surer than one on which it was found (JCGM 100:2008, 3.4.4 and 4.3.7:
    what is known only by its bounds counts by its bounds). `divisor` makes a standard uncertainty of a bound:
    the root of three for a rectangular one.

    >>> cause = not_measured("bench spread", Plausible(0.5, 1.5), "one standard deviation")
    >>> cause.standard_pct, cause.kindest_standard_pct, cause.kind
    (1.5, 0.5, 'not measured')
    """
    low, high = plausible.low_pct, plausible.high_pct
    note = f"{what}: {low:g} to {high:g} % is plausible, {high:g} % counts"
    return Contribution(name, high / divisor, "not measured", note, 0.0, low / divisor)
