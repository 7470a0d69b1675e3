"""Where between two seconds the peak of a correlation stands, and how well that is known."""

from __future__ import annotations

import math
from functools import cache

import numpy as np

from spindlewise.bench.correlation import block_sums, correlations
from spindlewise.bench.estimate import t_quantile
from spindlewise.bench.movements import SharedSeconds, movements, overlaid, without_lone_standstill
from spindlewise.bench.recording import FloatArray

BLOCK_S = 40
"""Design choice, no source: movements forget within seconds, so blocks of that length are strangers."""

OF_THE_ROWS_S = 0.01
"""How far the peak was off in simulated rides whose pace changes with a row, per second between rows."""

FEWEST_BLOCKS, MOST_BLOCKS = 12, 30
"""Design choice, no source: fewer say little about their spread, more say no more of a lag."""

_WING_S = 9
_LOBES = 8
_SOUGHT_S = 1.5
_STEP_S = 0.01


def refined_lag(powers: SharedSeconds, near: int) -> tuple[float, float]:
    """Give the lag about `near` seconds and half of its 95 % interval, of powers on shared seconds.

    Seconds in which one alone stands still are left out: a dropout says nothing of time. The movements are
    smoothed by 1-2-1, which silences what changes from one second to the next and back: one row a second
    cannot tell it from slower movements, and it would pull the peak to or from the whole second by up to
    0.04 s. Between the seconds the curve is drawn by windowed sines (Duchon 1979, J Appl Meteorol 18:1016),
    for a parabola through three points is off by 0.01 s. The interval is by the jackknife over blocks of time
    (Tukey 1958), with the degrees of freedom that the blocks' unlike weights leave, see `spread_of_blocks`.
    NaN for both where no peak stands near.
    """
    kept = without_lone_standstill(*overlaid(powers.first_w, powers.second_w, near))
    first, second = (_smoothed(movements(power), powers.rows_s) for power in kept)
    blocks = min(max(len(first) // BLOCK_S, FEWEST_BLOCKS), MOST_BLOCKS)
    sums = block_sums(first, second, range(-_WING_S, _WING_S + 1), blocks)
    whole = sums.sum(axis=2)
    moving = np.flatnonzero((sums[1:, _WING_S] > 0.0).all(axis=0))
    if len(moving) < 2:
        return math.nan, math.nan
    without = whole[:, :, None] - sums[:, :, moving]
    tops = _tops(np.column_stack([correlations(whole), correlations(without)]).T)
    standard_error, degrees_of_freedom = spread_of_blocks(tops[1:])
    of_rows = OF_THE_ROWS_S * powers.rows_s
    plus_minus_s = math.hypot(t_quantile(0.95, degrees_of_freedom) * standard_error, of_rows)
    return near + powers.later_s + float(tops[0]), plus_minus_s


def spread_of_blocks(without: FloatArray) -> tuple[float, float]:
    """Give a figure's standard error from what it is without each block, and the degrees of freedom of that.

    Jackknife (Tukey 1958). A few blocks may hold most of what is known (one sprint), and then the error is
    known from those few: (sum of v)^2 / sum of v^2 degrees of freedom, v the variances of the blocks' parts
    (Satterthwaite 1946, Biometrics Bull 2:110). A part's fourth power is three times its squared variance on
    average where it is normal, which gives 3 (sum of d^2)^2 / sum of d^4 from the parts themselves; less one
    for their mean, and never more than blocks less one.

    >>> error, freedom = spread_of_blocks(np.array([1.0, -1.0, 1.0, -1.0]))
    >>> round(error, 6), freedom
    (1.732051, 3.0)
    >>> round(spread_of_blocks(np.array([9.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0]))[1], 2)
    2.91
    """
    count = len(without)
    squares = (without - without.mean()) ** 2
    total, fourth = float(squares.sum()), float((squares**2).sum())
    like = 3.0 * total**2 / fourth - 1.0 if fourth > 0.0 else count - 1.0
    return math.sqrt((count - 1) / count * total), min(max(like, 1.0), count - 1.0)


def _smoothed(values: FloatArray, rows_s: int) -> FloatArray:
    """By 1-2-1 over neighbouring seconds, and over neighbouring rows where these are further apart."""
    smooth = np.full(len(values), np.nan)
    smooth[1:-1] = (values[:-2] + 2.0 * values[1:-1] + values[2:]) / 4.0
    if rows_s > 1:
        once, smooth = smooth, np.full(len(values), np.nan)
        smooth[rows_s:-rows_s] = (once[: -2 * rows_s] + 2.0 * once[rows_s:-rows_s] + once[2 * rows_s :]) / 4.0
    return smooth


def _tops(curves: FloatArray) -> FloatArray:
    """Where each curve, of shape (r, 19), has its top, counted from its middle; NaN where none is near."""
    at, between = _between()
    fine = curves @ between
    top = np.argmax(fine, axis=1)
    inside = (top > 0) & (top < len(at) - 1)
    top = np.clip(top, 1, len(at) - 2)
    rows = np.arange(len(fine))
    left, middle, right = (fine[rows, top + k] for k in (-1, 0, 1))
    bend = left - 2.0 * middle + right
    bent = inside & (bend < 0.0)
    part = np.where(bent, 0.5 * (left - right) / np.where(bent, bend, 1.0), np.nan)
    return np.asarray(at[top] + _STEP_S * part)


@cache
def _between() -> tuple[FloatArray, FloatArray]:
    """Fine lags about the middle, and by how much each whole second counts at each of them."""
    steps = round(_SOUGHT_S / _STEP_S)
    at = np.arange(-steps, steps + 1) * _STEP_S
    apart = at[None, :] - np.arange(-_WING_S, _WING_S + 1)[:, None]
    counts = np.where(np.abs(apart) < _LOBES, np.sinc(apart) * np.sinc(apart / _LOBES), 0.0)
    return np.asarray(at, dtype=np.float64), np.asarray(counts, dtype=np.float64)
