"""Powers read off between rows: what is left of a lag below one second, taken out of the comparison."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from spindlewise.bench.alignment import Aligned, corrected
from spindlewise.bench.clock import on_seconds, starts_s
from spindlewise.bench.recording import FloatArray, Recording

ONE_A_SECOND = (0.75, 1.25)
"""Design choice, no source: a recorder whose rows stand so far apart, in seconds, writes one a second."""

BRIDGED_S = 1.5
"""Design choice, no source: rows farther apart have a gap between them, and nothing is read off in a gap."""

_SHIFTS = np.arange(20) / 20.0


def power_between_rows(aligned: Aligned, recordings: Sequence[Recording]) -> FloatArray:
    """Give each recording's power at the aligned seconds and one common part of a second later.

    Rows of a second that fall to their nearest second stand up to half a second apart, which at the foot of a
    sprint is a hundred watts. So the power is read off a straight line between two neighbouring rows. That
    averages them: noise of independent rows shrinks by sqrt((1 - f)^2 + f^2), f the part of the way, at most
    to 0.71. The common part is chosen so that all recordings shrink alike, as far as that can be, and then
    little: none looks steadier for where its rows happen to fall. Recordings of another rate keep the mean of
    each second. No line is drawn over a gap. Same shape as `aligned.power_w`.

    Raises ValueError where the recordings are not those that were aligned.
    """
    if tuple(recording.name for recording in recordings) != aligned.names:
        names = ", ".join(recording.name for recording in recordings)
        raise ValueError(f"recordings {names}; they were aligned as {', '.join(aligned.names)}")
    starts, _ = starts_s(recordings)
    times = [
        corrected(recording.times_s + start, lag, drift)
        for recording, start, lag, drift in zip(recordings, starts, aligned.lags, aligned.drifts, strict=True)
    ]
    steady = [ONE_A_SECOND[0] <= clock.interval_s <= ONE_A_SECOND[1] for clock in aligned.clocks]
    shift = common_shift([t for t, one in zip(times, steady, strict=True) if one])
    rows = [
        _read_off(t, recording.power_w, aligned.seconds + shift)
        if one
        else on_seconds(t - shift, recording.power_w, int(aligned.seconds[0]), len(aligned.seconds))
        for t, recording, one in zip(times, recordings, steady, strict=True)
    ]
    return np.array(rows).reshape(aligned.power_w.shape)


def common_shift(times_s: Sequence[FloatArray]) -> float:
    """Give the part of a second at which rows at these times are averaged most alike, then least.

    >>> common_shift([np.arange(9.0), np.arange(9.0) + 0.5]), common_shift([np.arange(9.0)])
    (0.25, 0.0)
    """
    if not times_s:
        return 0.0
    parts = np.array([np.mod(_SHIFTS[:, None] - times[None, :], 1.0) for times in map(_thinned, times_s)])
    kept = ((1.0 - parts) ** 2 + parts**2).mean(axis=2)
    unlike = np.round(np.ptp(kept, axis=0), 6)
    alike = np.flatnonzero(unlike <= unlike.min() + 0.02)
    return float(_SHIFTS[alike[np.argmax(np.round(kept.min(axis=0)[alike], 6))]])


def _thinned(times_s: FloatArray) -> FloatArray:
    """A hundred of the times: enough for where in a second they fall."""
    return times_s[np.linspace(0, len(times_s) - 1, 100).astype(np.int64)]


def _read_off(times_s: FloatArray, power_w: FloatArray, at_s: FloatArray) -> FloatArray:
    known = np.isfinite(power_w)
    times, power = times_s[known], power_w[known]
    forward = np.concatenate(([True], np.diff(times) > 0))
    times, power = times[forward], power[forward]
    if len(times) < 2:
        return np.full(len(at_s), np.nan)
    after = np.clip(np.searchsorted(times, at_s), 1, len(times) - 1)
    near = times[after] - times[after - 1] <= BRIDGED_S
    line = np.interp(at_s, times, power, left=np.nan, right=np.nan)
    return np.asarray(np.where(near, line, np.nan))
