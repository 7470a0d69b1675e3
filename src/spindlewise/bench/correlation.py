"""How two rows of one clock correlate at every lag, and block by block at a few."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from spindlewise.bench.movements import overlaid
from spindlewise.bench.recording import FloatArray

Spectrum = npt.NDArray[np.complex128]


def correlation_curve(first: FloatArray, second: FloatArray, reach: int) -> FloatArray:
    """Correlate two rows of movements at every lag from -reach to reach, over the seconds that both have.

    `first` and `second` have one value a second of one clock, NaN where unknown, and are taken to have a
    mean of zero (masked as by Padfield, 2012, IEEE Trans. Image Process. 21:2706-2718). The value at index k
    is the correlation of first[t] with second[t + k - reach]; NaN where fewer than ten seconds are shared or
    nothing moves in them.
    """
    known_first, known_second = np.isfinite(first), np.isfinite(second)
    a, b = np.where(known_first, first, 0.0), np.where(known_second, second, 0.0)
    length = 1 << (len(a) + reach).bit_length()  # beyond it lags would run into each other
    lags = np.arange(-reach, reach + 1)

    def spectrum(values: FloatArray) -> Spectrum:
        return np.fft.rfft(values, length)

    def at_lags(x: Spectrum, y: Spectrum) -> FloatArray:
        return np.fft.irfft(np.conj(x) * y, length)[lags]

    masks = [spectrum(known.astype(np.float64)) for known in (known_first, known_second)]
    shared = np.round(at_lags(masks[0], masks[1]))
    energy_first = at_lags(spectrum(a * a), masks[1])
    energy_second = at_lags(masks[0], spectrum(b * b))
    floor = 1e-9 * max(float(np.sum(a * a)), float(np.sum(b * b)), 1e-9)
    moving = (shared >= 10) & (energy_first > floor) & (energy_second > floor)
    curve: FloatArray = np.full(len(lags), np.nan)
    scale = np.sqrt(np.where(moving, energy_first * energy_second, 1.0))
    return np.divide(at_lags(spectrum(a), spectrum(b)), scale, out=curve, where=moving)


def shared_seconds(first: FloatArray, second: FloatArray, lag: int) -> int:
    """How many seconds both have at a lag of whole seconds."""
    a, b = overlaid(first, second, lag)
    return int((np.isfinite(a) & np.isfinite(b)).sum())


def block_sums(first: FloatArray, second: FloatArray, lags: Sequence[int], blocks: int) -> FloatArray:
    """Give sums of products and squares of what both have: (3, lags, blocks), blocks of like length.

    The three are first times second, first squared and second squared; see `correlations`. Swapping the two
    and the signs of the lags gives the same products.
    """
    known = [np.isfinite(row).astype(np.float64) for row in (first, second)]
    filled = [np.where(np.isfinite(row), row, 0.0) for row in (first, second)]
    squared = [row * row for row in filled]
    sums, numbers, length = np.empty((3, len(lags), blocks)), np.arange(blocks), len(first)
    for at, lag in enumerate(lags):
        from_first, from_second = max(-lag, 0), max(lag, 0)
        common = length - abs(lag)
        one, two = slice(from_first, from_first + common), slice(from_second, from_second + common)
        edges = numbers * common // blocks
        sums[0, at] = np.add.reduceat(filled[0][one] * filled[1][two], edges)
        sums[1, at] = np.add.reduceat(squared[0][one] * known[1][two], edges)
        sums[2, at] = np.add.reduceat(known[0][one] * squared[1][two], edges)
    return sums


def correlations(sums: FloatArray) -> FloatArray:
    """Give correlations from sums as of `block_sums`, added up or not; zero where nothing moves."""
    energy = sums[1] * sums[2]
    return np.asarray(sums[0] / np.sqrt(np.where(energy > 0, energy, np.inf)))
