"""Deming regression: scale and offset between two meters that both err."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.blocks import Sums, block_length, jackknife, split
from spindlewise.bench.estimate import Estimate, FloatArray
from spindlewise.bench.pairing import paired


@dataclass(frozen=True, slots=True)
class Deming:
    """second = offset + scale * first, the offset in the series' unit; intervals None on too short a ride."""

    scale: float
    offset: float
    scale_interval: Estimate | None
    offset_interval: Estimate | None
    error_ratio: float
    count: int


def deming(
    first: npt.ArrayLike,
    second: npt.ArrayLike,
    *,
    error_ratio: float = 1.0,
    level: float = 0.95,
    independent: bool = False,
) -> Deming | None:
    """Give scale and offset of second against first, (n,) each, nan = gap; None where they do not covary.

    scale = (s_yy - d s_xx + sqrt((s_yy - d s_xx)^2 + 4 d s_xy^2)) / (2 s_xy), with d the `error_ratio`: the
    variance of second's own errors over that of first's (Deming 1943; Linnet 1993, Clin Chem 39:424). 1 is
    orthogonal regression; three meters tell the ratio (`three_meters`). Ordinary regression would take the
    first for flawless and its scale would come out low. Intervals by the jackknife (Linnet 1990, Stat Med
    9:1463), over blocks of the ride unless the readings are `independent`.
    Raises ValueError for a ratio that is not above zero, fewer than 3 readings, and what `paired` refuses.

    >>> found = deming([100.0, 200.0, 300.0], [103.0, 205.0, 307.0], independent=True)
    >>> round(found.scale, 6), round(found.offset, 6)
    (1.02, 1.0)
    """
    one, two = paired(first, second)
    count = int(np.count_nonzero(~np.isnan(one)))
    if count < 3 or not 0.0 < error_ratio < math.inf:
        raise ValueError(
            f"{count} readings and an error ratio of {error_ratio}; at least 3 and a ratio above 0"
        )
    length = 1 if independent else block_length([one, two])
    blocks = split([one, two], length or len(one), independent=independent)
    scale, offset = _line(blocks.whole(), error_ratio)
    if not math.isfinite(scale[0]):
        return None
    scale_interval = offset_interval = None
    if length is not None:
        scales, offsets = _line(blocks.one_left_out(), error_ratio)
        if np.isfinite(scales).all():
            scale_interval = jackknife(float(scale[0]), scales, blocks, level)
            offset_interval = jackknife(float(offset[0]), offsets, blocks, level)
    return Deming(float(scale[0]), float(offset[0]), scale_interval, offset_interval, error_ratio, count)


def _line(samples: Sums, ratio: float) -> tuple[FloatArray, FloatArray]:
    mean, spread = samples.means(), samples.covariances()
    sxx, syy, sxy = spread[:, 0, 0], spread[:, 1, 1], spread[:, 0, 1]
    excess = syy - ratio * sxx
    root = np.sqrt(excess**2 + 4.0 * ratio * sxy**2)
    none = np.abs(sxy) <= 1e-12 * (sxx + syy).max()
    scale = np.where(none, np.nan, (excess + root) / np.where(none, 1.0, 2.0 * sxy))
    return scale, mean[:, 1] - scale * mean[:, 0]
