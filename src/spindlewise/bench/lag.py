"""The lag between two recordings of one ride, found in what their powers do, or no claim."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from spindlewise.bench.recording import FloatArray

WITHIN_S = 120.0
"""Design choice, no source: clocks that differ by more than two minutes are set, not searched."""

BRIDGED_S = 5.0
"""Design choice, no source: rows up to so far apart are joined by a straight line, for the search only."""

SMOOTHED_S = 3
"""Design choice, no source: powers are averaged over so many seconds before they are differenced."""

LEAST_PEAK = 0.2
"""Design choice, no source: a weaker correlation is no evidence of one ride."""

LEAST_LEAD = 0.02
"""Design choice, no source: a peak that is hardly higher than the next, by chance or not, is ambiguous."""

WIDEST_PLUS_MINUS_S = 1.0
"""Design choice, no source: a lag that is not known to the second is not claimed."""

OF_THE_METHOD_S = 0.1
"""How far straight lines and the parabola were off in simulated rides at one row a second, with 95 %."""

ABOVE_CHANCE = 4.0
"""Design choice, no source: so many standard errors of no relation at all has a peak to be high."""

_BLOCKS = 12
_MARGIN_S = 10
_LOBE_S = 6
_STANDARD_ERRORS = 5.0
_AGREEING = 10
_LEAST_BLOCK_S = 60
_T_95 = 2.201  # Student's t, 11 degrees of freedom, two-sided 95 %

Because = Literal["", "nothing moves", "too little in common", "at the edge", "ambiguous", "flat"]


@dataclass(frozen=True, slots=True)
class Lag:
    """How much later the second recording shows what the first shows, in seconds; None for no claim.

    Positive: the second is late. `plus_minus_s` is half of a 95 % interval (jackknife over blocks of time).
    `peak` is the correlation at the lag, `runner_up` the highest away from it, both -1 to 1 and NaN where
    nothing moves. `because` says why there is no claim. `within_s` is the range that was searched.
    """

    lag_s: float | None
    plus_minus_s: float | None
    peak: float
    runner_up: float
    within_s: float
    because: Because

    @property
    def known(self) -> bool:
        """Whether a lag is claimed."""
        return self.lag_s is not None


def find_lag(
    first_times_s: FloatArray,
    first_power_w: FloatArray,
    second_times_s: FloatArray,
    second_power_w: FloatArray,
    within_s: float = WITHIN_S,
    around_s: float = 0.0,
) -> Lag:
    """Find how much later the second recording is, within `within_s` either way of `around_s`.

    Both powers go on a common 1 Hz clock (straight lines over at most five seconds, for the search only), and
    are averaged over three seconds and differenced; the lag is the peak of their normalised cross-correlation
    over the seconds that both have (masked as by Padfield, 2012, IEEE Trans. Image Process. 21:2706-2718),
    refined by the parabola through the peak and its neighbours. Differences, since two levels that never move
    say nothing of time. No claim is made where nothing moves, the peak is weak or no higher than chance,
    at the edge of the range, hardly higher than another (a ride that repeats itself), or too flat.

    Where that leaves no claim it is tried once more without the zeros: one dropout can drown all else.

    Swapping the two flips the sign; moving the second's times moves the lag. Raises ValueError where the
    range is not one second or more, or not finite.
    """
    if not 1.0 <= within_s < math.inf or not math.isfinite(around_s):
        raise ValueError(f"the lag is sought within {within_s} s of {around_s} s; give one second or more")
    found = _found(first_times_s, first_power_w, second_times_s, second_power_w, within_s, around_s)
    if found.because in ("too little in common", "ambiguous"):
        again = _found(
            first_times_s,
            np.where(first_power_w == 0, np.nan, first_power_w),
            second_times_s,
            np.where(second_power_w == 0, np.nan, second_power_w),
            within_s,
            around_s,
        )
        return again if again.known else found
    return found


def _found(
    first_times_s: FloatArray,
    first_power_w: FloatArray,
    second_times_s: FloatArray,
    second_power_w: FloatArray,
    within_s: float,
    around_s: float,
) -> Lag:
    reach = math.floor(within_s)
    shift = round(around_s)
    first, second = _movements(first_times_s, first_power_w, second_times_s - shift, second_power_w)
    curve = correlation_curve(first, second, reach)
    if not np.isfinite(curve).any():
        return Lag(None, None, float("nan"), float("nan"), within_s, "nothing moves")
    at = int(np.nanargmax(curve))
    peak = float(curve[at])
    away = np.where(np.abs(np.arange(len(curve)) - at) > _LOBE_S, curve, -np.inf)
    second_at = int(np.nanargmax(away))
    runner_up = float(away[second_at]) if away[second_at] > -np.inf else float("nan")
    shared = _shared(first, second, at - reach)
    chance = ABOVE_CHANCE / math.sqrt(max(shared / SMOOTHED_S, 1.0))
    because: Because = ""
    lag_s = plus_minus = None
    if peak < max(LEAST_PEAK, chance):
        because = "too little in common"
    elif at in (0, 2 * reach):
        because = "at the edge"
    elif runner_up > -1.0 and not _leads(first, second, at - reach, second_at - reach):
        because = "ambiguous"
    else:
        lag_s, plus_minus = _refined(first, second, at - reach)
        lag_s += shift
        if not plus_minus <= WIDEST_PLUS_MINUS_S:
            because, lag_s, plus_minus = "flat", None, None
    return Lag(lag_s, plus_minus, peak, runner_up, within_s, because)


def correlation_curve(first: FloatArray, second: FloatArray, reach: int) -> FloatArray:
    """Correlate two rows of movements at every lag from -reach to reach, over the seconds that both have.

    `first` and `second` have one value a second of one clock, NaN where unknown, and are taken to have a
    mean of zero. The value at index k is the correlation of first[t] with second[t + k - reach]; NaN where
    fewer than ten seconds are shared or nothing moves in them.
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


def _movements(
    first_times_s: FloatArray, first_w: FloatArray, second_times_s: FloatArray, second_w: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Both powers as movements over three seconds, on one clock of whole seconds that both of them share."""
    rows = [
        _one_a_second(first_times_s[np.isfinite(first_w)], first_w[np.isfinite(first_w)]),
        _one_a_second(second_times_s[np.isfinite(second_w)], second_w[np.isfinite(second_w)]),
    ]
    if any(len(times) < 2 for times, _ in rows):
        return np.empty(0), np.empty(0)
    begin = max(times[0] for times, _ in rows) - _MARGIN_S
    end = min(times[-1] for times, _ in rows) + _MARGIN_S
    seconds = np.arange(math.floor(begin), math.ceil(end) + 1, dtype=np.float64)
    first, second = (_bridged(times, power, seconds) for times, power in rows)
    return first[SMOOTHED_S:] - first[:-SMOOTHED_S], second[SMOOTHED_S:] - second[:-SMOOTHED_S]


def _one_a_second(times_s: FloatArray, power_w: FloatArray) -> tuple[FloatArray, FloatArray]:
    """At most one row a second: rows that fall to one second become their mean, at their mean time."""
    if not len(times_s):
        return times_s, power_w
    second = np.floor(times_s + 0.5)
    into = np.cumsum(np.diff(second, prepend=second[0]) > 0)
    rows = np.bincount(into)
    return np.bincount(into, times_s) / rows, np.bincount(into, power_w) / rows


def _bridged(times_s: FloatArray, power_w: FloatArray, seconds: FloatArray) -> FloatArray:
    """The power at whole seconds by straight lines between rows that are near enough, NaN elsewhere."""
    after = np.clip(np.searchsorted(times_s, seconds), 1, len(times_s) - 1)
    near = times_s[after] - times_s[after - 1] <= BRIDGED_S
    return np.where(near, np.interp(seconds, times_s, power_w, left=np.nan, right=np.nan), np.nan)


def _shared(first: FloatArray, second: FloatArray, lag: int) -> int:
    a, b = _laid_over(first, second, lag)
    return int((np.isfinite(a) & np.isfinite(b)).sum())


def _laid_over(first: FloatArray, second: FloatArray, lag: int) -> tuple[FloatArray, FloatArray]:
    length = len(first)
    return first[max(-lag, 0) : length - max(lag, 0)], second[max(lag, 0) : length - max(-lag, 0)]


def _refined(first: FloatArray, second: FloatArray, near: int) -> tuple[float, float]:
    """The lag by the parabola through the peak, and half of its 95 % interval by leaving out blocks of time.

    The interval takes in `OF_THE_METHOD_S`, which no amount of riding removes.
    """
    sums = _block_sums(first, second, list(range(near - 2, near + 3)))
    whole = sums.sum(axis=2)
    without = [_vertex(whole - sums[:, :, block]) for block in range(_BLOCKS)]
    return near + _vertex(whole), math.hypot(_T_95 * _jackknife(without), OF_THE_METHOD_S)


def _leads(first: FloatArray, second: FloatArray, at: int, other: int) -> bool:
    """Whether the correlation at one lag is higher than at another by more than chance.

    Told from all blocks of time together, or by what each says for itself: one sprint can hold so much of the
    movement that the spread of the whole figure is that sprint's alone.
    """
    sums = _block_sums(first, second, [at, other])
    whole = sums.sum(axis=2)
    lead = float(np.subtract(*_correlations(whole)))
    if lead <= LEAST_LEAD:
        return False
    without = [float(np.subtract(*_correlations(whole - sums[:, :, block]))) for block in range(_BLOCKS)]
    if lead > _STANDARD_ERRORS * _jackknife(without):
        return True
    # a block of less than a minute may hold one change of pace alone, and one change fits at many lags
    return len(first) >= _BLOCKS * _LEAST_BLOCK_S and _each_block_leads(sums)


def _each_block_leads(sums: FloatArray) -> bool:
    """Whether each block for itself fits better at the first of two lags than at the second (a sign test).

    Where both lags fit alike a block says so as often as not, whatever its energy: that `_AGREEING` blocks or
    more agree by chance happens less than once in a thousand times.
    """
    moving = (sums[1:] > 0).all(axis=(0, 1))
    first, second = _correlations(sums[:, :, moving])
    return len(first) >= _AGREEING and bool((first > np.maximum(second, 0.0)).all())


def _block_sums(first: FloatArray, second: FloatArray, lags: list[int]) -> FloatArray:
    """Sums of products and squares: three rows, then by lag, then by block of time."""
    sums = np.zeros((3, len(lags), _BLOCKS))
    for k, lag in enumerate(lags):
        a, b = _laid_over(first, second, lag)
        both = np.isfinite(a) & np.isfinite(b)
        a, b = np.where(both, a, 0.0), np.where(both, b, 0.0)
        edges = np.linspace(0, len(a), _BLOCKS + 1).astype(np.int64)[:-1]
        for row, product in enumerate((a * b, a * a, b * b)):
            sums[row, k] = np.add.reduceat(product, edges)
    return sums


def _correlations(sums: FloatArray) -> FloatArray:
    energy = sums[1] * sums[2]
    return np.asarray(sums[0] / np.sqrt(np.where(energy > 0, energy, np.inf)))


def _jackknife(without: list[float]) -> float:
    """The standard error of a figure from what it becomes without each block (Tukey 1958)."""
    spread = np.array(without) - np.mean(without)
    return float(np.sqrt((_BLOCKS - 1) / _BLOCKS * np.sum(spread**2)))


def _vertex(sums: FloatArray) -> float:
    """Where the parabola through the highest of five correlations has its top, counted from the third.

    NaN where three of them have no top: nothing moves there, or the peak is at the edge.
    """
    curve = _correlations(sums)
    top = 1 + int(np.argmax(curve[1:-1]))
    left, middle, right = curve[top - 1 : top + 2].tolist()
    bend = left - 2.0 * middle + right
    return top - 2 + 0.5 * (left - right) / bend if bend < 0 else float("nan")
