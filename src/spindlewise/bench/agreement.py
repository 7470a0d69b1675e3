"""How two meters agree over a ride: mean difference, limits of agreement, ratio and slope."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate, FloatArray
from spindlewise.bench.independence import LEAST_IN_A_ROW
from spindlewise.bench.limits import (
    MULTIPLIER,
    ErrorRule,
    Limits,
    RatioLimits,
    limits_of_agreement,
    ratio_limits,
)
from spindlewise.bench.pairing import ZeroRule, paired
from spindlewise.bench.percent import MEAN_OF_BOTH, difference_pct
from spindlewise.bench.proportional_bias import ProportionalBias, proportional_bias


@dataclass(frozen=True, slots=True)
class Agreement:
    """What two meters read of the same seconds. Differences are first minus second, in the series' unit.

    `difference_pct` is the mean difference in percent of the mean of `percent_of`, None where that is zero.
    `ratio` leaves out seconds in which either reads zero; None where too few are left. `slope` is None on a
    ride of one power.
    """

    first: str
    second: str
    percent_of: str
    zeros: ZeroRule
    count: int
    mean_first: float
    mean_second: float
    limits: Limits
    difference_pct: Estimate | None
    ratio: RatioLimits | None
    slope: ProportionalBias | None

    @property
    def mean_difference(self) -> Estimate:
        """Mean of first minus second, with its interval."""
        return self.limits.mean


@dataclass(frozen=True, slots=True)
class WithAndWithoutZeros:
    """The two figures that a ride with coasting has; None where too few seconds are left."""

    with_zeros: Agreement | None
    without_zeros: Agreement | None


def agreement(
    first: npt.ArrayLike,
    second: npt.ArrayLike,
    *,
    names: tuple[str, str],
    percent_of: str,
    zeros: ZeroRule = "with zeros",
    level: float = 0.95,
    multiplier: float = MULTIPLIER,
    error_rule: ErrorRule = "1999",
    independent: bool = False,
) -> Agreement:
    """Give how two series of one common clock agree, shape (n,) each, nan where there is no reading.

    Power or cadence alike. The series are aligned beforehand. `percent_of` is one of the two names or
    `mean of both`. Readings that are neighbours in time are not independent, which widens every interval
    (see `independence`); `independent=True` is for readings that are, as in the papers' data.
    Raises ValueError for two equal names, another denominator, fewer than 20 compared readings (3 of
    independent ones), and whatever `paired` and `limits_of_agreement` refuse.

    >>> first, second = [179.0, 181.0, 183.0, 180.0], [173.0, 174.0, 178.0, 175.0]
    >>> found = agreement(first, second, names=("hub", "pedals"), percent_of="hub", independent=True)
    >>> found.mean_difference.value, round(found.difference_pct.value, 2), found.percent_of
    (5.75, 3.18, 'hub')
    """
    if names[0] == names[1] or percent_of not in (*names, MEAN_OF_BOTH):
        raise ValueError(
            f"the meters {names[0]!r} and {names[1]!r}, in percent of {percent_of!r}; the names differ, and"
            f" the denominator is one of them or {MEAN_OF_BOTH!r}"
        )
    one, two = paired(first, second, zeros)
    difference = one - two
    limits = limits_of_agreement(
        difference, level=level, multiplier=multiplier, error_rule=error_rule, independent=independent
    )
    denominator = {names[0]: one, names[1]: two}.get(percent_of, (one + two) / 2.0)
    ratio = None
    if _positive(one, two) >= (3 if independent else LEAST_IN_A_ROW):
        ratio = ratio_limits(
            one, two, level=level, multiplier=multiplier, error_rule=error_rule, independent=independent
        )
    return Agreement(
        first=names[0],
        second=names[1],
        percent_of=percent_of,
        zeros=zeros,
        count=int(np.count_nonzero(~np.isnan(difference))),
        mean_first=float(np.nanmean(one)),
        mean_second=float(np.nanmean(two)),
        limits=limits,
        difference_pct=difference_pct(difference, denominator, level=level, independent=independent),
        ratio=ratio,
        slope=proportional_bias(one, two, level=level, independent=independent),
    )


def with_and_without_zeros(
    first: npt.ArrayLike,
    second: npt.ArrayLike,
    *,
    names: tuple[str, str],
    percent_of: str,
    level: float = 0.95,
) -> WithAndWithoutZeros:
    """Give the agreement twice: over all compared seconds, and over those in which both read above zero.

    Either is None where fewer than 20 seconds are left. Raises ValueError as `agreement` does else.
    """

    def under(zeros: ZeroRule) -> Agreement | None:
        one, _ = paired(first, second, zeros)
        if np.count_nonzero(~np.isnan(one)) < LEAST_IN_A_ROW:
            return None
        return agreement(first, second, names=names, percent_of=percent_of, zeros=zeros, level=level)

    return WithAndWithoutZeros(under("with zeros"), under("without zeros"))


def _positive(one: FloatArray, two: FloatArray) -> int:
    return int(np.count_nonzero((one > 0.0) & (two > 0.0)))
