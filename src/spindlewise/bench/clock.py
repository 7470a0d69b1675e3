"""The common clock: recordings of different rates and gaps on whole seconds, without inventing anything."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from spindlewise.bench.recording import FloatArray, Recording

PAUSE_S = 10.0
"""Design choice, no source: a longer silence of the recorder is a pause, a shorter one a gap."""


@dataclass(frozen=True, slots=True)
class ClockReport:
    """How a recording's clock behaves. Times in the recording's own seconds.

    `interval_s` is the usual time from row to row (the median of the steps that are more than nothing); NaN
    where all rows share one time. `repeated` counts rows that have the time of the row before. `pauses` are
    silences of more than ten seconds and five intervals, each as its first and last row; `gaps` counts the
    shorter ones.
    """

    interval_s: float
    repeated: int
    gaps: int
    pauses: tuple[tuple[float, float], ...]


def clock_report(times_s: FloatArray) -> ClockReport:
    """Tell the rate, repeated times, gaps and pauses of times that never go backwards.

    >>> clock_report(np.array([0.0, 1.0, 1.0, 2.0, 4.0, 5.0, 65.0, 66.0]))
    ClockReport(interval_s=1.0, repeated=1, gaps=1, pauses=((5.0, 65.0),))
    """
    steps = np.diff(times_s)
    forward = steps[steps > 0]
    interval = float(np.median(forward)) if len(forward) else float("nan")
    silences = np.flatnonzero(steps > 1.5 * interval)
    long = steps[silences] > max(PAUSE_S, 5 * interval)
    paused = silences[long]
    return ClockReport(
        interval_s=interval,
        repeated=int((steps == 0).sum()),
        gaps=len(silences) - len(paused),
        pauses=tuple((float(times_s[i]), float(times_s[i + 1])) for i in paused),
    )


def on_seconds(times_s: FloatArray, values: FloatArray, first_s: int, count: int) -> FloatArray:
    """Give `count` whole seconds from `first_s` the mean of the values that fall to each, NaN where none.

    A row falls to the nearest second, half a second up. So of several rows a second, and of rows that share
    a time, each second gets the mean; a row a second keeps its value to the last digit; a row every five
    seconds leaves four seconds empty. No value is spread to a second that has none: what is compared was
    recorded.

    >>> on_seconds(np.array([0.0, 0.5, 1.0, 3.0]), np.array([10.0, 20.0, 40.0, 50.0]), 0, 4).tolist()
    [10.0, 30.0, nan, 50.0]
    """
    seconds = np.floor(times_s + 0.5) - first_s
    known = np.isfinite(values) & (seconds >= 0) & (seconds < count)
    into = seconds[known].astype(np.int64)
    rows = np.bincount(into, minlength=count)
    total = np.bincount(into, weights=values[known], minlength=count)
    means: FloatArray = np.full(count, np.nan)
    return np.divide(total, rows, out=means, where=rows > 0)


def starts_s(recordings: Sequence[Recording]) -> tuple[tuple[float, ...], bool]:
    """Give each recording's start in seconds after the earliest, and whether the files know it.

    Where all files state a moment with a time zone, or all one without, those moments are used. Else they
    cannot be set against each other, and each recording is taken to begin with its first row.

    >>> starts_s([])
    ((), False)
    """
    begun = [recording.started_at for recording in recordings]
    stated = [moment for moment in begun if moment is not None]
    if stated and len(stated) == len(begun) and len({moment.tzinfo is None for moment in stated}) == 1:
        earliest = min(stated)
        return tuple((moment - earliest).total_seconds() for moment in stated), True
    return tuple(-float(r.times_s[0]) if len(r.times_s) else 0.0 for r in recordings), False
