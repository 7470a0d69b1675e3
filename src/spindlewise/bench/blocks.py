"""Sums over blocks of a ride, from which any statistic of means and covariances is drawn again and again."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate, FloatArray, around, t_quantile
from spindlewise.bench.independence import LEAST_IN_A_ROW, independence
from spindlewise.bench.products import sum_of_products

TIMES_AS_LONG = 5.0
"""A block is this many autocorrelation times long."""

HIDDEN = 1.0 / (2.0 * TIMES_AS_LONG)
"""So much of the variance do blocks of that length hide at their ends (exactly for first-order noise)."""

LEAST_BLOCKS, MOST_BLOCKS = 12, 400
"""Fewer blocks say nothing about their spread, more say no more."""


@dataclass(frozen=True, slots=True, eq=False)
class Sums:
    """What r samples of k meters add up to: counts (r,), sums (r, k), products (r, k, k), about `centre`."""

    counts: FloatArray
    sums: FloatArray
    products: FloatArray
    centre: FloatArray

    def means(self) -> FloatArray:
        """Give the means of each sample, shape (r, k)."""
        return np.asarray(self.centre + self.sums / self.counts[:, None])

    def covariances(self, ddof: int = 1) -> FloatArray:
        """Give the covariances of each sample, shape (r, k, k), divided by its readings less `ddof`."""
        count = self.counts[:, None, None]
        crossed = self.sums[:, :, None] * self.sums[:, None, :] / count
        return np.asarray((self.products - crossed) / (count - ddof))


@dataclass(frozen=True, slots=True, eq=False)
class Blocks:
    """A ride cut into b blocks, each of which is a sample.

    `widening` says by how much intervals are widened for what the ends of the blocks hide; 1 for independent
    readings.
    """

    each: Sums
    widening: float

    @property
    def count(self) -> int:
        """How many blocks there are."""
        return len(self.each.counts)

    def whole(self) -> Sums:
        """Give the ride as one sample."""
        each = self.each
        counts, sums, products = (
            part.sum(axis=0, keepdims=True) for part in (each.counts, each.sums, each.products)
        )
        return Sums(counts, sums, products, each.centre)

    def one_left_out(self) -> Sums:
        """Give b samples, each of which leaves out one block."""
        whole, each = self.whole(), self.each
        return Sums(
            whole.counts - each.counts, whole.sums - each.sums, whole.products - each.products, each.centre
        )

    def drawn(self, draws: int, seed: int) -> Sums:
        """Give `draws` samples of b blocks each, drawn with replacement, the same for the same seed."""
        each, b, k = self.each, self.count, len(self.each.centre)
        # as multinomial does, in a tenth of the time: which block each of b draws takes, then how often each
        taken = np.random.default_rng(seed).integers(0, b, (draws, b)) + b * np.arange(draws)[:, None]
        times = np.bincount(taken.ravel(), minlength=draws * b).reshape(draws, b)
        table = np.column_stack([each.counts, each.sums, each.products.reshape(b, k * k)])
        total = times.astype(np.float64) @ table
        return Sums(total[:, 0], total[:, 1 : 1 + k], total[:, 1 + k :].reshape(draws, k, k), each.centre)


def split(series: npt.ArrayLike, length: int, *, independent: bool = False) -> Blocks:
    """Cut k series of one clock, shape (k, n), into blocks of `length` seconds and give their sums.

    Seconds in which any series has no reading (nan) are left out; blocks without any are dropped, and what is
    left over at the end is a shorter block. Blocks of a length by `block_length` hide a tenth of the
    variance, which `widening` = 1 / sqrt(1 - 1 / 10) makes good, unless the readings are `independent`.
    Raises ValueError for fewer than two series or readings, or a length below 1.
    """
    values = np.asarray(series, dtype=np.float64)
    if values.ndim != 2 or len(values) < 2 or length < 1:
        raise ValueError(
            f"series of shape {values.shape} in blocks of {length}; at least two rows, a meter each,"
            " and blocks of at least 1"
        )
    here = ~np.isnan(values).any(axis=0)
    if np.count_nonzero(here) < 2:
        raise ValueError("fewer than two seconds in which every meter reads")
    centre = values[:, here].mean(axis=1)
    about = np.where(here, values - centre[:, None], 0.0)
    starts = np.arange(0, values.shape[1], length)
    counts = np.add.reduceat(here.astype(np.float64), starts)
    sums = np.add.reduceat(about, starts, axis=1).T
    products = np.add.reduceat(about[:, None, :] * about[None, :, :], starts, axis=2).transpose(2, 0, 1)
    kept = counts > 0
    widening = 1.0 if independent else 1.0 / math.sqrt(1.0 - HIDDEN)
    return Blocks(Sums(counts[kept], sums[kept], products[kept], centre), widening)


def block_length(series: npt.ArrayLike) -> int | None:
    """Give how long blocks must be to be nearly strangers, in seconds; None on too short a ride.

    `series` of shape (k, n). Five times the longest autocorrelation time of what is left of each pair's
    difference after its slope is taken out: errors of meters hang together, the rider's power does not
    matter. None where fewer than 12 such blocks fit, or fewer than 20 seconds are common to all.
    """
    values = np.asarray(series, dtype=np.float64)
    here = ~np.isnan(values).any(axis=0)
    if np.count_nonzero(here) < LEAST_IN_A_ROW:
        return None
    longest = 1.0
    for i, one in enumerate(values):
        for two in values[i + 1 :]:
            left = np.where(here, one - two, np.nan)
            middle = (one + two) / 2.0
            across = middle - middle[here].mean()
            sxx = sum_of_products(across[here], across[here])
            slope = sum_of_products(across[here], left[here]) / sxx if sxx > 0.0 else 0.0
            longest = max(longest, independence(left - slope * across).time)
    count = np.count_nonzero(here)
    length = math.ceil(TIMES_AS_LONG * longest)
    return max(length, math.ceil(count / MOST_BLOCKS)) if count >= LEAST_BLOCKS * length else None


def jackknife(whole: float, left_out: FloatArray, blocks: Blocks, level: float = 0.95) -> Estimate:
    """Give the figure with its interval from what it is when each block is left out, shape (b,).

    The delete-one-block jackknife for blocks of unlike size (Busing, Meijer and van der Leeden 1999, Stat
    Comput 9:3), with Student's t of b - 1 degrees of freedom; with blocks of one reading it is the common one
    (Tukey 1958). The figure is left as it is, only its spread comes from the jackknife.

    >>> import numpy as np
    >>> readings = split(np.array([[1.0, 2.0, 3.0], [1.0, 2.0, 3.0]]), 1, independent=True)
    >>> found = jackknife(2.0, np.array([2.5, 2.0, 1.5]), readings)  # the mean of 1, 2 and 3
    >>> round((found.high - 2.0) / 4.30265, 4)
    0.5774
    """
    b = len(left_out)
    times = blocks.each.counts.sum() / blocks.each.counts
    pseudo = times * whole - (times - 1.0) * left_out
    centre = b * whole - float(((1.0 - 1.0 / times) * left_out).sum())
    variance = float(((pseudo - centre) ** 2 / (times - 1.0)).mean())
    return around(whole, t_quantile(level, b - 1) * math.sqrt(variance) * blocks.widening)
