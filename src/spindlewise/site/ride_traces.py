"""Recordings made small enough to draw: the least and the most of each pixel, means of blocks, gaps kept."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]

Run = tuple[tuple[float, float], ...]
"""Points of an unbroken stretch: second, watts."""


@dataclass(frozen=True, slots=True)
class Trace:
    """One meter's line: stretches between which nothing was recorded."""

    name: str
    runs: tuple[Run, ...]


def trace(name: str, seconds: FloatArray, watts: FloatArray, width_px: int) -> Trace:
    """The line of one meter, at most two points for each pixel and stretch: the least and the most of it.

    Arrays of shape (n,), NaN = nothing recorded. What stands out by a single second stays, however long the
    ride: that is what a mean would hide.
    """
    seconds, watts = np.asarray(seconds, dtype=np.float64), np.asarray(watts, dtype=np.float64)
    known = np.isfinite(watts)
    bounds = np.flatnonzero(np.diff(known.astype(np.int8), prepend=0, append=0))
    per_pixel = max(int(np.ceil(len(seconds) / width_px)), 1)
    runs = []
    for begin, end in bounds.reshape(-1, 2).tolist():
        kept = np.arange(begin, end)
        if per_pixel > 2:
            kept = _extremes(watts, begin, end, per_pixel)
        runs.append(
            tuple(
                (round(float(second), 1), round(float(watt), 1))
                for second, watt in zip(seconds[kept], watts[kept], strict=True)
            )
        )
    return Trace(name, tuple(runs))


def _extremes(watts: FloatArray, begin: int, end: int, step: int) -> npt.NDArray[np.intp]:
    """The places of the least and the most of each pixel, and of the first and the last second."""
    found = {begin, end - 1}
    for low in range(begin, end, step):
        part = watts[low : min(low + step, end)]
        found |= {low + int(part.argmin()), low + int(part.argmax())}
    return np.array(sorted(found), dtype=np.intp)


@dataclass(frozen=True, slots=True)
class Blocks:
    """Means over blocks of `length_s` seconds: where each begins, and a row of means a series, NaN = none."""

    length_s: int
    starts_s: tuple[float, ...]
    means: tuple[tuple[float, ...], ...]


def blocks(seconds: FloatArray, rows: FloatArray, least_s: int, most: int) -> Blocks:
    """Means of each row over blocks of at least `least_s` seconds, so long that there are at most `most`.

    `rows` of shape (m, n), `seconds` whole, without a gap. Blocks begin at whole multiples of their length;
    at either end of the ride what is shorter than half a block is left out, unless there is nothing else. A
    block of which a row knows less than half has no mean of it.
    """
    length = least_s
    while len(cuts := _cuts(seconds, length)) > most:
        length += least_s
    means = tuple(tuple(_mean(row[cut]) for cut in cuts) for row in rows)
    return Blocks(length, tuple(float(seconds[cut.start]) for cut in cuts), means)


def _cuts(seconds: FloatArray, length_s: int) -> list[slice]:
    """The blocks of one length, as slices."""
    edges = [0, *(np.flatnonzero(np.diff(np.floor(seconds / length_s))) + 1).tolist(), len(seconds)]
    cuts = [slice(begin, end) for begin, end in pairwise(edges)]
    return [cut for cut in cuts if 2 * (cut.stop - cut.start) >= length_s] or cuts[:1]


def _mean(part: FloatArray) -> float:
    known = part[np.isfinite(part)]
    return float(known.mean()) if 2 * len(known) >= len(part) else float("nan")


def stepped(name: str, means: Blocks, row: int) -> Trace:
    """A row of block means as a line through the middles of its blocks, broken where there is none."""
    runs: list[list[tuple[float, float]]] = [[]]
    for start, value in zip(means.starts_s, means.means[row], strict=True):
        if np.isfinite(value):
            runs[-1].append((start + means.length_s / 2, round(value, 2)))
        elif runs[-1]:
            runs.append([])
    return Trace(name, tuple(tuple(run) for run in runs if run))


def ends(traces: Sequence[Trace]) -> tuple[float, float]:
    """The least and the most of all lines; 0 and 0 for none."""
    values = [value for each in traces for run in each.runs for _, value in run]
    return (min(values), max(values)) if values else (0.0, 0.0)
