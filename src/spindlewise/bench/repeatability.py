"""Repeatability: how far two readings of the same thing by the same meter lie apart."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import FloatArray


@dataclass(frozen=True, slots=True)
class Repeatability:
    """Spread of repeats about zero, and the coefficient under which 95 of 100 repeats differ.

    `sd` = sqrt(mean of the squared differences of the two readings): the mean of the differences is taken as
    zero, the meter being the same. `coefficient` = multiplier * sd.
    """

    sd: float
    coefficient: float
    count: int


def repeatability(once: npt.ArrayLike, again: npt.ArrayLike, multiplier: float = 2.0) -> Repeatability:
    """Give the repeatability of one meter from pairs of readings, shape (n,) each (BS 5497 part 1, 1979).

    The coefficient of the British Standards Institution as Bland and Altman (1986) use it: 2 standard
    deviations of the differences about zero. Raises ValueError for series of unlike length or of none.

    >>> repeatability([10.0, 12.0], [11.0, 11.0])
    Repeatability(sd=1.0, coefficient=2.0, count=2)
    """
    difference = _difference(once, again)
    sd = math.sqrt(float((difference**2).mean()))
    return Repeatability(sd, multiplier * sd, len(difference))


def corrected_sd(
    first: tuple[npt.ArrayLike, npt.ArrayLike], second: tuple[npt.ArrayLike, npt.ArrayLike]
) -> float:
    """Give the standard deviation of the difference of single readings, from two readings by each meter.

    Averages of two differ less than single readings do. sqrt(sD^2 + s1^2 / 4 + s2^2 / 4), with sD the
    standard deviation of the differences of the averages and s1, s2 the spread of each meter's repeats about
    zero (Bland and Altman 1986). Raises ValueError for series of unlike length or fewer than two rows.
    """
    averages = [(_series(once) + _series(again)) / 2.0 for once, again in (first, second)]
    difference = _difference(*averages)
    if len(difference) < 2:
        raise ValueError("one row of readings; a spread needs at least two")
    spread = float(difference.var(ddof=1))
    return math.sqrt(spread + sum(repeatability(*pair).sd ** 2 / 4.0 for pair in (first, second)))


def _series(readings: npt.ArrayLike) -> FloatArray:
    return np.asarray(readings, dtype=np.float64)


def _difference(once: npt.ArrayLike, again: npt.ArrayLike) -> FloatArray:
    one, two = _series(once), _series(again)
    if one.ndim != 1 or one.shape != two.shape or not len(one) or not np.isfinite(one - two).all():
        raise ValueError(
            f"readings of shapes {one.shape} and {two.shape}; each row holds two finite readings of one thing"
        )
    return one - two
