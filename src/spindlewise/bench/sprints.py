"""Sprints: where they are, when each recording sees them begin, and the best seconds of each."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from spindlewise.bench.recording import FloatArray

LEAST_SPRINT_W = 300.0
TIMES_THE_USUAL = 2.5
SMOOTHED_S = 3
LONGEST_S = 45
JOINED_S = 5
"""Design choices, no source: a sprint is three seconds and more at 2.5 times the usual power, up to 45."""

AROUND_S = 12
"""Design choice, no source: how far about a sprint its beginning and its best seconds are looked for."""

LEAST_RISE = 1.5
"""Design choice, no source: a recording that does not rise by half has lost the sprint."""

BEST_OVER_S = (1, 5, 15)


@dataclass(frozen=True, slots=True)
class SprintReading:
    """What one recording says of one sprint.

    `onset_s` is the moment, between two seconds, at which the power passes halfway from what was before to
    the best five seconds; `delay_s` how much later that is than in the reference. None where the recording
    has no such moment. `best_w` are the highest means over 1, 5 and 15 s; None where no such stretch is
    whole.
    """

    name: str
    onset_s: float | None
    delay_s: float | None
    best_w: tuple[float | None, float | None, float | None]


def find_sprints(power_w: FloatArray) -> tuple[tuple[int, int], ...]:
    """Find the sprints in one power a second: first index and the one after the last.

    The mean over three seconds stays at 2.5 times the median of the pedalling seconds, at least 300 W, for
    three to
    45 seconds; breaks of up to five seconds are ridden through.
    """
    pedalling = power_w[power_w > 0]
    if not len(pedalling):
        return ()
    threshold = max(LEAST_SPRINT_W, TIMES_THE_USUAL * float(np.median(pedalling)))
    high = np.nan_to_num(centred_means(power_w, SMOOTHED_S)) >= threshold
    steps = np.diff(high.astype(np.int8), prepend=0, append=0)
    runs: list[list[int]] = []
    for begin, end in zip(
        np.flatnonzero(steps > 0).tolist(), np.flatnonzero(steps < 0).tolist(), strict=True
    ):
        if runs and begin - runs[-1][1] <= JOINED_S:
            runs[-1][1] = end
        else:
            runs.append([begin, end])
    return tuple((begin, end) for begin, end in runs if SMOOTHED_S <= end - begin <= LONGEST_S)


def sprint_readings(
    seconds: FloatArray,
    power_w: FloatArray,
    names: tuple[str, ...],
    reference: int,
    start_s: float,
    end_s: float,
) -> tuple[SprintReading, ...]:
    """Give what each recording says of the sprint from `start_s` to `end_s`.

    `power_w` has a row a recording over the aligned seconds; `reference` is the row that delays are told
    against. With lags taken out as far as the ride shows them, what is left is the meter's own reaction.
    """
    window = (seconds >= start_s - AROUND_S) & (seconds < end_s + AROUND_S)
    at = seconds[window]
    onsets = [_onset(at, row[window], start_s) for row in power_w]
    first = onsets[reference]
    return tuple(
        SprintReading(
            name=name,
            onset_s=onset,
            delay_s=None if onset is None or first is None else onset - first,
            best_w=_best_three(row[window]),
        )
        for name, onset, row in zip(names, onsets, power_w, strict=True)
    )


def centred_means(power_w: FloatArray, over_s: int) -> FloatArray:
    """Give the mean over an odd number of seconds about each; NaN where one of them is missing.

    >>> centred_means(np.array([1.0, 2.0, 6.0, 1.0]), 3).tolist()
    [nan, 3.0, 3.0, nan]
    """
    means = _means(power_w, over_s)
    half = (over_s - 1) // 2
    whole: FloatArray = np.full(len(power_w), np.nan)
    whole[half : half + len(means)] = means
    return whole


def _means(power_w: FloatArray, over_s: int) -> FloatArray:
    if len(power_w) < over_s:
        return np.empty(0)
    return np.asarray(np.lib.stride_tricks.sliding_window_view(power_w, over_s).mean(axis=1))


def _best_three(power_w: FloatArray) -> tuple[float | None, float | None, float | None]:
    one, five, fifteen = (_best(power_w, over) for over in BEST_OVER_S)
    return one, five, fifteen


def _best(power_w: FloatArray, over_s: int) -> float | None:
    means = _means(power_w, over_s)
    means = means[np.isfinite(means)]
    return float(means.max()) if len(means) else None


def _onset(at_s: FloatArray, power_w: FloatArray, start_s: float) -> float | None:
    before = power_w[(at_s >= start_s - AROUND_S) & (at_s < start_s - 4)]
    before = before[np.isfinite(before)]
    best = _best(power_w, 5)
    if best is None or not len(before) or best < LEAST_RISE * before.mean():
        return None
    halfway = (float(before.mean()) + best) / 2.0
    known = np.isfinite(power_w)
    at, power = at_s[known], power_w[known]
    rises = np.flatnonzero((power[:-1] < halfway) & (power[1:] >= halfway))
    if not len(rises):
        return None
    i = int(rises[np.argmin(np.abs(at[rises] - start_s))])
    part = (halfway - power[i]) / (power[i + 1] - power[i])
    return float(at[i] + part * (at[i + 1] - at[i]))
