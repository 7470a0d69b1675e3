"""A figure with the interval that holds it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Estimate:
    """A figure and the confidence interval about it, all in the figure's own unit.

    Raises ValueError where `low` lies above `high`. The figure itself need not lie inside: a percentile
    interval of a skewed figure may leave it out.
    """

    value: float
    low: float
    high: float

    def __post_init__(self) -> None:
        if self.low > self.high:
            raise ValueError(f"an interval from {self.low} to {self.high}; its low end comes first")

    def holds(self, figure: float) -> bool:
        """Say whether the interval holds `figure`, ends included."""
        return self.low <= figure <= self.high

    def times(self, factor: float) -> Estimate:
        """Give the same figure in another unit or with the other sign.

        >>> Estimate(1.0, 0.5, 2.0).times(-100)
        Estimate(value=-100.0, low=-200.0, high=-50.0)
        """
        low, high = sorted((self.low * factor, self.high * factor))
        return Estimate(self.value * factor, low, high)


def around(value: float, half_width: float) -> Estimate:
    """Give an estimate with an interval of `half_width` on either side.

    >>> around(3.0, 0.5)
    Estimate(value=3.0, low=2.5, high=3.5)
    """
    return Estimate(value, value - half_width, value + half_width)


def t_quantile(level: float, degrees_of_freedom: float) -> float:
    """Give how many standard errors the two-sided interval of `level` reaches on either side (Student's t).

    Degrees of freedom need not be whole, and infinity gives the normal distribution. Raises ValueError for a
    level outside 0 to 1 or for no degrees of freedom.

    >>> round(t_quantile(0.95, 16), 4)
    2.1199
    """
    from scipy.special import stdtrit

    if not 0.0 < level < 1.0 or not degrees_of_freedom > 0.0:
        raise ValueError(
            f"a level of {level} with {degrees_of_freedom} degrees of freedom; the level lies between 0 and"
            " 1, as 0.95 does, and the degrees of freedom above 0"
        )
    # beyond 1e10 the two distributions agree to the last digit
    return float(stdtrit(min(degrees_of_freedom, 1e10), (1.0 + level) / 2.0))
