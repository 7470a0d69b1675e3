"""Which products are level: whose difference in score lies within the uncertainty of that difference."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.decide.score import held_flags, score, settled
from spindlewise.decide.table import BoolArray, FloatArray, IntArray, MeritTable

ROWS_AT_ONCE = 512
"""So many products are compared with all others at a time, which bounds the memory for a large catalog."""


@dataclass(frozen=True, slots=True, eq=False)
class Levels:
    """The rank of each product, shape (n,), and which are level with which, shape (n, n), diagonal False."""

    ranks: IntArray
    level: BoolArray

    def level_with(self, row: int) -> tuple[int, ...]:
        """Give the rows of the products that are level with the product in `row`."""
        return tuple(int(other) for other in np.flatnonzero(self.level[row]))


@dataclass(frozen=True, slots=True, eq=False)
class Footing:
    """One product among all others: its rank, and the rows of those that are level with it, ascending."""

    rank: int
    level_with: tuple[int, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Spreads:
    """How far each score may fall (`down`) and rise (`up`) by its figures' uncertainty, in points, (n,)."""

    down: FloatArray
    up: FloatArray


def spreads(table: MeritTable, weights: FloatArray) -> Spreads:
    """Give how far each product's score may fall and rise, in points, shape (n,) each.

    down_i = 100 * sqrt(sum_k (w_k * (expected_ik - low_ik))^2) with w_k the shares, and up_i likewise with
    high_ik - expected_ik: the criteria err independently of each other, so their contributions combine as a
    root sum of squares (JCGM 100:2008, 5.1.2), not as a sum.
    """
    return spreads_between(table.low, table.expected, table.high, weights)


def spreads_between(low: FloatArray, expected: FloatArray, high: FloatArray, weights: FloatArray) -> Spreads:
    """Give the same for merits that stand in no table, shape (n, m) each, low <= expected <= high."""
    points = 100.0 * weights / weights.sum()
    down = (expected - low) * points
    up = (high - expected) * points
    return Spreads(np.sqrt(np.einsum("ij,ij->i", down, down)), np.sqrt(np.einsum("ij,ij->i", up, up)))


def difference_uncertainty(spread: Spreads, better: int, worse: int) -> float:
    """Give the uncertainty, in points, of the lead of row `better` over row `worse`.

    The leader may be worse than expected and the follower better: sqrt(down_better^2 + up_worse^2).
    """
    return float(np.hypot(spread.down[better], spread.up[worse]))


def levels(table: MeritTable, weights: FloatArray, held_back: npt.ArrayLike | None = None) -> Levels:
    """Give every product's rank, and which products are level with each other.

    Two products are level when their expected scores differ by no more than the uncertainty of the
    difference; this depends on these two alone. A rank is 1 plus the number of products that stand clearly
    (not level) above. Products held back by a safety notice count after all others: they are level only among
    themselves and stand clearly above nobody else.

    Being level does not carry over: of three products the first may be level with the second and the second
    with the third, but not the first with the third. A product with an unknown figure can reach far up, so
    its rank may be better than that of a product with a higher expected score.

    Takes n * n bytes for the answer and works on 512 rows at a time; see `ranks` for very many products.
    """
    expected, spread, held = _compared(table, weights, held_back)
    n = len(expected)
    ranks, level = np.empty(n, dtype=np.intp), np.empty((n, n), dtype=np.bool_)
    for start in range(0, n, ROWS_AT_ONCE):
        rows = slice(start, start + ROWS_AT_ONCE)
        above, below = _clearly(expected, spread, held, rows)
        ranks[rows] = 1 + np.count_nonzero(above, axis=1)
        level[rows] = ~(above | below)
    np.fill_diagonal(level, False)
    return Levels(ranks, level)


def footing(expected: FloatArray, spread: Spreads, held: BoolArray, row: int) -> Footing:
    """Give the rank of one product and who is level with it, as `levels` does, but of this product alone.

    `expected` are the settled scores, `spread` comes from `spreads`, `held` are the held-back flags.
    """
    above, below = _clearly(expected, spread, held, slice(row, row + 1))
    clear = (above | below)[0]
    clear[row] = True
    return Footing(1 + int(np.count_nonzero(above)), tuple(np.flatnonzero(~clear).tolist()))


def ranks(table: MeritTable, weights: FloatArray, held_back: npt.ArrayLike | None = None) -> IntArray:
    """Give the ranks alone, shape (n,), as `levels` does but without keeping a matrix of n * n."""
    expected, spread, held = _compared(table, weights, held_back)
    n = len(expected)
    found = np.empty(n, dtype=np.intp)
    for start in range(0, n, ROWS_AT_ONCE):
        rows = slice(start, start + ROWS_AT_ONCE)
        above, _ = _clearly(expected, spread, held, rows)
        found[rows] = 1 + np.count_nonzero(above, axis=1)
    return found


def _compared(
    table: MeritTable, weights: FloatArray, held_back: npt.ArrayLike | None
) -> tuple[FloatArray, Spreads, BoolArray]:
    held = held_flags(held_back, len(table.products))
    return score(table, weights).expected, spreads(table, np.asarray(weights, dtype=np.float64)), held


def _clearly(
    expected: FloatArray, spread: Spreads, held: BoolArray, rows: slice
) -> tuple[BoolArray, BoolArray]:
    """Give for each of `rows` which of all products stand clearly above it, and which clearly below."""
    lead = settled(expected[None, :] - expected[rows, None])
    above = lead > settled(np.hypot(spread.down[None, :], spread.up[rows, None]))
    below = -lead > settled(np.hypot(spread.down[rows, None], spread.up[None, :]))
    if not held.any():
        return above, below
    here, there = held[rows, None], held[None, :]
    return (above & (here == there)) | (here & ~there), (below & (here == there)) | (~here & there)
