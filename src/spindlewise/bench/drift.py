"""The drift of one clock against another over a long ride: lags in windows, a robust line through them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from spindlewise.bench.lag import WITHIN_S, Lag, find_lag
from spindlewise.bench.recording import FloatArray

WINDOW_S = 300.0
"""Design choice, no source: five minutes hold enough movement for a lag of their own."""

MOST_WINDOWS = 48
"""Design choice, no source: a longer ride gets longer windows, not more of them."""

LEAST_WINDOWS = 6
"""Design choice, no source: through fewer lags no line is drawn."""

SEARCHED_S = 12.0
"""Design choice, no source: a window is searched so far about the lag of the whole ride."""

STRAIGHT_WITHIN_S = 1.0
"""Design choice, no source: a lag further from the line is no drift; the clock was set in between."""

_Z_95 = 1.959963984540054

Because = Literal["", "too few windows", "the clock jumps"]


@dataclass(frozen=True, slots=True)
class Drift:
    """How the lag grows: `ppm` microseconds a second, with a 95 % interval; None for no claim.

    Positive: the second clock gains. `middle_lag_s` is the line's lag at `middle_s` of the first's time.
    `windows` are the middle, the lag and its plus-minus of each window that made a claim. `because` says why
    there is no claim.
    """

    ppm: float | None
    low_ppm: float | None
    high_ppm: float | None
    middle_s: float
    middle_lag_s: float | None
    windows: tuple[tuple[float, float, float], ...]
    because: Because

    @property
    def proved(self) -> bool:
        """Whether the interval leaves zero out: the clocks do drift."""
        return self.low_ppm is not None and self.high_ppm is not None and self.low_ppm * self.high_ppm > 0

    @property
    def over_an_hour_s(self) -> float | None:
        """What the drift comes to in an hour, in seconds."""
        return None if self.ppm is None else self.ppm * 1e-6 * 3600.0


def find_drift(
    first_times_s: FloatArray,
    first_power_w: FloatArray,
    second_times_s: FloatArray,
    second_power_w: FloatArray,
    overall: Lag,
    within_s: float = WITHIN_S,
) -> Drift:
    """Find how fast the second clock gains on the first.

    The lag is sought in windows of five minutes (longer where there would be more than 48), near the
    overall lag where that is known, within `within_s` where it is not; a line through the lags that were
    claimed is found as by `robust_line`. No claim is made of fewer than six lags, nor where one of them lies
    more than a second off the line.
    """
    span_s = float(first_times_s[-1] - first_times_s[0]) if len(first_times_s) else 0.0
    count = min(int(span_s // WINDOW_S), MOST_WINDOWS)
    around = overall.lag_s or 0.0
    reach = SEARCHED_S if overall.known else within_s
    edges = np.linspace(first_times_s[0], first_times_s[-1], count + 1) if count else np.empty(0)
    windows = []
    for begin, end in zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True):
        first = slice(*np.searchsorted(first_times_s, [begin, end]).tolist())
        later = [begin + around - reach, end + around + reach]
        second = slice(*np.searchsorted(second_times_s, later).tolist())
        lag = find_lag(
            first_times_s[first],
            first_power_w[first],
            second_times_s[second],
            second_power_w[second],
            reach,
            around,
        )
        if lag.lag_s is not None and lag.plus_minus_s is not None:
            windows.append(((begin + end) / 2, lag.lag_s, lag.plus_minus_s))
    middle = float(first_times_s[0]) + span_s / 2 if len(first_times_s) else 0.0
    return _through(tuple(windows), middle)


def robust_line(x: FloatArray, y: FloatArray) -> tuple[float, float, float, float]:
    """Give the median of all pairs' slopes, its 95 % interval and the intercept (Theil 1950, Sen 1968).

    A third of the points may be wrong without harm. The interval is Sen's, by the normal approximation of
    Kendall's statistic; with few points it spans all slopes there are. The intercept is the median of
    y - slope x. Raises ValueError for fewer than two different x.

    >>> robust_line(np.array([0.0, 1, 2, 3, 4]), np.array([0.0, 1, 2, 30, 4]))
    (1.0, -26.0, 28.0, 0.0)
    """
    i, j = np.triu_indices(len(x), 1)
    apart = x[j] != x[i]
    if not apart.any():
        raise ValueError("all points stand at one x; a line needs two")
    slopes = np.sort((y[j] - y[i])[apart] / (x[j] - x[i])[apart])
    n = len(x)
    reach = _Z_95 * math.sqrt(n * (n - 1) * (2 * n + 5) / 18.0)
    low = max(round((len(slopes) - reach) / 2.0) - 1, 0)
    high = min(round((len(slopes) + reach) / 2.0), len(slopes) - 1)
    slope = float(np.median(slopes))
    return slope, float(slopes[low]), float(slopes[high]), float(np.median(y - slope * x))


def _through(windows: tuple[tuple[float, float, float], ...], middle_s: float) -> Drift:
    if len(windows) < LEAST_WINDOWS:
        return Drift(None, None, None, middle_s, None, windows, "too few windows")
    at, lags = (np.array([window[k] for window in windows]) for k in (0, 1))
    slope, low, high, intercept = robust_line(at - middle_s, lags)
    off = np.abs(lags - intercept - slope * (at - middle_s))
    if off.max() > STRAIGHT_WITHIN_S:
        return Drift(None, None, None, middle_s, None, windows, "the clock jumps")
    return Drift(slope * 1e6, low * 1e6, high * 1e6, middle_s, intercept, windows, "")
