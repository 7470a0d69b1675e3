"""Stuck values: a reading held or repeated while the rider moved, told from one that merely came again."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from spindlewise.bench.recording import FloatArray

BY_CHANCE = 0.01
"""Design choice, no source: a run is notable that a whole ride would show by chance once in a hundred."""

SHORTEST_S = 4
"""Design choice, no source: three equal readings in a row are common."""

MOVED_W = 5.0
"""Design choice, no source: another recording that ranges over more has seen the rider move."""


@dataclass(frozen=True, slots=True)
class Held:
    """A run of one and the same power above zero. `moved_w` is how far another recording ranged meanwhile.

    `stuck` says that another recording moved; where none has values `moved_w` is NaN and nothing is claimed.
    """

    start_s: float
    length_s: int
    power_w: float
    moved_w: float
    stuck: bool


@dataclass(frozen=True, slots=True)
class Repeats:
    """How often a recording says the same again. `each_value_times` is how often it usually gives a reading.

    2 there means that the sensor speaks every other second and the recorder fills in. `runs` are those longer
    than chance allows at this recording's own rate of equal neighbours, `equal_pct`.
    """

    each_value_times: int
    equal_pct: float
    longest_by_chance_s: int
    runs: tuple[Held, ...]

    @property
    def stuck_s(self) -> int:
        """Seconds in runs during which another recording moved."""
        return sum(run.length_s for run in self.runs if run.stuck)


def find_repeats(seconds: FloatArray, power_w: FloatArray, others_w: FloatArray) -> Repeats:
    """Tell the runs of equal powers that chance does not explain, with what the others did meanwhile.

    All arrays run over the same aligned seconds, `others_w` with a row a recording. The share p of equal
    neighbours is this recording's own, runs of more than ten times the usual left out; of n seconds chance
    makes n (1 - p) p^(k - 1) runs of k or more, and the limit is the longest k that it makes more often than
    once in a hundred rides, no less than four seconds and three times the usual.

    >>> power = np.array([200.0, 203, 198, 201, 201, 201, 201, 201, 201, 201, 201, 201, 201, 201, 207, 199])
    >>> other = np.array([[201.0, 204, 196, 202, 230, 250, 220, 190, 180, 210, 220, 190, 200, 195, 206, 198]])
    >>> [(run.start_s, run.length_s, run.stuck) for run in find_repeats(np.arange(16.0), power, other).runs]
    [(3.0, 11, True)]
    """
    begins, lengths = _equal_runs(power_w)
    chosen = np.isfinite(power_w[begins]) & (power_w[begins] > 0)
    begins, lengths = begins[chosen], lengths[chosen]
    if not len(begins):
        return Repeats(1, 0.0, SHORTEST_S, ())
    times = int(np.median(lengths))
    usual = lengths[lengths <= 10 * times]
    n = float(usual.sum())
    p = 1.0 - len(usual) / n if n else 0.0
    limit = max(_longest_by_chance(n, p), SHORTEST_S, 3 * times)
    runs = []
    for begin, length in zip(begins.tolist(), lengths.tolist(), strict=True):
        if length > limit:
            moved = _range_w(others_w[:, begin : begin + length])
            runs.append(Held(float(seconds[begin]), length, float(power_w[begin]), moved, moved > MOVED_W))
    return Repeats(times, 100.0 * p, limit, tuple(runs))


def _equal_runs(power_w: FloatArray) -> tuple[np.ndarray[tuple[int], np.dtype[np.int64]], ...]:
    changes = np.flatnonzero(np.diff(power_w) != 0) + 1
    begins = np.concatenate(([0], changes)).astype(np.int64)[: len(power_w)]
    return begins, np.diff(begins, append=len(power_w))


def _longest_by_chance(n: float, p: float) -> int:
    """The longest run that chance makes more often than once in a hundred such rides."""
    if p <= 0.0 or n * (1.0 - p) <= BY_CHANCE:
        return 1
    return 1 + math.floor(math.log(BY_CHANCE / (n * (1.0 - p))) / math.log(p))


def _range_w(others_w: FloatArray) -> float:
    """The widest range over which any other recording went; NaN where none has two values."""
    known = np.isfinite(others_w)
    enough = others_w[known.sum(axis=1) >= 2]
    if not len(enough):
        return float("nan")
    return float(np.max(np.nanmax(enough, axis=1) - np.nanmin(enough, axis=1)))
