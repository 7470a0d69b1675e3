"""Limits of agreement: between which differences nearly all single readings of two meters lie."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal, get_args

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate, around, t_quantile
from spindlewise.bench.independence import independence

ErrorRule = Literal["1986", "1999"]
"""Which approximation gives the standard error of a limit; see `limits_of_agreement`."""

MULTIPLIER = 1.96
"""So many standard deviations on either side hold 95 of 100 normal differences; the paper of 1986 used 2."""


@dataclass(frozen=True, slots=True)
class Limits:
    """Mean difference, its standard deviation, and the limits with their intervals, in the series' unit."""

    mean: Estimate
    sd: float
    lower: Estimate
    upper: Estimate
    multiplier: float
    error_rule: ErrorRule
    standard_error: float
    effective: float
    settled: bool


def limits_of_agreement(
    differences: npt.ArrayLike,
    *,
    level: float = 0.95,
    multiplier: float = MULTIPLIER,
    error_rule: ErrorRule = "1999",
    independent: bool = False,
) -> Limits:
    """Give mean -/+ multiplier * sd of the differences, each with its interval (Bland and Altman 1986, 1999).

    `differences` of shape (n,), evenly spaced in time, nan = gap. The standard error of a limit is, by
    `error_rule`, sqrt(3 s^2 / n) ("1986", Lancet i:307, rounded for 1 + 2^2 / 2) or
    s * sqrt(1 / n + multiplier^2 / (2 (n - 1))) ("1999", Stat Methods Med Res 8:135, the default).

    Differences of a ride resemble their neighbours: n is then the effective number of readings, for the mean
    and for the standard deviation each its own, and t has the degrees of freedom of `independence`. With
    `independent=True` all is as in the papers. Raises ValueError for an unknown rule, a multiplier that is
    not above 0, or too few readings.

    >>> found = limits_of_agreement([1.0, -1.0, 2.0, -2.0, 0.0], independent=True)
    >>> round(found.lower.value, 3), round(found.upper.value, 3)
    (-3.099, 3.099)
    """
    if error_rule not in get_args(ErrorRule) or not 0.0 < multiplier < math.inf:
        raise ValueError(
            f"the rule {error_rule!r} with a multiplier of {multiplier}; the rule is one of"
            f" {', '.join(get_args(ErrorRule))} and the multiplier is above 0"
        )
    values = np.asarray(differences, dtype=np.float64)
    worth = independence(values, independent=independent)
    mean = float(np.nanmean(values))
    t = t_quantile(level, worth.degrees_of_freedom)
    if error_rule == "1986":
        error = worth.sd * math.sqrt(3.0 / min(worth.effective, worth.effective_sd))
    else:
        error = worth.sd * math.sqrt(
            1.0 / worth.effective + multiplier**2 / (2.0 * (worth.effective_sd - 1.0))
        )
    return Limits(
        mean=around(mean, t * worth.standard_error),
        sd=worth.sd,
        lower=around(mean - multiplier * worth.sd, t * error),
        upper=around(mean + multiplier * worth.sd, t * error),
        multiplier=multiplier,
        error_rule=error_rule,
        standard_error=error,
        effective=worth.effective,
        settled=worth.settled,
    )


@dataclass(frozen=True, slots=True)
class RatioLimits:
    """Geometric mean of first over second, and between which ratios nearly all single readings lie."""

    ratio: Estimate
    lower: Estimate
    upper: Estimate
    count: int


def ratio_limits(
    first: npt.ArrayLike,
    second: npt.ArrayLike,
    *,
    level: float = 0.95,
    multiplier: float = MULTIPLIER,
    error_rule: ErrorRule = "1999",
    independent: bool = False,
) -> RatioLimits:
    """Give the limits of agreement of first / second, by way of the logarithms (Bland and Altman 1986).

    Fits where differences grow with power. Zero has no logarithm: only seconds in which both read more than
    zero count. Raises ValueError as `limits_of_agreement` does.

    >>> found = ratio_limits([100.0, 210.0, 300.0], [100.0, 200.0, 300.0], independent=True)
    >>> round(found.ratio.value, 4)
    1.0164
    """
    one, two = np.asarray(first, dtype=np.float64), np.asarray(second, dtype=np.float64)
    both = (one > 0.0) & (two > 0.0)
    logs = np.full(one.shape, np.nan)
    logs[both] = np.log(one[both] / two[both])
    found = limits_of_agreement(
        logs, level=level, multiplier=multiplier, error_rule=error_rule, independent=independent
    )
    return RatioLimits(_as_ratio(found.mean), _as_ratio(found.lower), _as_ratio(found.upper), int(both.sum()))


def _as_ratio(logarithm: Estimate) -> Estimate:
    return Estimate(math.exp(logarithm.value), math.exp(logarithm.low), math.exp(logarithm.high))
