"""Battery hours from a log of runs, some of which were still going on when somebody looked or charged."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, get_args

import numpy as np

from spindlewise.bench.estimate import Estimate, FloatArray, t_quantile

LogKind = Literal["fresh", "empty", "still running"]
"""What a line of the log says: fresh cells or a full charge, dead, or looked at and running."""

LEAST_ENDED = 3
"""Fewer runs to the end say nothing about how runs differ."""


@dataclass(frozen=True, slots=True)
class Run:
    """Hours on one charge or one set of cells; `ended` where they ran out, else at least that long."""

    hours: float
    ended: bool

    def __post_init__(self) -> None:
        if not 0.0 < self.hours < math.inf:
            raise ValueError(f"a run of {self.hours} hours; it is finite and above 0")


def runs_from_log(lines: Sequence[tuple[float, LogKind]]) -> tuple[Run, ...]:
    """Give the runs of a log whose lines are (hours on the counter so far, what happened).

    A run starts at `fresh` and ends at `empty`; `fresh` before that means that somebody charged early, and
    the run lasted at least so long; `still running` counts only as the last word on its run. What ran before
    the first `fresh` is of unknown start and is left out; a run of no hours is none. Raises ValueError for a
    counter that runs backwards or an unknown kind.

    >>> runs_from_log([(0, "fresh"), (61, "empty"), (61, "fresh"), (90, "fresh"), (121, "still running")])
    (Run(hours=61.0, ended=True), Run(hours=29.0, ended=False), Run(hours=31.0, ended=False))
    """
    runs: list[Run] = []
    start: float | None = None
    seen, before = 0.0, -math.inf

    def close(at: float, ended: bool) -> None:
        if start is not None and at > start:
            runs.append(Run(at - start, ended))

    for hours, kind in lines:
        if kind not in get_args(LogKind) or not before <= hours < math.inf:
            raise ValueError(
                f"a line of {hours} hours, {kind!r}, after {before} hours; the counter only rises, and a line"
                f" is one of: {', '.join(get_args(LogKind))}"
            )
        before = hours
        if kind == "fresh":
            close(hours, False)
            start, seen = float(hours), float(hours)
        elif kind == "empty":
            close(hours, True)
            start = None
        else:
            seen = float(hours)
    close(seen, False)
    return tuple(runs)


@dataclass(frozen=True, slots=True)
class RunningTime:
    """How long the battery lasts.

    `says` is `at least` (no run ended: `hours` is the longest, no interval), `seen` (one or two ended, or all
    equally long: `hours` is their median, no interval) or `estimated` (the median of a fitted log-normal with
    its interval). `at_least_h` is the longest run of any kind, which is certain.
    """

    says: Literal["at least", "seen", "estimated"]
    hours: float
    interval: Estimate | None
    at_least_h: float
    ended: int
    running: int


def running_time(runs: Sequence[Run], *, level: float = 0.95) -> RunningTime:
    """Give how long the battery lasts from runs, those still running counted as right-censored.

    Leaving them out would favour short runs, taking them as ended would too. With three ended runs or more, a
    log-normal is fitted by scipy's CensoredData: hours are positive, vary by a factor rather than by hours,
    and two parameters are what a handful of runs can carry (a Kaplan-Meier curve has no median where the
    longest runs are the unended ones, a Weibull fit has no exact interval to check against). The interval is
    of the median, where the profile likelihood has fallen by (r / 2) log(1 + t^2 / (r - 1)), t Student's with
    r - 1 degrees of freedom and r the ended runs: without censoring this is exactly the t interval of the
    mean log. Raises ValueError without any run.

    >>> running_time([Run(40.0, False), Run(55.0, False)])
    RunningTime(says='at least', hours=55.0, interval=None, at_least_h=55.0, ended=0, running=2)
    """
    if not runs:
        raise ValueError("no runs; a running time needs at least one")
    ended = np.array(sorted(run.hours for run in runs if run.ended), dtype=np.float64)
    going = np.array(sorted(run.hours for run in runs if not run.ended), dtype=np.float64)
    longest = float(max(run.hours for run in runs))
    if not len(ended):
        return RunningTime("at least", longest, None, longest, 0, len(going))
    if len(ended) < LEAST_ENDED or np.ptp(ended) <= 1e-9 * longest:
        return RunningTime("seen", float(np.median(ended)), None, longest, len(ended), len(going))
    interval = _median_interval(ended, going, level)
    return RunningTime("estimated", interval.value, interval, longest, len(ended), len(going))


def _median_interval(ended: FloatArray, going: FloatArray, level: float) -> Estimate:
    from scipy.optimize import brentq, minimize_scalar
    from scipy.special import log_ndtr
    from scipy.stats import CensoredData, lognorm

    logs, log_going = np.log(ended), np.log(going)
    if len(going):
        shape, _, scale = lognorm.fit(CensoredData(uncensored=ended, right=going), floc=0.0)
        middle, spread = math.log(scale), float(shape)
    else:
        middle, spread = float(logs.mean()), float(logs.std())

    def likelihood(at: float, log_spread: float) -> float:
        width = math.exp(log_spread)
        # without the constant, which falls out of every comparison
        of_ended = -0.5 * float((((logs - at) / width) ** 2).sum()) - len(logs) * log_spread
        return of_ended + float(log_ndtr((at - log_going) / width).sum())

    def profile(at: float) -> float:
        # the spread that suits `at` grows with the distance: the bounds are far outside of it
        widest = math.log(10.0 * (spread + abs(at - middle)))
        best = minimize_scalar(
            lambda log_spread: -likelihood(at, log_spread),
            bounds=(math.log(spread) - 3.0, widest),
            method="bounded",
            options={"xatol": 1e-9},
        )
        return -float(best.fun)

    r = len(ended)
    fall = 0.5 * r * math.log1p(t_quantile(level, r - 1) ** 2 / (r - 1))
    least = likelihood(middle, math.log(spread)) - fall
    ends = []
    for side in (-1.0, 1.0):
        far = side * spread
        while profile(middle + far) > least:
            far *= 2.0
        ends.append(brentq(lambda at: profile(at) - least, middle, middle + far, xtol=1e-10))
    return Estimate(math.exp(middle), math.exp(ends[0]), math.exp(ends[1]))
