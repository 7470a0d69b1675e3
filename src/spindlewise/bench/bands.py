"""Agreement by power band or cadence band: a meter may be right on average and wrong everywhere."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate, FloatArray
from spindlewise.bench.independence import LEAST_IN_A_ROW
from spindlewise.bench.limits import limits_of_agreement
from spindlewise.bench.pairing import ZeroRule, paired
from spindlewise.bench.percent import MEAN_OF_BOTH, difference_pct

LEAST_S = 60
"""In a band of fewer seconds nothing is claimed."""


@dataclass(frozen=True, slots=True)
class Band:
    """The agreement within one band, low end in, high end out; nothing claimed where it has too few seconds.

    `mean_difference` is first minus second in watts, `difference_pct` the same in percent of the mean of
    `percent_of` within the band, `sd` the standard deviation of single differences.
    """

    low: float
    high: float
    count: int
    percent_of: str
    mean_difference: Estimate | None
    difference_pct: Estimate | None
    sd: float | None


def power_bands(
    first: npt.ArrayLike,
    second: npt.ArrayLike,
    edges: Sequence[float],
    *,
    names: tuple[str, str],
    percent_of: str,
    zeros: ZeroRule = "with zeros",
    level: float = 0.95,
    least_s: int = LEAST_S,
) -> tuple[Band, ...]:
    """Give the agreement in each power band, the band of a second being that of the mean of both readings.

    By the mean of both, because bands by one meter alone favour it: its high errors crowd into the high bands
    and make the other look low there. Series of shape (n,), nan = gap. Raises ValueError as `cadence_bands`
    does.
    """
    one, two = paired(first, second, zeros)
    middle = (one + two) / 2.0
    return _bands(one, two, middle, edges, names, percent_of, level, least_s)


def cadence_bands(
    first: npt.ArrayLike,
    second: npt.ArrayLike,
    cadence_rpm: npt.ArrayLike,
    edges: Sequence[float],
    *,
    names: tuple[str, str],
    percent_of: str,
    zeros: ZeroRule = "with zeros",
    level: float = 0.95,
    least_s: int = LEAST_S,
) -> tuple[Band, ...]:
    """Give the power agreement in each cadence band, of the same clock, nan where no cadence is known.

    Raises ValueError for edges that do not rise, fewer than 20 seconds as the least, series of unlike length,
    and a denominator that is neither of the names nor `mean of both`.
    """
    one, two = paired(first, second, zeros)
    cadence = np.asarray(cadence_rpm, dtype=np.float64)
    if cadence.shape != one.shape:
        raise ValueError(
            f"cadence of shape {cadence.shape} beside power of shape {one.shape}; one clock for all"
        )
    return _bands(one, two, cadence, edges, names, percent_of, level, least_s)


def even_edges(series: npt.ArrayLike, step: float) -> tuple[float, ...]:
    """Give edges at whole steps that hold every reading of a series, nan left out.

    >>> even_edges([120.0, 310.0], 100.0)
    (100.0, 200.0, 300.0, 400.0)
    """
    values = np.asarray(series, dtype=np.float64)
    values = values[np.isfinite(values)]
    if not len(values) or not step > 0.0:
        raise ValueError(f"{len(values)} readings in steps of {step}; at least one, and a step above 0")
    low, high = int(np.floor(values.min() / step)), int(np.floor(values.max() / step)) + 1
    return tuple(step * edge for edge in range(low, high + 1))


def _bands(
    one: FloatArray,
    two: FloatArray,
    by: FloatArray,
    edges: Sequence[float],
    names: tuple[str, str],
    percent_of: str,
    level: float,
    least_s: int,
) -> tuple[Band, ...]:
    if len(edges) < 2 or not (np.diff(edges) > 0.0).all() or least_s < LEAST_IN_A_ROW:
        raise ValueError(
            f"edges {list(edges)} and a least of {least_s} s; at least two edges that rise, and"
            f" {LEAST_IN_A_ROW} s"
        )
    if percent_of not in (*names, MEAN_OF_BOTH):
        raise ValueError(
            f"in percent of {percent_of!r}; it is one of {names[0]!r}, {names[1]!r}, {MEAN_OF_BOTH!r}"
        )
    denominator = {names[0]: one, names[1]: two}.get(percent_of, (one + two) / 2.0)
    difference = one - two
    found = []
    for low, high in pairwise(edges):
        inside = ~np.isnan(difference) & (by >= low) & (by < high)
        count = int(np.count_nonzero(inside))
        if count < least_s:
            found.append(Band(low, high, count, percent_of, None, None, None))
            continue
        # seconds outside the band become gaps, so that neighbours in time stay neighbours
        within, of = np.where(inside, difference, np.nan), np.where(inside, denominator, np.nan)
        limits = limits_of_agreement(within, level=level)
        pct = difference_pct(within, of, level=level)
        found.append(Band(low, high, count, percent_of, limits.mean, pct, limits.sd))
    return tuple(found)
