"""Levels: a ride cut where the power changes for good, each piece with its mean."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from spindlewise.bench.recording import FloatArray

BLOCK_S = 5
"""Design choice, no source: a change is placed to five seconds; a pedal stroke is no change."""

SHORTEST_BLOCKS = 3
"""Design choice, no source: a level lasts fifteen seconds or more."""

LEAST_SPREAD_W = 3.0
"""Design choice, no source: nobody rides steadier, and a trainer that holds a power is no reason to cut."""

PENALTY = 10.0
"""Design choice, no source: five times that of independent noise, since a rider's power has a memory."""


@dataclass(frozen=True, slots=True)
class Level:
    """A piece of constant power: first index, the index after its last, the mean of what is known."""

    start: int
    end: int
    power_w: float


def find_levels(power_w: FloatArray) -> tuple[Level, ...]:
    """Cut a row of one power a second into levels; pieces of which nothing is known are left out.

    The best cut for the sum of squares with a penalty a cut (optimal partitioning with pruning: Killick,
    Fearnhead and Eckley 2012, J. Am. Stat. Assoc. 107:1590-1598), on means of five seconds. The spread from
    which the penalty is made is that of neighbouring means, by the median, so that the changes themselves
    do not enter.

    >>> find_levels(np.array([200.0] * 60 + [300.0] * 60))
    (Level(start=0, end=60, power_w=200.0), Level(start=60, end=120, power_w=300.0))
    """
    count = len(power_w) // BLOCK_S
    if count < SHORTEST_BLOCKS:
        return ()
    blocks = power_w[: count * BLOCK_S].reshape(count, BLOCK_S)
    known = np.isfinite(blocks)
    weight = known.mean(axis=1)
    total = np.where(known, blocks, 0.0).sum(axis=1) / BLOCK_S
    mean = np.divide(total, weight, out=np.zeros(count), where=weight > 0)
    spread = _spread(mean[weight > 0])
    cuts = _cuts(weight, weight * mean, PENALTY * spread**2 * math.log(count))
    return tuple(
        level
        for begin, end in pairwise(cuts)
        if (level := _level(power_w, begin * BLOCK_S, len(power_w) if end == count else end * BLOCK_S))
        is not None
    )


def _level(power_w: FloatArray, start: int, end: int) -> Level | None:
    piece = power_w[start:end]
    piece = piece[np.isfinite(piece)]
    return Level(start, end, float(piece.mean())) if len(piece) else None


def _spread(means: FloatArray) -> float:
    steps = np.abs(np.diff(means))
    return max(1.4826 * float(np.median(steps)) / math.sqrt(2.0) if len(steps) else 0.0, LEAST_SPREAD_W)


def _cuts(weight: FloatArray, weighted: FloatArray, penalty: float) -> list[int]:
    """Where the pieces begin, and the end: the cheapest way to cut, found from the left.

    The squares' own sum is the same however one cuts, so a piece costs minus its squared sum over its weight.
    A beginning that costs more than the best by now is never the best again, and is dropped.
    """
    w = np.concatenate(([0.0], np.cumsum(weight)))
    s = np.concatenate(([0.0], np.cumsum(weighted)))
    count = len(weight)
    best = np.full(count + 1, np.inf)
    best[0] = -penalty
    before = np.zeros(count + 1, dtype=np.int64)
    open_begins = np.array([0])
    for end in range(SHORTEST_BLOCKS, count + 1):
        mass = w[end] - w[open_begins]
        moved = s[end] - s[open_begins]
        cost = best[open_begins] - moved * moved / np.maximum(mass, 1e-9)
        at = int(np.argmin(cost))
        best[end] = cost[at] + penalty
        before[end] = open_begins[at]
        worth = cost <= best[end]
        open_begins = np.append(open_begins[worth], end - SHORTEST_BLOCKS + 1)
        open_begins = open_begins[np.isfinite(best[open_begins])]
    cuts = [count]
    while cuts[-1] > 0:
        cuts.append(int(before[cuts[-1]]))
    return cuts[::-1]
