"""The seconds in which the power stands nearly still: where clocks that differ a little do no harm."""

from __future__ import annotations

import numpy as np

from spindlewise.bench.estimate import FloatArray

MOST_MOVED_W = 50.0
"""Design choice, no source: at such a slope a tenth of a second between two clocks makes 2.5 W."""


def steady_power_w(power_w: FloatArray, most_w: float = MOST_MOVED_W) -> FloatArray:
    """Give the powers of all meters, shape (k, n), with NaN wherever they cannot be told from their clocks.

    Kept are the seconds in which all meters read above zero, and over which the mean of all moves by at most
    `most_w` from the second before to the second after. The first and the last second are never kept.

    >>> steady_power_w(np.array([[200.0, 201.0, 202.0, 300.0, 300.0, 301.0, 301.0]])).tolist()
    [[nan, 201.0, nan, nan, 300.0, 301.0, nan]]
    """
    together = np.where((power_w > 0.0).all(axis=0), power_w, np.nan)
    middle = together.mean(axis=0)
    moved = np.full(len(middle), np.inf)
    moved[1:-1] = np.abs(middle[2:] - middle[:-2])
    return np.asarray(np.where(moved <= most_w, together, np.nan))
