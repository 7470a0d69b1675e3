"""Three meters, no truth: scale, offset and noise of each, and which is the odd one out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np
import numpy.typing as npt

from spindlewise.bench.blocks import Sums, block_length, split
from spindlewise.bench.collocation import LEAST_METERS, consensus, grubbs_variances
from spindlewise.bench.estimate import Estimate, FloatArray
from spindlewise.bench.odd_one_out import OddOneOut, interval_of_draws, odd_one_out

DRAWS, SEED = 2000, 1948
MOST_LOST = 0.05
"""Where more draws than this have no common signal, the ride cannot tell scale from noise."""


@dataclass(frozen=True, slots=True)
class MeterAlone:
    """What one meter is against the consensus of all.

    `level`: its average over the geometric mean of all averages. `scale`: how much it rises per watt of the
    consensus, the scales multiplying to 1. `offset_w`: what is left of its average beside that scale.
    `noise_w`: standard deviation of its own errors in its own watts, 0 where the estimate falls below zero
    (`noise_unseen`). `grubbs_w2`: the error variance if all scales were one, as it comes.
    """

    name: str
    mean_w: float
    level: Estimate
    scale: Estimate
    offset_w: Estimate
    noise_w: Estimate
    noise_unseen: bool
    grubbs_w2: Estimate


@dataclass(frozen=True, slots=True)
class ThreeMeters:
    """All meters and the odd one out by level, scale and noise; noise differences are in watts squared."""

    meters: tuple[MeterAlone, ...]
    by_level: OddOneOut
    by_scale: OddOneOut
    by_noise: OddOneOut
    count: int
    blocks: int
    block_s: int
    seed: int


def three_meters(
    series: npt.ArrayLike,
    names: Sequence[str],
    *,
    level: float = 0.95,
    draws: int = DRAWS,
    seed: int = SEED,
    independent: bool = False,
) -> ThreeMeters | None:
    """Give each meter's standing from k series of one clock, shape (k, n), k at least 3, nan = gap.

    Only seconds in which all read count. Averages, and covariances by `consensus` and `grubbs_variances`; for
    more than three meters all pairs count, by least squares. Intervals are bootstrap percentiles over blocks
    of the ride (`block_length`), seeded, so that the same ride gives the same figures. None where the ride is
    too short for blocks, where two meters do not rise and fall together, or an average is not above zero:
    nothing can be told then. The odd one out is not thereby the wrong one: two may err alike. Raises
    ValueError where names and series do not match, for fewer than three, and for fewer than 200 draws.
    """
    values = np.asarray(series, dtype=np.float64)
    if (
        values.ndim != 2
        or len(values) != len(names)
        or len(names) < LEAST_METERS
        or len(set(names)) < len(names)
    ):
        raise ValueError(
            f"series of shape {values.shape} for the meters {', '.join(names)}; one row a meter, at least"
            f" {LEAST_METERS}, each with its own name"
        )
    if draws < 200:
        raise ValueError(f"{draws} draws; an interval needs at least 200")
    length = 1 if independent else block_length(values)
    if length is None:
        return None
    blocks = split(values, length, independent=independent)
    whole = _figures(blocks.whole())[:, 0]
    drawn = _figures(blocks.drawn(draws, seed))
    kept = np.isfinite(drawn).all(axis=(0, 2))
    if not np.isfinite(whole).all() or np.count_nonzero(~kept) > MOST_LOST * draws:
        return None
    drawn = drawn[:, kept]
    means = blocks.whole().means()[0]
    interval = partial(interval_of_draws, blocks=blocks.count, level=level, widening=blocks.widening)
    meters = tuple(
        _alone(name, float(means[i]), whole[:, i], drawn[:, :, i], interval) for i, name in enumerate(names)
    )
    by_level, by_scale, by_noise = (
        odd_one_out(names, whole[which], drawn[which], interval) for which in (0, 1, 3)
    )
    return ThreeMeters(
        meters, by_level, by_scale, by_noise, int(blocks.whole().counts[0]), blocks.count, length, seed
    )


def _figures(samples: Sums) -> FloatArray:
    """Give log level, log scale, offset, own variance and Grubbs's variance, shape (5, r, k)."""
    means, covariances = samples.means(), samples.covariances()
    positive = (means > 0.0).all(axis=1, keepdims=True)
    logs = np.log(np.where(positive, means, 1.0))
    level = np.where(positive, logs - logs.mean(axis=1, keepdims=True), np.nan)
    scale, variance = consensus(covariances)
    offset = means - scale * (means / scale).mean(axis=1, keepdims=True)
    return np.stack([level, np.log(scale), offset, variance, grubbs_variances(covariances)])


def _alone(
    name: str,
    mean_w: float,
    whole: FloatArray,
    drawn: FloatArray,
    interval: Callable[[float, FloatArray], Estimate],
) -> MeterAlone:
    log_level, log_scale, offset, variance, grubbs = (
        interval(float(figure), draws) for figure, draws in zip(whole, drawn, strict=True)
    )
    return MeterAlone(
        name=name,
        mean_w=mean_w,
        level=_mapped(log_level, np.exp),
        scale=_mapped(log_scale, np.exp),
        offset_w=offset,
        noise_w=_mapped(variance, lambda figure: np.sqrt(max(figure, 0.0))),
        noise_unseen=variance.value <= 0.0,
        grubbs_w2=grubbs,
    )


def _mapped(estimate: Estimate, through: Callable[[float], float]) -> Estimate:
    return Estimate(*(float(through(figure)) for figure in (estimate.value, estimate.low, estimate.high)))
