"""Proportional bias: whether the difference of two meters grows with power, which no average shows."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate, around, t_quantile
from spindlewise.bench.independence import LEAST_IN_A_ROW, independence
from spindlewise.bench.products import sum_of_products

LEAST_APART = 3
LOW, HIGH = 5.0, 95.0
"""The percentiles of the readings at which the fitted difference is told as well."""


@dataclass(frozen=True, slots=True)
class ProportionalBias:
    """Slope of the difference (first minus second) on the mean of both, and the line at both ends.

    `slope` is a pure number: 0.05 means 5 more watts of difference per 100 W; `intercept` is the difference
    that the line has at no power. A scale alone has a slope and no intercept: so many percent at any power.
    `at_low` and `at_high` are the 5th and 95th percentile of the mean of both; the differences there are in
    the series' unit, and in percent of that mean (nan where it is zero).
    """

    slope: Estimate
    intercept: Estimate
    at_low: float
    at_high: float
    difference_at_low: float
    difference_at_high: float

    @property
    def shows(self) -> bool:
        """Whether the difference in watts changes with power: the slope's interval leaves out zero."""
        return not self.slope.holds(0.0)

    @property
    def percent_changes(self) -> bool:
        """Whether the difference in percent changes with power: the intercept's interval leaves out zero."""
        return not self.intercept.holds(0.0)

    @property
    def pct_at_low(self) -> float:
        """The fitted difference at low power, in percent of that power."""
        return _percent(self.difference_at_low, self.at_low)

    @property
    def pct_at_high(self) -> float:
        """The fitted difference at high power, in percent of that power."""
        return _percent(self.difference_at_high, self.at_high)


def proportional_bias(
    first: npt.ArrayLike, second: npt.ArrayLike, *, level: float = 0.95, independent: bool = False
) -> ProportionalBias | None:
    """Give the regression of the difference on the mean (Bland and Altman 1999), None on a ride of one power.

    Series of shape (n,), evenly spaced in time, nan = gap. The slope's variance is the classical one for
    independent readings, else the variance of sum(u) over Sxx^2 with u = deviation of the mean * residual,
    whose autocorrelation `independence` takes into account. On the mean, not on one meter: regressing on one
    of them shows a slope even between equals. A meter that is noisier than the other still leaves a slight
    slope where the ride's own spread of power is small; see `deming` for noises that are known to be unequal.
    Raises ValueError for fewer than 20 readings (3 of independent ones).

    >>> first, second = [105.0, 205.0, 301.0, 395.0, 494.0], [100.0, 203.0, 300.0, 399.0, 500.0]
    >>> found = proportional_bias(first, second, independent=True)
    >>> found.shows, round(found.slope.value, 3)
    (True, -0.029)
    """
    one, two = np.asarray(first, dtype=np.float64), np.asarray(second, dtype=np.float64)
    difference, middle = one - two, (one + two) / 2.0
    here = ~np.isnan(difference)
    count, least = int(here.sum()), LEAST_APART if independent else LEAST_IN_A_ROW
    if count < least:
        raise ValueError(f"{count} readings of both; a slope needs at least {least}")
    centre, mean = float(middle[here].mean()), float(difference[here].mean())
    across = middle - centre
    sxx = sum_of_products(across[here], across[here])
    if sxx <= count * (1e-9 * max(abs(centre), 1.0)) ** 2:
        return None
    slope = sum_of_products(across[here], difference[here] - mean) / sxx
    residual = difference - mean - slope * across
    if independent:
        degrees = intercept_degrees = float(count - 2)
        spread = math.sqrt(sum_of_products(residual[here], residual[here]) / degrees)
        error, intercept_error = spread / math.sqrt(sxx), spread * math.sqrt(1.0 / count + centre**2 / sxx)
    else:
        of_slope = independence(residual * across)
        of_intercept = independence(residual * (1.0 - centre * across * count / sxx))
        degrees, intercept_degrees = of_slope.degrees_of_freedom, of_intercept.degrees_of_freedom
        error, intercept_error = of_slope.standard_error * count / sxx, of_intercept.standard_error
    at_low, at_high = (float(v) for v in np.percentile(middle[here], (LOW, HIGH)))
    intercept = mean - slope * centre
    return ProportionalBias(
        slope=around(slope, t_quantile(level, degrees) * error),
        intercept=around(intercept, t_quantile(level, intercept_degrees) * intercept_error),
        at_low=at_low,
        at_high=at_high,
        difference_at_low=intercept + slope * at_low,
        difference_at_high=intercept + slope * at_high,
    )


def _percent(difference: float, of: float) -> float:
    return 100.0 * difference / of if of != 0.0 else math.nan
