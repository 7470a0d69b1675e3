"""What a figure is worth: value curves between fixed knots, and steps for what is named, not measured."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal, TypeAlias

import numpy as np
import numpy.typing as npt

from spindlewise.decide.table import FloatArray

Sense: TypeAlias = Literal["less", "more", "mixed"]

ROWS_AT_ONCE = 2048
"""So many rows of a dozen columns stay in a core's own cache."""


@dataclass(frozen=True, slots=True)
class Curve:
    """A value curve: merit by figure, piecewise linear between knots and flat outside them.

    `x` holds the knots in the figure's own unit, strictly rising; `merit` their merits in 0 to 1. Anchored in
    fixed knots (Keeney and Raiffa 1976, value functions), so that a product's merit does not depend on which
    others are compared. Raises ValueError for knots that are not so.

    >>> price = Curve(x=(400.0, 1200.0), merit=(1.0, 0.0))
    >>> price.at([300, 600, 2000]).tolist()
    [1.0, 0.75, 0.0]
    >>> price.over(500, 700)
    (0.625, 0.875)
    """

    x: tuple[float, ...]
    merit: tuple[float, ...]
    _least: float = field(init=False, repr=False, compare=False)
    _most: float = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        if len(self.x) != len(self.merit) or not self.x:
            raise ValueError(
                f"{len(self.x)} knots and {len(self.merit)} merits given; as many of both, at least one"
            )
        if not all(np.isfinite(self.x)):
            raise ValueError(f"the knots are {self.x}; each is a finite number")
        if any(right <= left for left, right in zip(self.x, self.x[1:], strict=False)):
            raise ValueError(f"the knots are {self.x}; they rise strictly")
        if not all(0.0 <= merit <= 1.0 for merit in self.merit):
            raise ValueError(f"the merits at the knots are {self.merit}; each lies in 0 to 1")
        object.__setattr__(self, "_least", min(self.merit))
        object.__setattr__(self, "_most", max(self.merit))

    def at(self, values: npt.ArrayLike) -> FloatArray:
        """Give the merit of each value, in the shape of `values`; ValueError where a value is NaN."""
        figures = np.asarray(values, dtype=np.float64)
        if np.isnan(figures).any():
            raise ValueError("a merit was asked for NaN; an unknown figure takes the plausible span instead")
        merits = np.asarray(np.interp(figures, self.x, self.merit))
        # between two knots rounding can carry the interpolation past the better one by one last digit
        return np.clip(merits, self._least, self._most)

    def of(self, figure: float) -> float:
        """Give the merit of one figure, with the same bits as `at`, which takes ten times as long for one."""
        if figure != figure:
            raise ValueError("a merit was asked for NaN; an unknown figure takes the plausible span instead")
        after = bisect_right(self.x, figure)
        if after == 0 or after == len(self.x):
            return self.merit[max(after - 1, 0)]
        left, start = self.x[after - 1], self.merit[after - 1]
        if figure == left:
            return start
        slope = (self.merit[after] - start) / (self.x[after] - left)
        return min(max(slope * (figure - left) + start, self._least), self._most)

    def over(self, low: float, high: float) -> tuple[float, float]:
        """Give the exact least and greatest merit that a figure between `low` and `high` can have.

        Knots inside the interval count, so a peak between the two ends is not missed. ValueError unless
        low <= high.
        """
        if not low <= high:
            raise ValueError(f"the interval runs from {low} to {high}; low <= high is needed")
        ends = (self.of(low), self.of(high))
        inside = self.merit[bisect_right(self.x, low) : bisect_left(self.x, high)]
        return min(*ends, *inside), max(*ends, *inside)

    @property
    def sense(self) -> Sense:
        """Whether `less` or `more` of the figure is better; `mixed` for a peak, a trough or a flat."""
        steps = np.diff(self.merit)
        if np.any(steps > 0) and not np.any(steps < 0):
            return "more"
        if np.any(steps < 0) and not np.any(steps > 0):
            return "less"
        return "mixed"


@dataclass(frozen=True, slots=True)
class Steps:
    """Merit by name, for what is not a number, such as what a receiver shows of both sides.

    `merits` maps each name to a merit in 0 to 1. Raises ValueError if it is empty or a merit lies outside.

    >>> reading = Steps({"both sides": 1.0, "one side doubled": 0.4, "nothing": 0.0})
    >>> reading.at(["nothing", "both sides"]).tolist()
    [0.0, 1.0]
    >>> reading.over(["both sides", "one side doubled"])
    (0.4, 1.0)
    """

    merits: Mapping[str, float] = field(hash=False)

    def __post_init__(self) -> None:
        if not self.merits:
            raise ValueError("steps without a single name; at least one is needed")
        outside = sorted(name for name, merit in self.merits.items() if not 0.0 <= merit <= 1.0)
        if outside:
            raise ValueError(f"the merit of {', '.join(outside)} is outside 0 to 1")
        object.__setattr__(self, "merits", MappingProxyType(dict(self.merits)))

    def at(self, names: Iterable[str]) -> FloatArray:
        """Give the merit of each name, shape (len(names),); ValueError for a name that is not a step."""
        asked = list(names)
        strangers = sorted({name for name in asked if name not in self.merits})
        if strangers:
            raise ValueError(
                f"no step is called {', '.join(strangers)}; there are {', '.join(sorted(self.merits))}"
            )
        return np.array([self.merits[name] for name in asked], dtype=np.float64)

    def over(self, names: Iterable[str] | None = None) -> tuple[float, float]:
        """Give the least and greatest merit among the names that remain possible (None: every name)."""
        merits = self.at(self.merits if names is None else names).tolist()
        if not merits:
            raise ValueError("no name remains possible; name at least one")
        return min(merits), max(merits)


def merits_at(curves: Sequence[Curve], values: FloatArray) -> FloatArray:
    """Give the merits of many products at once: column k of `values`, shape (n, m), read off `curves[k]`.

    The same as `curves[k].at(values[:, k])` column by column, to the last digit or two, but in blocks of rows
    and without a search where all curves are straight between two knots: as fast as scaling by hand.
    ValueError for another number of columns than curves, or a NaN.

    >>> price, weight = Curve((400.0, 1200.0), (1.0, 0.0)), Curve((200.0, 300.0, 500.0), (1.0, 0.5, 0.0))
    >>> merits_at((price, weight), np.array([[600.0, 250.0], [800.0, 400.0]])).tolist()
    [[0.75, 0.75], [0.5, 0.25]]
    """
    figures = np.asarray(values, dtype=np.float64)
    if figures.ndim != 2 or figures.shape[1] != len(curves):
        raise ValueError(
            f"values of shape {figures.shape} for {len(curves)} curves; one column a curve is needed"
        )
    if curves and all(len(curve.x) == 2 for curve in curves):
        merits = _straight_merits(curves, np.ascontiguousarray(figures))
    else:
        merits = _searched_merits(curves, figures)
    if np.isnan(merits).any():
        raise ValueError("a merit was asked for NaN; an unknown figure takes the plausible span instead")
    return merits


def _searched_merits(curves: Sequence[Curve], figures: FloatArray) -> FloatArray:
    merits = np.empty(figures.shape)
    for start in range(0, len(figures), ROWS_AT_ONCE):
        block = slice(start, start + ROWS_AT_ONCE)
        for k, curve in enumerate(curves):
            found = np.interp(figures[block, k], curve.x, curve.merit)
            merits[block, k] = np.clip(found, min(curve.merit), max(curve.merit))
    return merits


def _straight_merits(curves: Sequence[Curve], figures: FloatArray) -> FloatArray:
    n, m = figures.shape
    rows = min(n, ROWS_AT_ONCE)
    # one long row of knots as wide as a block: numpy is slow where the inner loop is only m long
    left, right = np.tile(np.array([curve.x for curve in curves]).T, rows)
    at_left, at_right = np.tile(np.array([curve.merit for curve in curves]).T, rows)
    slope = (at_right - at_left) / (right - left)
    worst, best = np.minimum(at_left, at_right), np.maximum(at_left, at_right)
    flat, merits = figures.reshape(-1), np.empty(n * m)
    for start in range(0, n * m, max(1, rows * m)):
        some = flat[start : start + rows * m]
        size = some.size
        out = merits[start : start + size]
        np.clip(some, left[:size], right[:size], out=out)
        out -= left[:size]
        out *= slope[:size]
        out += at_left[:size]
        np.clip(out, worst[:size], best[:size], out=out)
    return merits.reshape(n, m)
