"""A fixed scale: value curves made ready once, for many rankings or very many products."""

from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt

from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.score import (
    SETTLED_DECIMALS,
    held_last,
    points_each,
    ranking_order,
    settled,
    total_weight,
    weighted_points,
)
from spindlewise.decide.table import BoolArray, FloatArray, IntArray

ROWS_AT_ONCE = 1024
"""So many rows of a dozen columns, with their knots beside them, stay in a core's own cache."""
AS_IT_IS = Curve((0.0, 1.0), (0.0, 1.0))
"""Reads a merit as the merit that it is, where merits stand in place of figures."""
UNIT = 10.0**-SETTLED_DECIMALS / 100.0
"""The last settled digit of a score, as a part of all weight."""
FOLDS_WITHIN = 0.25 * UNIT
"""Folded scores may stray from plain ones by this much, where they are used at all."""
CLEAR_GAP = 2.0 * UNIT
"""Folded scores that lie further apart than two units are settled to different scores, in their order."""


class FixedScale:
    """The order of products straight from their figures, as reading, scoring and ordering one by one give it.

    `curves` are one a criterion, `products` the ids by which equal scores are ordered; `order` and `scores`
    then take figures of shape (products, criteria) and weights of shape (criteria,) as often as wanted.
    Curves between two knots are folded with their weight into one factor, so that a score is a clipped figure
    times a factor and no merits are written down. What folding could decide otherwise than plain arithmetic
    does (scores within two units of the billionth of a point to which they are settled) is left to plain
    arithmetic, so that the order is the same in every case. Keeps work arrays: one object serves one thread.

    >>> price, weight = Curve((400.0, 1200.0), (1.0, 0.0)), Curve((200.0, 300.0, 500.0), (1.0, 0.5, 0.0))
    >>> scale = FixedScale(("heron", "siskin"), (price, weight))
    >>> figures, weights = np.array([[800.0, 250.0], [600.0, 400.0]]), np.array([3.0, 1.0])
    >>> scale.order(figures, weights).tolist(), scale.scores(figures, weights).tolist()
    ([1, 0], [56.25, 62.5])
    """

    def __init__(self, products: Sequence[str], curves: Sequence[Curve]) -> None:
        self.products, self.curves = tuple(products), tuple(curves)
        self._shape = (len(self.products), len(self.curves))
        self._bent = [(k, c.x, c.merit) for k, c in enumerate(self.curves) if len(c.x) != 2]
        # a curve with more knots, or one, is read first; its merit then goes through a straight one as it is
        ends = [(*c.x, *c.merit) if len(c.x) == 2 else (0.0, 1.0, 0.0, 1.0) for c in self.curves]
        left, right, at_left, at_right = np.array(ends, dtype=np.float64).reshape(-1, 4).T
        slopes = (at_right - at_left) / (right - left)
        self._falling_slopes = -slopes
        # Higham 2002, 3.1: a sum of m products strays by no more than m roundings of the sum of their sizes,
        # which is a mean of these; eight more for slopes, weights and the plain merits, of size 1
        sizes = np.abs(slopes) * np.maximum(np.abs(left), np.abs(right)) + np.abs(at_left - slopes * left)
        roundings = (len(self.curves) + 8) * np.finfo(np.float64).eps
        self._folds = bool(roundings * (2.0 * sizes.max(initial=0.0) + 1.0) < FOLDS_WITHIN)
        self._falling = np.empty(len(self.products))
        self._blocks = tuple(self._made_ready(left, right))

    def _made_ready(
        self, left: FloatArray, right: FloatArray
    ) -> Iterator[tuple[slice, FloatArray, FloatArray, FloatArray, FloatArray]]:
        """Give for each block of rows its place, its knots, room to work in and room for its scores."""
        rows = min(len(self.products), ROWS_AT_ONCE)
        # as wide as a block of rows: numpy is slow where the inner loop is only as long as the criteria
        lefts, rights = np.tile(left, (rows, 1)), np.tile(right, (rows, 1))
        work = np.empty((rows, len(left)))
        for start in range(0, len(self.products), max(1, rows)):
            place = slice(start, start + rows)
            falling = self._falling[place]
            size = len(falling)
            yield place, lefts[:size], rights[:size], work[:size], falling

    def scores(self, figures: FloatArray, weights: FloatArray) -> FloatArray:
        """Give the score of every row of figures, 0 to 100, as `score` settles it.

        ValueError for weights that `score` refuses, or a NaN among the figures.
        """
        points = points_each(weights, len(self.curves))
        return settled(weighted_points(merits_at(self.curves, figures), points))

    def order(
        self, figures: FloatArray, weights: FloatArray, held_back: npt.ArrayLike | None = None
    ) -> IntArray:
        """Give the rows from the best product to the last, shape (n,), as `ranking_order` does.

        ValueError for figures of another shape than (products, criteria) or a NaN among them, and for
        weights that `score` refuses.
        """
        values, each = np.asarray(figures, dtype=np.float64), np.asarray(weights, dtype=np.float64)
        if values.shape != self._shape:
            raise ValueError(
                f"figures of shape {values.shape}; {self._shape} is needed,"
                " one row a product and one column a criterion"
            )
        total = total_weight(each, len(self.curves))
        if not self._folds:
            return ranking_order(self.products, self.scores(values, each), held_back)
        falling = self._fold(values, self._falling_slopes * (each / total))
        order = falling.argsort()
        in_order = falling[order]
        clear = in_order[1:] - in_order[:-1] > CLEAR_GAP
        # NaN, which a sort puts last, is clear of nobody; where there is but one product, nobody is clear
        if np.count_nonzero(clear) != len(self.products) - 1 or len(self.products) == 1:
            self._settle(order, clear, values, each)
        return order if held_back is None else held_last(order, held_back)

    def _fold(self, values: FloatArray, factors: FloatArray) -> FloatArray:
        """Give weighted merits with the sign turned, less what is the same for all products, (n,)."""
        for place, left, right, work, falling in self._blocks:
            some = values[place]
            np.maximum(some, left, out=work)
            np.minimum(work, right, out=work)
            for k, x, merit in self._bent:
                work[:, k] = np.interp(some[:, k], x, merit)
            np.matmul(work, factors, out=falling)
        return self._falling

    def _settle(self, order: IntArray, clear: BoolArray, values: FloatArray, weights: FloatArray) -> None:
        """Order anew, by plain arithmetic, the products that do not stand clear of both neighbours."""
        doubtful = np.full(order.shape, order.size == 1)
        doubtful[1:] |= ~clear
        doubtful[:-1] |= ~clear
        rows = order[doubtful]
        ids = [self.products[row] for row in rows.tolist()]
        # a figure that is NaN is among them, and refused here
        order[doubtful] = rows[ranking_order(ids, self.scores(values[rows], weights))]
