"""The score, 100 times the weighted mean of merits, and the order that follows from it."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import cast

import numpy as np
import numpy.typing as npt

from spindlewise.decide.table import BoolArray, FloatArray, IntArray, MeritTable

SETTLED_DECIMALS = 9
"""Scores are settled to a billionth of a point, so that what is equal on paper is equal here too."""


@dataclass(frozen=True, slots=True, eq=False)
class Scores:
    """Scores of n products, 0 to 100, as low, expected and high; each of shape (n,)."""

    low: FloatArray
    expected: FloatArray
    high: FloatArray


def shares(weights: Mapping[str, float], criteria: Sequence[str]) -> FloatArray:
    """Give each criterion's share of all weight, in the order of `criteria`; the shares add up to 1.

    A criterion without a weight has the share 0. Raises ValueError for a weight that is negative, infinite or
    NaN, for a weight on a criterion that is not among `criteria`, and when all weights are zero.

    >>> shares({"price": 3, "weight": 1}, ["weight", "price", "warranty"]).tolist()
    [0.25, 0.75, 0.0]
    """
    strangers = sorted(set(weights) - set(criteria))
    if strangers:
        raise ValueError(f"weights given for {', '.join(strangers)}; the criteria are {', '.join(criteria)}")
    unfit = [f"{name} {weight}" for name, weight in weights.items() if not 0.0 <= weight < math.inf]
    if unfit:
        raise ValueError(f"weights that cannot be: {', '.join(unfit)}; each is a finite number, 0 or more")
    each = np.array([weights.get(name, 0.0) for name in criteria], dtype=np.float64)
    return each / total_weight(each, len(criteria))


def score(table: MeritTable, weights: FloatArray) -> Scores:
    """Give the score of every product: 100 * sum(w_k * merit_k) / sum(w_k), as low, expected and high.

    `weights` has shape (m,), 0 or more, not all zero; it need not add up to 1. The weighted sum (Hwang and
    Yoon 1981, simple additive weighting, on fixed scales) is worked out row by row, so that a product's score
    has the same bits whichever other products stand in the table, and is settled to 1e-9.
    """
    criteria = len(table.criteria)
    # low, expected and high are rows of one array: numpy is called once for all three
    every = weighted_points(table.stacked.reshape(-1, criteria), points_each(weights, criteria))
    found = settled(every).reshape(len(table.stacked), -1)
    if table.is_certain:
        (only,) = found
        return Scores(only, only, only)
    low, expected, high = found
    return Scores(low, expected, high)


def points_each(weights: FloatArray, criteria: int) -> FloatArray:
    """Give the points that each criterion can earn, shape (criteria,): 100 times its share of all weight.

    ValueError for another number of weights, one that is negative or NaN, or weights that add up to nothing.

    >>> points_each(np.array([3.0, 1.0]), 2).tolist()
    [75.0, 25.0]
    """
    each = np.asarray(weights, dtype=np.float64)
    return np.asarray(each / total_weight(each, criteria) * 100.0)


def total_weight(weights: FloatArray, criteria: int) -> float:
    """Give the sum of the weights, rounded once; ValueError as for `points_each`."""
    if weights.shape != (criteria,):
        raise ValueError(f"weights have shape {weights.shape}; ({criteria},) is needed, one a criterion")
    each = weights.tolist()
    rough = sum(each)  # which NaN and infinity cannot hide from, nor stop
    if min(each, default=0.0) < 0.0 or rough != rough:
        raise ValueError(f"the weights are {each}; each is a number, 0 or more")
    if not 0.0 < rough < 1e300:
        raise ValueError(f"the weights add up to {rough}; at least one is above 0, and all are below 1e300")
    # an exact sum does not depend on the order of the criteria
    return math.fsum(each)


def weighted_points(merits: FloatArray, points: FloatArray) -> FloatArray:
    """Give the points that every row of merits earns, shape (n,), not yet settled."""
    # einsum, not `@`: BLAS sums the last rows of a block in another order, which shows in the last bit
    return np.asarray(np.einsum("ij,j->i", merits, points))


def settled(points: npt.ArrayLike) -> FloatArray:
    """Give scores to a billionth of a point, the precision at which two scores count as equal."""
    return np.asarray(points, dtype=np.float64).round(SETTLED_DECIMALS)


def ranking_order(
    products: Sequence[str], expected: FloatArray, held_back: npt.ArrayLike | None = None
) -> IntArray:
    """Give the rows of the products from the best to the last, shape (n,).

    Expected score falling; equal scores by product id; products held back by a safety notice after all
    others. So the order of two products depends on nothing but these two. ValueError for lengths that do not
    fit or a score that is NaN.

    >>> names, scores = ("heron", "siskin", "dunlin"), np.array([70.0, 70.0, 80.0])
    >>> ranking_order(names, scores).tolist()
    [2, 0, 1]
    >>> ranking_order(names, scores, held_back=[False, False, True]).tolist()
    [0, 1, 2]
    """
    if np.shape(expected) != (len(products),):
        raise ValueError(
            f"{len(products)} products and scores of shape {np.shape(expected)}; one score a product"
        )
    if np.isnan(expected).any():
        raise ValueError("a score is NaN; every product needs a score before it can be placed")
    falling = -np.asarray(expected, dtype=np.float64)
    order = np.argsort(falling)
    _ties_by_id(order, falling, products)
    return order if held_back is None else held_last(order, held_back)


def held_last(order: IntArray, held_back: npt.ArrayLike) -> IntArray:
    """Give the order with the products that a safety notice holds back after all others."""
    held = held_flags(held_back, len(order))[order]
    return np.concatenate((order[~held], order[held]))


def held_flags(held_back: npt.ArrayLike | None, n: int) -> BoolArray:
    """Give the held-back flags as booleans of shape (n,), all False for None; ValueError otherwise."""
    if held_back is None:
        return np.zeros(n, dtype=np.bool_)
    flags = np.asarray(held_back, dtype=np.bool_)
    if flags.shape != (n,):
        raise ValueError(f"held-back flags have shape {flags.shape}; ({n},) is needed, one a product")
    return flags


def _ties_by_id(order: IntArray, falling: FloatArray, products: Sequence[str]) -> None:
    in_order = falling[order]
    same = in_order[1:] == in_order[:-1]
    if not same.any():
        return
    tied = np.zeros(order.shape, dtype=np.bool_)
    tied[1:] |= same
    tied[:-1] |= same
    rows = cast("list[int]", order[tied].tolist())
    order[tied] = sorted(rows, key=lambda row: (falling[row], products[row]))
