"""Why one product scores above another: the points won and lost, criterion by criterion."""

import math
from dataclasses import dataclass

import numpy as np

from spindlewise.decide.score import points_each, settled, weighted_points
from spindlewise.decide.table import FloatArray, MeritTable


@dataclass(frozen=True, slots=True)
class Difference:
    """The points that a product gains (above 0) or loses (below 0) on one criterion against its rival."""

    criterion: str
    points: float


@dataclass(frozen=True, slots=True)
class Differences:
    """All differences of a product against its rival, the largest first, and their total in score."""

    product: str
    rival: str
    parts: tuple[Difference, ...]
    total: float


def differences(table: MeritTable, weights: FloatArray, product: int, rival: int) -> Differences:
    """Give where row `product` gains and loses points against row `rival`; the parts add up to `total`.

    A part is 100 * w_k * (merit_product - merit_rival) of the expected merits, w_k being the share of the
    criterion; parts are sorted by size, equal ones by name. `total` is the difference of the two scores; it
    is settled to 1e-9 as scores are, the parts are not.

    >>> merits = np.array([[1.0, 0.5], [0.75, 1.0]])
    >>> table = MeritTable(("heron", "siskin"), ("price", "weight"), merits, merits, merits)
    >>> why = differences(table, np.array([0.5, 0.5]), 0, 1)
    >>> [(part.criterion, part.points) for part in why.parts], why.total
    ([('weight', -25.0), ('price', 12.5)], -12.5)
    """
    earned = weighted_points(table.expected[[product, rival]], points_each(weights, len(table.criteria)))
    here, there = settled(earned).tolist()
    points = 100.0 * np.asarray(weights, dtype=np.float64) / math.fsum(weights)
    each = points * (table.expected[product] - table.expected[rival])
    parts = [Difference(name, float(part)) for name, part in zip(table.criteria, each, strict=True)]
    parts.sort(key=lambda part: (-abs(part.points), part.criterion))
    return Differences(table.products[product], table.products[rival], tuple(parts), here - there)
