"""The smallest change of weights after which another product is first."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.decide.score import held_flags, ranking_order, score
from spindlewise.decide.table import FloatArray, MeritTable

LEVEL_MERIT = 5e-12
"""A lead in weighted merit below this is settled to no lead at all."""

SAME_DISTANCE = 1e-12
"""Distances closer than this are equal, and the product id decides."""


@dataclass(frozen=True, slots=True, eq=False)
class WeightChange:
    """The nearest weights at which `product` draws level with `first`; any further and it is first.

    `shares` has shape (m,) and adds up to 1; `distance` is its Euclidean distance from the present shares.
    """

    first: str
    product: str
    shares: FloatArray
    distance: float


def smallest_change(
    table: MeritTable, weights: FloatArray, held_back: npt.ArrayLike | None = None
) -> WeightChange | None:
    """Give the smallest Euclidean change of shares that costs the first product its place, or None.

    None when no weights at all put another product (not held back) first: one that is better on no criterion
    can at most draw level, which helps it only if equal scores are in its favour (the smaller id). Exact: for
    each rival the shares are projected on the part of the simplex (0 or more, adding up to 1) where the rival
    scores no less, and the nearest of these projections is taken; equal distances go by product id. Rivals
    that even without the bound at 0 lie farther than the best so far are passed over. ValueError for a table
    without products.

    >>> merits = np.array([[1.0, 0.0], [0.0, 1.0]])
    >>> table = MeritTable(("heron", "siskin"), ("price", "weight"), merits, merits, merits)
    >>> change = smallest_change(table, np.array([0.75, 0.25]))
    >>> change.product, change.shares.tolist()
    ('siskin', [0.5, 0.5])
    """
    n = len(table.products)
    if not n:
        raise ValueError("a table without products has no first place; at least one product is needed")
    held = held_flags(held_back, n)
    first = int(ranking_order(table.products, score(table, weights).expected, held)[0])
    each = np.asarray(weights, dtype=np.float64) / np.sum(weights)
    gains = table.expected - table.expected[first]
    by_id = np.array([product < table.products[first] for product in table.products])
    may_pass = np.max(gains, axis=1) >= np.where(by_id, 0.0, LEVEL_MERIT)
    rivals = np.flatnonzero((held == held[first]) & may_pass & (np.arange(n) != first))
    gains = gains[rivals]
    bounds = _least_distances(each, gains)

    best: WeightChange | None = None
    for place in np.argsort(bounds).tolist():
        if best is not None and bounds[place] > best.distance + SAME_DISTANCE:
            break
        nearest = nearest_shares(each, gains[place])
        found = WeightChange(
            table.products[first],
            table.products[rivals[place]],
            nearest,
            float(np.linalg.norm(nearest - each)),
        )
        if best is None or _comes_before(found, best):
            best = found
    return best


def _comes_before(one: WeightChange, other: WeightChange) -> bool:
    if abs(one.distance - other.distance) <= SAME_DISTANCE:
        return one.product < other.product
    return one.distance < other.distance


def nearest_shares(each: FloatArray, gain: FloatArray) -> FloatArray:
    """Give the shares nearest to `each` with gain @ shares >= 0; shape (m,) each.

    `each` is 0 or more and adds up to 1. ValueError if `gain` is below 0 throughout: no shares will do. By
    the optimality conditions the answer is the projection of each + t * gain on the simplex for the least t
    >= 0 that will do (Held, Wolfe and Crowder 1974, for the projection). As t grows that projection moves
    along straight pieces; a share that has come to 0 stays there, because the mean gain over the shares still
    moving only rises. So at most m pieces are followed.
    """
    if np.max(gain) < 0.0:
        raise ValueError(f"the gains {gain.tolist()} are all below 0; no shares make up for that")
    at, moving = each.copy(), each > 0.0
    for k in sorted(np.flatnonzero(~moving), key=lambda k: -gain[k]):
        moving[k] = gain[k] > np.mean(gain[moving])
    lead = -float(gain @ at)
    while lead > LEVEL_MERIT:
        pace = np.where(moving, gain - np.mean(gain[moving]), 0.0)
        closing = float(pace @ pace)
        leaving = np.flatnonzero(pace < 0.0)
        times = at[leaving] / -pace[leaving]
        out = leaving[np.argmin(times)]
        if lead <= closing * float(np.min(times)):
            at = at + pace * (lead / closing)
            break
        at = np.maximum(at + pace * float(np.min(times)), 0.0)
        at[out], moving[out] = 0.0, False
        lead = -float(gain @ at)
    return np.maximum(at, 0.0)


def _least_distances(each: FloatArray, gains: FloatArray) -> FloatArray:
    """Give a lower bound of each rival's distance: that to where it is level, shares below 0 allowed."""
    lead = np.maximum(-(gains @ each), 0.0)
    lengths = np.linalg.norm(gains - gains.mean(axis=1, keepdims=True), axis=1)
    # a rival that gains alike on all criteria has length 0; since it may pass, it is level now
    return np.asarray(lead / np.where(lengths > 0.0, lengths, 1.0))
