"""The difference of two readings in percent, and of whose reading."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate, around, t_quantile
from spindlewise.bench.independence import independence

MEAN_OF_BOTH = "mean of both"


@dataclass(frozen=True, slots=True)
class Percent:
    """How far one average lies from another, in percent of the reading of `percent_of`."""

    pct: float
    percent_of: str


def percent_difference(reading: float, other: float, percent_of: str = "other") -> Percent:
    """Give reading minus other in percent of the other, which the result names.

    Two meters differ, and neither is wrong by that difference: it has as many figures as there are
    denominators. Raises ValueError for an average that is not above zero.

    >>> found = percent_difference(173, 179, "hub")
    >>> round(found.pct, 1), found.percent_of
    (-3.4, 'hub')
    >>> [round(each.pct, 1) for each in (percent_difference(221, 232), percent_difference(232, 221))]
    [-4.7, 5.0]
    """
    for average in (reading, other):
        if not 0.0 < average < math.inf:
            raise ValueError(f"an average of {average}; a percentage needs averages above zero")
    return Percent(float(100.0 * (reading - other) / other), percent_of)


def difference_pct(
    difference: npt.ArrayLike,
    denominator: npt.ArrayLike,
    *,
    level: float = 0.95,
    independent: bool = False,
) -> Estimate | None:
    """Give 100 * sum of the differences / sum of the denominator, with its interval; None over zero.

    Series of shape (n,), nan in both where there is a gap. A ratio of two sums, not a mean of ratios: seconds
    of high power count as they do in an average. Its standard error is that of the mean of
    difference - ratio * denominator (ratio estimator, Cochran 1977, Sampling Techniques), with the
    autocorrelation of that series taken into account.

    >>> difference_pct([1.0, 3.0, 2.0], [100.0, 100.0, 200.0], independent=True).value
    1.5
    """
    top, bottom = np.asarray(difference, dtype=np.float64), np.asarray(denominator, dtype=np.float64)
    mean_bottom = float(np.nanmean(bottom))
    if mean_bottom <= 0.0:
        return None
    ratio = float(np.nanmean(top)) / mean_bottom
    worth = independence(top - ratio * bottom, independent=independent)
    reach = t_quantile(level, worth.degrees_of_freedom) * worth.standard_error / mean_bottom
    return around(ratio, reach).times(100.0)
