"""Recordings of one ride laid over each other: one clock, each lag and drift taken out, nothing filled in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from spindlewise.bench.clock import ClockReport, clock_report, on_seconds, starts_s
from spindlewise.bench.drift import Drift, find_drift
from spindlewise.bench.lag import WITHIN_S, Lag, find_lag
from spindlewise.bench.recording import BoolArray, FloatArray, Recording

UNALIGNED_EDGE_S = 30
"""Design choice, no source: how far apart two recordings may stand where no lag could be found."""


@dataclass(frozen=True, slots=True, eq=False)
class Aligned:
    """A ride second by second: one row a recording, one column a second of the reference's time.

    `seconds` count from the earliest start of all files (or from the reference's first row where the files
    state no moments that can be set against each other: `starts_known` says which). `power_w`,
    `cadence_rpm`, `left_share` and `altitude_m` are NaN where a recording has nothing for a second;
    `written` says whether its recorder wrote any row then. `lags`, `drifts` and `clocks` are by recording,
    the reference's own lag zero and its drift None. `edge_s` is how far, in whole seconds, a recording's
    edges may still be off.
    """

    names: tuple[str, ...]
    reference: str
    seconds: FloatArray
    power_w: FloatArray
    cadence_rpm: FloatArray
    left_share: FloatArray
    altitude_m: FloatArray
    written: BoolArray
    lags: tuple[Lag, ...]
    drifts: tuple[Drift | None, ...]
    clocks: tuple[ClockReport, ...]
    edge_s: tuple[int, ...]
    starts_known: bool

    def row(self, name: str) -> int:
        """The row of a recording. Raises ValueError for a name that is not among them."""
        return _row_of(self.names, name)


def align(recordings: Sequence[Recording], reference: str, within_s: float = WITHIN_S) -> Aligned:
    """Lay the recordings over the one named as reference, which makes it no truer than the others.

    Each other recording's lag is found as by `find_lag`, its drift as by `find_drift`; where a drift is
    proved the line is taken out, else the lag. Where no lag is claimed the recording stays where its own
    clock puts it. The seconds are those of the reference and `within_s` either way. A row goes to its
    nearest second, so up to half a second stays between any two recordings of one row a second.

    Raises ValueError where two recordings share a name, or none has the reference's, or that one has no rows.
    """
    names = tuple(recording.name for recording in recordings)
    if len(set(names)) != len(names):
        raise ValueError(f"the recordings are named {', '.join(names)}; each needs a name of its own")
    at = _row_of(names, reference)
    if not len(recordings[at].times_s):
        raise ValueError(f"the recording {reference} has no rows; another has to be the reference")
    starts, known = starts_s(recordings)
    times = [recording.times_s + start for recording, start in zip(recordings, starts, strict=True)]
    lags: list[Lag] = []
    drifts: list[Drift | None] = []
    for row, recording in enumerate(recordings):
        pair = (times[at], recordings[at].power_w, times[row], recording.power_w)
        if row == at:
            lags.append(Lag(0.0, 0.0, 1.0, float("nan"), within_s, ""))
            drifts.append(None)
        else:
            lags.append(find_lag(*pair, within_s))
            drifts.append(find_drift(*pair, lags[-1], within_s))
        times[row] = corrected(times[row], lags[-1], drifts[-1])
    first = int(np.floor(times[at][0] - within_s))
    count = int(np.ceil(times[at][-1] + within_s)) - first + 1

    def laid(columns: Sequence[FloatArray]) -> FloatArray:
        return np.array([on_seconds(t, c, first, count) for t, c in zip(times, columns, strict=True)])

    power = laid([recording.power_w for recording in recordings])
    written = np.isfinite(laid([np.ones(len(t)) for t in times]))
    kept = slice(*_span(written))
    return Aligned(
        names=names,
        reference=reference,
        seconds=np.arange(first, first + count, dtype=np.float64)[kept],
        power_w=power[:, kept],
        cadence_rpm=laid([recording.cadence_rpm for recording in recordings])[:, kept],
        left_share=laid([recording.left_share for recording in recordings])[:, kept],
        altitude_m=laid([recording.altitude_m for recording in recordings])[:, kept],
        written=written[:, kept],
        lags=tuple(lags),
        drifts=tuple(drifts),
        clocks=tuple(clock_report(recording.times_s) for recording in recordings),
        edge_s=tuple(_edge_s(lag) for lag in lags),
        starts_known=known,
    )


def corrected(times_s: FloatArray, lag: Lag, drift: Drift | None) -> FloatArray:
    """Give the times on the reference's clock: without the drift where it is proved, else without the lag.

    >>> corrected(np.array([10.0]), Lag(2.5, 0.1, 0.9, 0.1, 120.0, ""), None).tolist()
    [7.5]
    """
    if drift is not None and drift.proved and drift.ppm is not None and drift.middle_lag_s is not None:
        slope = drift.ppm * 1e-6
        return (times_s - drift.middle_lag_s + slope * drift.middle_s) / (1.0 + slope)
    return times_s - (lag.lag_s or 0.0)


def _row_of(names: tuple[str, ...], name: str) -> int:
    if name not in names:
        raise ValueError(f"no recording is named {name!r}; there are {', '.join(names)}")
    return names.index(name)


def _span(written: BoolArray) -> tuple[int, int]:
    """The seconds from the first to the last that any recorder wrote."""
    any_row = np.flatnonzero(written.any(axis=0))
    return int(any_row[0]), int(any_row[-1]) + 1


def _edge_s(lag: Lag) -> int:
    """Half a second of rounding and the lag's own plus-minus, on either side; wide where there is no lag."""
    return UNALIGNED_EDGE_S if lag.plus_minus_s is None else int(np.ceil(0.5 + lag.plus_minus_s))
