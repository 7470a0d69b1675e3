"""A fixed scale: value curves and shares made ready once, for many rankings or very many products."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.score import (
    SETTLED_DECIMALS,
    held_last,
    points_each,
    ranking_order,
    settled,
    weighted_points,
)
from spindlewise.decide.table import BoolArray, FloatArray, IntArray

ROWS_AT_ONCE = 1024
"""So many rows of a dozen columns, with their knots beside them, stay in a core's own cache."""
UNIT = 10.0**-SETTLED_DECIMALS
FOLDS_WITHIN = 0.25
"""Folded scores may stray from plain ones by this part of the unit to which scores are settled."""
CLEAR_GAP = 2.0
"""Folded scores that lie further apart than so many units are settled to different scores, in their order."""


class FixedScale:
    """The order of products straight from their figures, as reading, scoring and ordering one by one give it.

    `curves` and `weights` hold one entry a criterion, `products` the ids by which equal scores are ordered;
    `order` and `scores` then take figures of shape (products, criteria) as often as wanted. Curves between
    two knots are folded with their weight into one factor, so that a score is a clipped figure times a factor
    and no merits are written down. What folding could decide otherwise than plain arithmetic does (scores
    within two units of the billionth of a point to which they are settled) is left to plain arithmetic, so
    that the order is the same in every case. Keeps work arrays: one object serves one thread.

    Raises ValueError for weights that `score` refuses, or another number of them than of curves.

    >>> price, weight = Curve((400.0, 1200.0), (1.0, 0.0)), Curve((200.0, 300.0, 500.0), (1.0, 0.5, 0.0))
    >>> scale = FixedScale(("heron", "siskin"), (price, weight), np.array([3.0, 1.0]))
    >>> figures = np.array([[800.0, 250.0], [600.0, 400.0]])
    >>> scale.order(figures).tolist(), scale.scores(figures).tolist()
    ([1, 0], [56.25, 62.5])
    """

    def __init__(self, products: Sequence[str], curves: Sequence[Curve], weights: FloatArray) -> None:
        self.products, self.curves = tuple(products), tuple(curves)
        self._points = points_each(weights, len(self.curves))
        self._bent = [(k, c.x, c.merit) for k, c in enumerate(self.curves) if len(c.x) != 2]
        ends = np.array(
            [(0.0, 1.0, 0.0, 1.0) if len(c.x) != 2 else (*c.x, *c.merit) for c in self.curves],
            dtype=np.float64,
        ).reshape(-1, 4)
        left, right, at_left, at_right = ends.T
        slopes = (at_right - at_left) / (right - left)
        # falling, and in units of the last settled digit: the sort needs no other sign or scale
        self._factors = -slopes * self._points / UNIT
        base = -(at_left - slopes * left) * self._points / UNIT
        self._base = float(base.sum())
        reach = np.abs(self._factors) * np.maximum(np.abs(left), np.abs(right)) + np.abs(base)
        # Higham 2002, 3.1: a sum of m products strays by no more than m roundings of the sum of their sizes;
        # eight more for the factors, the base and the plain merits, whose points come to 100 at most
        roundings = (len(self.curves) + 8) * np.finfo(np.float64).eps
        self._folds = bool(roundings * (2.0 * reach.sum() + 100.0 / UNIT) < FOLDS_WITHIN)
        rows = min(len(self.products), ROWS_AT_ONCE)
        # as wide as a block of rows: numpy is slow where the inner loop is only as long as the criteria
        self._left, self._right = np.tile(left, (rows, 1)), np.tile(right, (rows, 1))
        self._work = np.empty((rows, len(self.curves)))
        self._falling = np.empty(len(self.products))

    def scores(self, figures: FloatArray) -> FloatArray:
        """Give the score of every row of figures, 0 to 100, as `score` settles it; ValueError for a NaN."""
        return settled(weighted_points(merits_at(self.curves, figures), self._points))

    def order(self, figures: FloatArray, held_back: npt.ArrayLike | None = None) -> IntArray:
        """Give the rows from the best product to the last, shape (n,), as `ranking_order` does.

        ValueError for figures of another shape than (products, criteria), or a NaN.
        """
        values = np.asarray(figures, dtype=np.float64)
        if values.shape != (len(self.products), len(self.curves)):
            raise ValueError(
                f"figures of shape {values.shape}; {(len(self.products), len(self.curves))} is needed,"
                " one row a product and one column a criterion"
            )
        if not self._folds:
            return ranking_order(self.products, self.scores(values), held_back)
        falling = self._fold(values)
        order = falling.argsort()
        in_order = falling[order]
        # a sort puts NaN last
        if len(order) and in_order[-1] != in_order[-1]:
            raise ValueError("a merit was asked for NaN; an unknown figure takes the plausible span instead")
        near = in_order[1:] - in_order[:-1] <= CLEAR_GAP
        if near.any():
            self._settle(order, near, values)
        return order if held_back is None else held_last(order, held_back)

    def _fold(self, values: FloatArray) -> FloatArray:
        rows = len(self._work)
        for start in range(0, len(values), max(1, rows)):
            some = values[start : start + rows]
            size = len(some)
            work = self._work[:size]
            np.maximum(some, self._left[:size], out=work)
            np.minimum(work, self._right[:size], out=work)
            for k, x, merit in self._bent:
                work[:, k] = np.interp(some[:, k], x, merit)
            np.matmul(work, self._factors, out=self._falling[start : start + size])
        # the base is the same for all, and so of no account for the order
        return self._falling

    def _settle(self, order: IntArray, near: BoolArray, values: FloatArray) -> None:
        """Order anew, by plain arithmetic, the products that stand near a neighbour."""
        doubtful = np.zeros(order.shape, dtype=np.bool_)
        doubtful[1:] |= near
        doubtful[:-1] |= near
        rows = order[doubtful]
        ids = [self.products[row] for row in rows.tolist()]
        order[doubtful] = rows[ranking_order(ids, self.scores(values[rows]))]
