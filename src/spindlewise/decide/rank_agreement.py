"""How alike two rows of figures of the same products are: by rank and by size."""

import numpy as np
import numpy.typing as npt

from spindlewise.decide.table import FloatArray


def kendall_tau_b(x: npt.ArrayLike, y: npt.ArrayLike) -> float | None:
    """Give Kendall's rank correlation tau-b, -1 to 1, ties allowed for; None where all of x or all of y tie.

    tau_b = sum(sgn(dx) * sgn(dy)) / sqrt(sum(sgn(dx)^2) * sum(sgn(dy)^2)) over all pairs (Kendall 1945, The
    treatment of ties in ranking problems). Written out, since a library's import costs more than a ranking.

    >>> kendall_tau_b([1, 2, 3], [10, 20, 20]) == 2 / 6**0.5
    True
    """
    first, second = _two_rows(x, y)
    signs = [np.sign(each[:, None] - each[None, :]) for each in (first, second)]
    # each pair stands twice in every sum, which cancels
    either = float(np.sum(np.abs(signs[0]))) * float(np.sum(np.abs(signs[1])))
    return float(np.sum(signs[0] * signs[1])) / float(np.sqrt(either)) if either else None


def pearson(x: npt.ArrayLike, y: npt.ArrayLike) -> float | None:
    """Give Pearson's correlation, -1 to 1; None where x or y is constant.

    >>> pearson([1, 2, 3], [2, 4, 6]), pearson([1, 2, 3], [5, 5, 5])
    (1.0, None)
    """
    first, second = _two_rows(x, y)
    if first.size < 2 or np.ptp(first) == 0.0 or np.ptp(second) == 0.0:
        return None
    first, second = first - first.mean(), second - second.mean()
    # each by its own largest first, so that neither tiny nor huge figures leave the range of floats
    first, second = first / np.abs(first).max(), second / np.abs(second).max()
    together = float(first @ second) / float(np.sqrt((first @ first) * (second @ second)))
    return min(1.0, max(-1.0, together))


def spearman(x: npt.ArrayLike, y: npt.ArrayLike) -> float | None:
    """Give Spearman's rank correlation, equal figures sharing the mean of their ranks; None where all tie.

    >>> spearman([1, 2, 3], [1, 10, 1000])
    1.0
    """
    first, second = _two_rows(x, y)
    return pearson(_mean_ranks(first), _mean_ranks(second))


def _mean_ranks(row: FloatArray) -> FloatArray:
    _, place, counts = np.unique(row, return_inverse=True, return_counts=True)
    return np.asarray((np.cumsum(counts) - (counts - 1) / 2.0)[place], dtype=np.float64)


def _two_rows(x: npt.ArrayLike, y: npt.ArrayLike) -> tuple[FloatArray, FloatArray]:
    first, second = np.asarray(x, dtype=np.float64), np.asarray(y, dtype=np.float64)
    if first.shape != second.shape or first.ndim != 1:
        raise ValueError(f"rows of shapes {first.shape} and {second.shape}; two of one length are needed")
    return first, second
