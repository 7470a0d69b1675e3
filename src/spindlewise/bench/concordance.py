"""Concordance: how closely two meters' readings lie along the line on which both read the same."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.blocks import Blocks, block_length, jackknife, split
from spindlewise.bench.estimate import Estimate, FloatArray, around, t_quantile
from spindlewise.bench.pairing import paired


@dataclass(frozen=True, slots=True)
class Concordance:
    """Lin's coefficient: precision times accuracy, with the scale and the location shift behind it.

    `interval` is None where the ride is too short to give one, or all readings lie on one line. `precision`
    is the correlation r, `accuracy` is C_b, `scale_shift` s_first / s_second and `location_shift` the
    difference of the means over the root of the product of both standard deviations.
    """

    value: float
    interval: Estimate | None
    precision: float
    accuracy: float
    scale_shift: float
    location_shift: float
    ddof: int
    count: int


def concordance(
    first: npt.ArrayLike,
    second: npt.ArrayLike,
    *,
    level: float = 0.95,
    ddof: int = 0,
    independent: bool = False,
) -> Concordance | None:
    """Give Lin's concordance coefficient of two series, (n,) each, nan = gap; None where either stands still.

    2 s_xy / (s_x^2 + s_y^2 + (xbar - ybar)^2) with moments over n (`ddof=0`, Lin 1989, Biometrics 45:255) or
    over n - 1 (`ddof=1`, as some libraries have it). The interval is taken on Fisher's z: for `independent`
    readings with Lin's standard error as corrected in 2000 (Biometrics 56:324), else by the jackknife over
    blocks of the ride. Over a wide spread of power the coefficient is near 1 for almost any two meters: it
    says less than the limits of agreement. It depends on the spread of power as on the meters, and the
    interval of a ride is of both: wider than if another ride had the same power to the second. Raises
    ValueError for a ddof that is neither, fewer than 3 readings, and what `paired` refuses.

    >>> round(concordance([1.0, 2, 3, 4, 5], [2.0, 3, 4, 5, 6], independent=True).value, 6)
    0.8
    """
    one, two = paired(first, second)
    count = int(np.count_nonzero(~np.isnan(one)))
    if ddof not in (0, 1) or count < 3:
        raise ValueError(f"{count} readings of both and a ddof of {ddof}; at least 3 and 0 or 1 are needed")
    length = 1 if independent else block_length([one, two])
    blocks = split([one, two], length or len(one), independent=independent)
    mean, spread = blocks.whole().means()[0], blocks.whole().covariances(ddof)[0]
    if min(spread[0, 0] / max(mean[0] ** 2, 1.0), spread[1, 1] / max(mean[1] ** 2, 1.0)) < 1e-18:
        return None
    value = float(_coefficient(mean, spread))
    deviation = math.sqrt(spread[0, 0] * spread[1, 1])
    precision, location = spread[0, 1] / deviation, (mean[0] - mean[1]) / math.sqrt(deviation)
    interval = None
    if abs(precision) < 1.0 - 1e-12 and precision != 0.0 and length is not None:
        interval = (
            _lin_interval(value, float(precision), float(location), count, level)
            if independent
            else _block_interval(value, blocks, ddof, level)
        )
    return Concordance(
        value=value,
        interval=interval,
        precision=float(precision),
        accuracy=float(value / precision) if precision else math.nan,
        scale_shift=math.sqrt(spread[0, 0] / spread[1, 1]),
        location_shift=float(location),
        ddof=ddof,
        count=count,
    )


def _coefficient(mean: FloatArray, spread: FloatArray) -> FloatArray:
    apart = (mean[..., 0] - mean[..., 1]) ** 2
    total = spread[..., 0, 0] + spread[..., 1, 1] + apart
    return np.asarray(
        np.where(total > 0.0, 2.0 * spread[..., 0, 1] / np.where(total > 0.0, total, 1.0), np.nan)
    )


def _lin_interval(value: float, r: float, u: float, count: int, level: float) -> Estimate | None:
    if count < 4:
        return None
    of_value = (
        (1.0 - r**2) * value**2 * (1.0 - value**2) / r**2
        + 2.0 * value**3 * (1.0 - value) * u**2 / r
        - value**4 * u**4 / (2.0 * r**2)
    ) / (count - 2)
    error = math.sqrt(max(of_value, 0.0)) / (1.0 - value**2)
    return _back(around(math.atanh(value), t_quantile(level, math.inf) * error))


def _block_interval(value: float, blocks: Blocks, ddof: int, level: float) -> Estimate | None:
    samples = blocks.one_left_out()
    left_out = _coefficient(samples.means(), samples.covariances(ddof))
    if not (np.abs(left_out) < 1.0).all():
        return None
    return _back(jackknife(math.atanh(value), np.arctanh(left_out), blocks, level))


def _back(z: Estimate) -> Estimate:
    return Estimate(math.tanh(z.value), math.tanh(z.low), math.tanh(z.high))
