"""Two recordings as movements of power on one clock of whole seconds: what the search for a lag looks at."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from spindlewise.bench.recording import BoolArray, FloatArray

BRIDGED_S = 5.0
"""Design choice, no source: rows up to so far apart are joined by a straight line, for the search only."""

SMOOTHED_S = 3
"""Design choice, no source: powers are averaged over so many seconds before they are differenced."""

LEAST_STILL_S = 3
"""Design choice, no source: a power is the same so often again where it is not read but written on."""

_MARGIN_S = 10
_AT_A_ROW_S = 1e-6


@dataclass(frozen=True, slots=True, eq=False)
class SharedSeconds:
    """Two powers at seconds that they share, NaN where rows are too far apart; empty without rows.

    `later_s`: so much after the first's seconds lie the second's, less than a second. `rows_s`: so far apart
    are the rows of the sparser recording, in whole seconds, at least 1.
    """

    first_w: FloatArray
    second_w: FloatArray
    later_s: float
    rows_s: int


def on_shared_seconds(
    first_times_s: FloatArray, first_w: FloatArray, second_times_s: FloatArray, second_w: FloatArray
) -> SharedSeconds:
    """Give both powers once a second, each at the part of the second at which its own rows fall.

    Rows of less than a second become their mean first; rows up to `BRIDGED_S` apart are joined by a straight
    line. Read anywhere but at its rows or half way, such a line moves quick changes in time by hundredths of
    a second: that is why each keeps its own part of the second. The seconds reach a little beyond what both
    have.
    """
    rows = [
        _one_a_second(first_times_s[np.isfinite(first_w)], first_w[np.isfinite(first_w)]),
        _one_a_second(second_times_s[np.isfinite(second_w)], second_w[np.isfinite(second_w)]),
    ]
    if any(len(times) < 2 for times, _ in rows):
        return SharedSeconds(np.empty(0), np.empty(0), 0.0, 1)
    begin = max(times[0] for times, _ in rows) - _MARGIN_S
    end = min(times[-1] for times, _ in rows) + _MARGIN_S
    seconds = np.arange(math.floor(begin), math.ceil(end) + 1, dtype=np.float64)
    parts = [_part_of_second(times) for times, _ in rows]
    first, second = (
        _bridged(times, power, seconds + part) for (times, power), part in zip(rows, parts, strict=True)
    )
    apart = max(float(np.median(np.diff(times))) for times, _ in rows)
    return SharedSeconds(first, second, parts[1] - parts[0], max(1, round(min(apart, BRIDGED_S))))


def movements(power_w: FloatArray) -> FloatArray:
    """Give how the mean of three seconds rises from each second to the next, times three.

    >>> movements(np.array([100.0, 100.0, 100.0, 130.0, 130.0])).tolist()
    [30.0, 30.0]
    """
    return power_w[SMOOTHED_S:] - power_w[:-SMOOTHED_S]


def without_lone_standstill(first_w: FloatArray, second_w: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give both powers with NaN in both where one stands still and the other moves.

    So do dropouts, whether zeros are recorded or the last value, and they say nothing of time. Only where
    that lasts: what begins or ends between two rows is what tells the lag.

    >>> first, second = np.array([90.0, 91, 92, 93, 94, 95, 96]), np.array([90.0, 0, 0, 0, 0, 95, 96])
    >>> without_lone_standstill(first, second)[0].tolist()
    [90.0, nan, nan, nan, nan, nan, 96.0]
    """
    still = [_lasting(_again(power)) for power in (first_w, second_w)]
    alone = _lasting(still[0] != still[1])
    alone[:-1] |= alone[1:]
    alone[1:] |= alone[:-1]
    return np.where(alone, np.nan, first_w), np.where(alone, np.nan, second_w)


def overlaid(first: FloatArray, second: FloatArray, lag: int) -> tuple[FloatArray, FloatArray]:
    """Give views of the parts of two rows of one clock that lie over each other at a lag of whole seconds.

    >>> [part.tolist() for part in overlaid(np.array([1.0, 2, 3]), np.array([0.0, 1, 2]), 1)]
    [[1.0, 2.0], [1.0, 2.0]]
    """
    length = len(first)
    return first[max(-lag, 0) : length - max(lag, 0)], second[max(lag, 0) : length - max(-lag, 0)]


def _again(power_w: FloatArray) -> BoolArray:
    """Where a power is the same as a second before."""
    found = np.zeros(len(power_w), dtype=np.bool_)
    found[1:] = power_w[1:] == power_w[:-1]
    return found


def _lasting(marked: BoolArray) -> BoolArray:
    """Those of the marked seconds that stand among `LEAST_STILL_S` in a row, which are three."""
    three = marked[2:] & marked[1:-1] & marked[:-2]
    found = np.zeros(len(marked), dtype=np.bool_)
    found[2:] |= three
    found[1:-1] |= three
    found[:-2] |= three
    return found


def _one_a_second(times_s: FloatArray, power_w: FloatArray) -> tuple[FloatArray, FloatArray]:
    """At most one row a second: rows that fall to one second become their mean, at their mean time."""
    if not len(times_s):
        return times_s, power_w
    second = np.floor(times_s + 0.5)
    into = np.cumsum(np.diff(second, prepend=second[0]) > 0)
    rows = np.bincount(into)
    return np.bincount(into, times_s) / rows, np.bincount(into, power_w) / rows


def _part_of_second(times_s: FloatArray) -> float:
    """The part of a second, -0.5 to 0.5, about which times lie: the direction of their mean on a circle."""
    parts = times_s - np.floor(times_s + 0.5)
    if (parts == parts[0]).all():
        return float(parts[0])
    return float(np.angle(np.exp(2j * np.pi * parts).sum()) / (2.0 * np.pi))


def _bridged(times_s: FloatArray, power_w: FloatArray, seconds: FloatArray) -> FloatArray:
    """The power at whole seconds by straight lines between rows that are near enough, NaN elsewhere."""
    after = np.clip(np.searchsorted(times_s, seconds), 1, len(times_s) - 1)
    near = times_s[after] - times_s[after - 1] <= BRIDGED_S
    at_a_row = (
        np.minimum(np.abs(times_s[after] - seconds), np.abs(seconds - times_s[after - 1])) < _AT_A_ROW_S
    )
    found = np.interp(seconds, times_s, power_w, left=np.nan, right=np.nan)
    return np.where(near | at_a_row, found, np.nan)
