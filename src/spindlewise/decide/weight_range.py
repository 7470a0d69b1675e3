"""How far each weight may move before the first place changes hands."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.decide.score import held_flags, ranking_order, score
from spindlewise.decide.table import FloatArray, MeritTable

LEVEL_MERIT = 5e-12
"""Weighted merits closer than this make scores that are settled to the same billionth of a point."""


@dataclass(frozen=True, slots=True)
class WeightRange:
    """The shares of one criterion, from `low` to `high`, over which the first product stays first.

    `low_rival` and `high_rival` are the products that draw level at either end; None where the end is 0 or 1
    and nobody does.
    """

    criterion: str
    share: float
    low: float
    high: float
    low_rival: str | None
    high_rival: str | None


def weight_ranges(
    table: MeritTable, weights: FloatArray, held_back: npt.ArrayLike | None = None
) -> tuple[WeightRange, ...]:
    """Give for each criterion the exact interval of its share over which the first place stays.

    The other criteria keep their ratios and share what is left; where they have nothing to keep (the
    criterion has all the weight) they share it equally. With t the criterion's share, the lead over a rival
    is the straight line t * a + (1 - t) * b, a being the lead in merit on the criterion and b the lead on all
    others together; the interval is where no such line is below 0 (Triantaphyllou and Sanchez 1997 vary one
    weight likewise). At the ends a rival is level on score. ValueError for a table without products.

    >>> merits = np.array([[1.0, 0.0], [0.0, 1.0]])
    >>> table = MeritTable(("heron", "siskin"), ("price", "weight"), merits, merits, merits)
    >>> weight_ranges(table, np.array([0.6, 0.4]))[0]
    WeightRange(criterion='price', share=0.6, low=0.5, high=1.0, low_rival='siskin', high_rival=None)
    """
    n = len(table.products)
    if not n:
        raise ValueError("a table without products has no first place; at least one product is needed")
    held = held_flags(held_back, n)
    first = int(ranking_order(table.products, score(table, weights).expected, held)[0])
    others = np.flatnonzero((held == held[first]) & (np.arange(n) != first)).tolist()
    rivals = sorted(others, key=lambda row: table.products[row])
    leads = table.expected[first] - table.expected[rivals]
    each = np.asarray(weights, dtype=np.float64) / np.sum(weights)
    names = [table.products[row] for row in rivals]
    return tuple(_range(table.criteria[k], k, each, leads, names) for k in range(len(each)))


def _range(criterion: str, k: int, each: FloatArray, leads: FloatArray, rivals: list[str]) -> WeightRange:
    share = float(each[k])
    if len(each) == 1:
        return WeightRange(criterion, share, share, share, None, None)
    others = np.delete(each, k)
    ratios = others / others.sum() if others.any() else np.full(len(others), 1.0 / len(others))
    on_it = _without_noise(leads[:, k])
    on_others = _without_noise(np.delete(leads, k, axis=1) @ ratios)
    low, high, low_rival, high_rival = 0.0, 1.0, None, None
    for rival, a, b in zip(rivals, on_it.tolist(), on_others.tolist(), strict=True):
        if b < 0.0 and a > b and b / (b - a) > low:
            low, low_rival = b / (b - a), rival
        elif a < 0.0 and a < b and b / (b - a) < high:
            high, high_rival = b / (b - a), rival
    return WeightRange(criterion, share, min(low, share), max(high, share), low_rival, high_rival)


def _without_noise(leads: FloatArray) -> FloatArray:
    return np.where(np.abs(leads) < LEVEL_MERIT, 0.0, leads)
