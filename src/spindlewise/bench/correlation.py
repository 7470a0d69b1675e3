"""How two rows of one clock correlate at every lag, and block by block at a few."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from spindlewise.bench.movements import overlaid
from spindlewise.bench.recording import FloatArray


def correlation_curve(first: FloatArray, second: FloatArray, reach: int) -> FloatArray:
    """Correlate two rows of movements at every lag from -reach to reach, over the seconds that both have.

    `first` and `second` have one value a second of one clock, NaN where unknown, and are taken to have a
    mean of zero (masked as by Padfield, 2012, IEEE Trans. Image Process. 21:2706-2718). The value at index k
    is the correlation of first[t] with second[t + k - reach]; NaN where fewer than ten seconds are shared or
    nothing moves in them.
    """
    known_first, known_second = np.isfinite(first), np.isfinite(second)
    a, b = np.where(known_first, first, 0.0), np.where(known_second, second, 0.0)
    length = 1 << int(2 * max(len(a), reach) + 1).bit_length()
    lags = np.arange(-reach, reach + 1)

    def spectrum(values: FloatArray) -> np.ndarray[tuple[int], np.dtype[np.complex128]]:
        return np.fft.rfft(values, length)

    def at_lags(x: np.ndarray[tuple[int], np.dtype[np.complex128]], y: FloatArray) -> FloatArray:
        return np.fft.irfft(np.conj(x) * spectrum(y), length)[lags]

    mask = spectrum(known_first.astype(np.float64))
    shared = np.round(at_lags(mask, known_second.astype(np.float64)))
    energy_first = at_lags(spectrum(a * a), known_second.astype(np.float64))
    energy_second = at_lags(mask, b * b)
    floor = 1e-9 * max(float(np.sum(a * a)), float(np.sum(b * b)), 1e-9)
    moving = (shared >= 10) & (energy_first > floor) & (energy_second > floor)
    curve: FloatArray = np.full(len(lags), np.nan)
    scale = np.sqrt(np.where(moving, energy_first * energy_second, 1.0))
    return np.divide(at_lags(spectrum(a), b), scale, out=curve, where=moving)


def shared_seconds(first: FloatArray, second: FloatArray, lag: int) -> int:
    """How many seconds both have at a lag of whole seconds."""
    a, b = overlaid(first, second, lag)
    return int((np.isfinite(a) & np.isfinite(b)).sum())


def block_sums(first: FloatArray, second: FloatArray, lags: Sequence[int], blocks: int) -> FloatArray:
    """Give sums of products and squares of what both have: (3, lags, blocks), blocks of like length.

    The three are first times second, first squared and second squared; see `correlations`. Swapping the two
    and the signs of the lags gives the same products.
    """
    length, reach = len(first), max(abs(lag) for lag in lags)
    beyond = np.full(reach, np.nan)
    padded = [np.concatenate((row, beyond)) for row in (first, second)]
    one = np.stack([padded[0][max(-lag, 0) : max(-lag, 0) + length] for lag in lags])
    two = np.stack([padded[1][max(lag, 0) : max(lag, 0) + length] for lag in lags])
    both = np.isfinite(one) & np.isfinite(two)
    one, two = np.where(both, one, 0.0), np.where(both, two, 0.0)
    edges = np.linspace(0, length, blocks + 1).astype(np.int64)[:-1]
    return np.stack([np.add.reduceat(product, edges, axis=1) for product in (one * two, one**2, two**2)])


def correlations(sums: FloatArray) -> FloatArray:
    """Give correlations from sums as of `block_sums`, added up or not; zero where nothing moves."""
    energy = sums[1] * sums[2]
    return np.asarray(sums[0] / np.sqrt(np.where(energy > 0, energy, np.inf)))
