"""Segments of a ride, found or given, and which of its seconds count."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np

from spindlewise.bench.climbs import find_climbs
from spindlewise.bench.levels import Level, find_levels
from spindlewise.bench.recording import BoolArray, FloatArray
from spindlewise.bench.sprints import find_sprints

SegmentKind = Literal["steady", "climb", "over-under", "intervals", "sprint", "lap", "bedding-in", "void"]
LEFT_OUT: tuple[SegmentKind, ...] = ("bedding-in", "void")
"""Kept and listed, but nothing is reckoned from their seconds."""

SHORTEST_STEADY_S = 60.0
"""Design choice, no source: a shorter step is no steady state."""

LEAST_STEADY_W = 50.0
"""Design choice, no source: below it the rider rolls."""

LEAST_ALTERNATIONS = 6
"""Design choice, no source: three times up and down are a pattern."""

ALIKE_WITHIN = 0.12
"""Design choice, no source: levels of one kind differ by less than an eighth."""

UNLIKE_FROM = 0.05
"""Design choice, no source: over and under differ by a twentieth and more."""

UNDER_LOAD = 0.6
"""Design choice, no source: with a low part above three fifths of the high one nobody rests."""


@dataclass(frozen=True, slots=True)
class Segment:
    """A stretch of the ride: from its first second up to, not including, `end_s`, in aligned seconds."""

    kind: SegmentKind
    start_s: float
    end_s: float
    name: str = ""
    found: bool = True
    because: str = ""
    """Why it was left out, in the words of whoever did."""

    @property
    def length_s(self) -> float:
        """How long it lasts."""
        return self.end_s - self.start_s


def given_segment(
    kind: SegmentKind, start_s: float, end_s: float, name: str = "", because: str = ""
) -> Segment:
    """Make a segment that somebody names. Raises ValueError where it is of no length or lacks its reason.

    >>> given_segment("lap", 0, 600).found
    False
    """
    if not end_s > start_s:
        raise ValueError(f"the segment runs from {start_s} s to {end_s} s; it has to end after it begins")
    if kind in LEFT_OUT and not because:
        raise ValueError(f"a {kind} segment is left out; say because of what")
    return Segment(kind, float(start_s), float(end_s), name, False, because)


def lap_segments(laps_s: Sequence[float], start_s: float, end_s: float) -> tuple[Segment, ...]:
    """Give the laps between the times at which one was begun; none where no lap was pressed.

    >>> [(lap.name, lap.length_s) for lap in lap_segments([60.0], 0.0, 100.0)]
    [('lap 1', 60.0), ('lap 2', 40.0)]
    """
    inside = sorted({float(lap) for lap in laps_s if start_s < lap < end_s})
    if not inside:
        return ()
    edges = [start_s, *inside, end_s]
    return tuple(
        Segment("lap", begin, end, f"lap {number}", False)
        for number, (begin, end) in enumerate(pairwise(edges), start=1)
    )


def find_segments(
    seconds: FloatArray, power_w: FloatArray, altitude_m: FloatArray | None = None
) -> tuple[Segment, ...]:
    """Find steady steps, over-unders and intervals, sprints, and climbs where the altitude is known.

    The arrays run over aligned seconds of one recording. What belongs to an over-under or to intervals is
    neither steady nor a sprint. Sorted by start, then by end and kind.
    """
    levels = find_levels(power_w)

    def at(second: int) -> float:
        return float(seconds[0]) + second

    patterns = _alternations(levels)

    def in_a_pattern(begin: int, end: int) -> bool:
        return any(first < end and begin < last for _, first, last in patterns)

    found = [
        Segment("steady", at(level.start), at(level.end))
        for level in levels
        if level.end - level.start >= SHORTEST_STEADY_S
        and level.power_w >= LEAST_STEADY_W
        and not in_a_pattern(level.start, level.end)
    ]
    found += [Segment(kind, at(begin), at(end)) for kind, begin, end in patterns]
    found += [
        Segment("sprint", at(begin), at(end))
        for begin, end in find_sprints(power_w)
        if not in_a_pattern(begin, end)
    ]
    if altitude_m is not None:
        found += [Segment("climb", at(begin), at(end)) for begin, end in find_climbs(altitude_m)]
    return tuple(sorted(found, key=lambda segment: (segment.start_s, segment.end_s, segment.kind)))


def counted(seconds: FloatArray, segments: Iterable[Segment]) -> BoolArray:
    """Mark the seconds that count: those outside every bedding-in and void segment.

    >>> counted(np.arange(4.0), [given_segment("void", 1, 3, because="a loose cleat")]).tolist()
    [True, False, False, True]
    """
    counts = np.ones(len(seconds), dtype=np.bool_)
    for segment in segments:
        if segment.kind in LEFT_OUT:
            counts &= ~inside(seconds, segment)
    return counts


def inside(seconds: FloatArray, segment: Segment) -> BoolArray:
    """Mark the seconds of a segment."""
    return np.asarray((seconds >= segment.start_s) & (seconds < segment.end_s), dtype=np.bool_)


def _alternations(levels: Sequence[Level]) -> list[tuple[Literal["over-under", "intervals"], int, int]]:
    """Runs of levels of which every other is alike, and neighbours are not."""
    found: list[tuple[Literal["over-under", "intervals"], int, int]] = []
    begin = 0
    while begin + LEAST_ALTERNATIONS <= len(levels):
        end = begin + 2
        while end < len(levels) and _alike(levels[end], levels[end - 2]):
            end += 1
        run = levels[begin:end]
        low, high = sorted((run[0].power_w, run[1].power_w))
        if len(run) >= LEAST_ALTERNATIONS and low < (1 - UNLIKE_FROM) * high:
            found.append(
                ("over-under" if low >= UNDER_LOAD * high else "intervals", run[0].start, run[-1].end)
            )
            begin = end
        else:
            begin += 1
    return found


def _alike(one: Level, other: Level) -> bool:
    """Whether two levels have about the same power and length."""
    longer = max(one.end - one.start, other.end - other.start)
    near = abs(one.power_w - other.power_w) <= ALIKE_WITHIN * max(one.power_w, other.power_w, LEAST_STEADY_W)
    return near and longer <= 2 * min(one.end - one.start, other.end - other.start)
