"""Which products are no better than another on any criterion and worse on some."""

import numpy as np

from spindlewise.decide.table import BoolArray, FloatArray, IntArray

BLOCK = 64
"""So many of the best are settled among themselves before the rest is held against them."""


def dominates(merits: FloatArray, rival_merits: FloatArray) -> bool:
    """Tell whether merits of shape (m,) are nowhere below those of a rival and somewhere above.

    >>> dominates(np.array([0.5, 1.0]), np.array([0.5, 0.75]))
    True
    >>> dominates(np.array([0.5, 1.0]), np.array([0.5, 1.0]))
    False
    """
    return bool(np.all(merits >= rival_merits) and np.any(merits > rival_merits))


def dominated_pairs(merits: FloatArray) -> IntArray:
    """Give all pairs (dominator, dominated) of rows of `merits`, shape (n, m); the answer is (pairs, 2).

    Sorted by dominator, then dominated. Compares every row with all others, one row at a time: n * n * m
    steps and up to n * n pairs, meant for the candidates of one question rather than for a whole market.
    """
    _refuse_bad(merits)
    pairs = []
    for row in range(len(merits)):
        nowhere_above = np.all(merits <= merits[row], axis=1)
        worse = np.flatnonzero(nowhere_above & np.any(merits < merits[row], axis=1))
        pairs.append(np.column_stack((np.full(len(worse), row), worse)))
    return np.concatenate(pairs).astype(np.intp) if pairs else np.empty((0, 2), dtype=np.intp)


def undominated(merits: FloatArray) -> BoolArray:
    """Tell for each row of `merits`, shape (n, m), whether no other row dominates it; equal rows all stay.

    The rows are taken by falling sum of merits (a dominator's sum is no smaller; equal sums go by the merits
    in turn), so that the best ones, which dominate most, clear away the rest early: a block of the best is
    settled among itself, then what remains is held against each survivor (sort-filter, Chomicki, Godfrey,
    Gryz and Liang 2003). 100,000 rows of 4 random merits take a fraction of a second; where every row is
    undominated the time grows with n * n. ValueError unless `merits` has two dimensions and no NaN.

    >>> undominated(np.array([[1.0, 0.0], [0.5, 0.5], [0.5, 0.25], [0.0, 1.0]])).tolist()
    [True, True, False, True]
    """
    _refuse_bad(merits)
    left = np.lexsort((*(-merits.T[::-1]), -merits.sum(axis=1)))
    columns = np.ascontiguousarray(merits[left].T)
    stays = np.zeros(len(merits), dtype=np.bool_)
    while left.size:
        best = _best_of_block(columns[:, :BLOCK])
        stays[left[best]] = True
        points = columns[:, best].T
        left, columns = left[BLOCK:], np.ascontiguousarray(columns[:, BLOCK:])
        for point in points:
            worse = _dominated_by(point, columns)
            if worse.size:
                left, columns = np.delete(left, worse), np.delete(columns, worse, axis=1)
    return stays


def _best_of_block(columns: FloatArray) -> IntArray:
    rows = columns.T
    nowhere_above = np.all(rows[None, :, :] <= rows[:, None, :], axis=2)
    below = np.any(rows[None, :, :] < rows[:, None, :], axis=2)
    return np.flatnonzero(~np.any(nowhere_above & below, axis=0))


def _dominated_by(point: FloatArray, columns: FloatArray) -> IntArray:
    nowhere_above = columns[0] <= point[0]
    for merit, column in zip(point[1:], columns[1:], strict=True):
        nowhere_above &= column <= merit
    candidates = np.flatnonzero(nowhere_above)
    return candidates[np.any(columns[:, candidates] < point[:, None], axis=0)]


def _refuse_bad(merits: FloatArray) -> None:
    if merits.ndim != 2 or merits.shape[1] == 0:
        raise ValueError(
            f"merits have shape {merits.shape}; (products, criteria) with at least one criterion needed"
        )
    if np.isnan(merits).any():
        raise ValueError("a merit is NaN; every merit is a number")
