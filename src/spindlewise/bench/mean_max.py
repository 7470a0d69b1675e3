"""The mean-maximal power curve: the best average over each duration."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.percent import Percent, percent_difference

DURATIONS_S = (1, 5, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600)


@dataclass(frozen=True, slots=True)
class Best:
    """The best average over one duration, and the second where it starts; None where no window is whole."""

    duration_s: int
    best_w: float | None
    start_s: int | None


def mean_maximal(power_w: npt.ArrayLike, durations_s: Sequence[int] = DURATIONS_S) -> tuple[Best, ...]:
    """Give the best average power over each duration of a series of one reading a second, shape (n,).

    A window with a gap (nan) does not count: filling it would invent power, and skipping it would join
    efforts that were apart. Of equal windows the first is told. One running sum serves all durations. Raises
    ValueError for durations below 1 s or a series of more than one dimension.

    >>> found = mean_maximal([100.0, 300, 200, 100], (1, 2, 9))
    >>> [(best.duration_s, best.best_w, best.start_s) for best in found]
    [(1, 300.0, 1), (2, 250.0, 1), (9, None, None)]
    """
    power = np.asarray(power_w, dtype=np.float64)
    if power.ndim != 1 or any(duration < 1 for duration in durations_s):
        raise ValueError(
            f"a series of shape {power.shape} and durations {list(durations_s)}; one row, 1 s or more"
        )
    gap = np.isnan(power)
    sums = np.concatenate(([0.0], np.cumsum(np.where(gap, 0.0, power))))
    gaps = np.concatenate(([0], np.cumsum(gap)))
    found = []
    for duration in durations_s:
        whole = gaps[duration:] == gaps[:-duration] if duration <= len(power) else np.zeros(0, dtype=np.bool_)
        if not whole.any():
            found.append(Best(duration, None, None))
            continue
        totals = np.where(whole, sums[duration:] - sums[:-duration], -np.inf)
        start = int(totals.argmax())
        # summed anew: the running sum of a long ride carries the rounding of all that came before
        found.append(Best(duration, float(power[start : start + duration].mean()), start))
    return tuple(found)


@dataclass(frozen=True, slots=True)
class BestOfTwo:
    """Two meters' best averages over one duration, each in its own window, and their difference.

    `same_effort` says whether both windows overlap by half or more: else the two figures are of two efforts.
    """

    duration_s: int
    first_w: float
    second_w: float
    difference: Percent
    same_effort: bool


def mean_maximal_of_two(
    first_w: npt.ArrayLike,
    second_w: npt.ArrayLike,
    *,
    second: str,
    durations_s: Sequence[int] = DURATIONS_S,
) -> tuple[BestOfTwo, ...]:
    """Give both meters' curves side by side, first minus second in percent of the second, which is named.

    Series of one clock, shape (n,). Seconds in which either has a gap count for neither. Durations without a
    whole window, or without power in it, are left out.
    """
    one, two = np.array(first_w, dtype=np.float64), np.array(second_w, dtype=np.float64)
    if one.shape != two.shape:
        raise ValueError(f"series of shapes {one.shape} and {two.shape}; they share one clock and one length")
    gap = np.isnan(one) | np.isnan(two)
    one[gap] = two[gap] = np.nan
    found = []
    for a, b in zip(mean_maximal(one, durations_s), mean_maximal(two, durations_s), strict=True):
        if a.best_w is None or b.best_w is None or a.start_s is None or b.start_s is None:
            continue
        if a.best_w > 0.0 and b.best_w > 0.0:
            same = 2 * abs(a.start_s - b.start_s) <= a.duration_s
            difference = percent_difference(a.best_w, b.best_w, second)
            found.append(BestOfTwo(a.duration_s, a.best_w, b.best_w, difference, same))
    return tuple(found)
