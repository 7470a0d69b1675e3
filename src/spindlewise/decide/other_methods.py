"""Two other methods of ranking the same figures, both of which scale by the set of candidates."""

from collections.abc import Sequence
from typing import Literal, TypeAlias

import numpy as np
import numpy.typing as npt

from spindlewise.decide.table import FloatArray

Direction: TypeAlias = Literal["less", "more"]
"""Which of a figure is better; a figure best in the middle is passed as its merit, as `more`."""


def topsis(values: npt.ArrayLike, weights: npt.ArrayLike, directions: Sequence[Direction]) -> FloatArray:
    """Give each product's closeness to the ideal, 0 to 1, shape (n,) (Hwang and Yoon 1981, TOPSIS).

    Columns are divided by their Euclidean length; a column of zeros stays as it is. A column on which all are
    alike makes no difference; products alike on every column all have a closeness of 0.5.

    >>> topsis([[1.0, 3.0], [1.0, 4.0], [1.0, 0.0]], [0.5, 0.5], ["more", "more"]).round(9).tolist()
    [0.75, 1.0, 0.0]
    """
    figures, shares = checked(values, weights, directions)
    scaled = vector_scaled(figures) * shares * _signs(directions)
    from_best = np.sqrt(((scaled - scaled.max(axis=0, initial=-np.inf)) ** 2).sum(axis=1))
    from_worst = np.sqrt(((scaled - scaled.min(axis=0, initial=np.inf)) ** 2).sum(axis=1))
    whole = from_best + from_worst
    return np.asarray(np.where(whole > 0.0, from_worst / np.where(whole > 0.0, whole, 1.0), 0.5))


def min_max_sum(values: npt.ArrayLike, weights: npt.ArrayLike, directions: Sequence[Direction]) -> FloatArray:
    """Give each product's weighted sum of figures scaled from worst 0 to best 1 of the set, shape (n,).

    A column on which all are alike counts 0 for everybody and so makes no difference.

    >>> min_max_sum([[1.0, 3.0], [1.0, 4.0], [1.0, 0.0]], [0.5, 0.5], ["more", "less"]).tolist()
    [0.125, 0.0, 0.5]
    """
    figures, shares = checked(values, weights, directions)
    return np.asarray(min_max_scaled(figures * _signs(directions)) @ shares)


def checked(
    values: npt.ArrayLike, weights: npt.ArrayLike, directions: Sequence[Direction]
) -> tuple[FloatArray, FloatArray]:
    """Give figures and shares that add up to 1 as arrays; ValueError for shapes or values that cannot be."""
    figures, shares = np.asarray(values, dtype=np.float64), np.asarray(weights, dtype=np.float64)
    if figures.ndim != 2 or shares.shape != figures.shape[1:] or len(directions) != len(shares):
        raise ValueError(
            f"figures of shape {figures.shape}, weights of shape {shares.shape}, {len(directions)} directions"
            " given; (products, criteria) and one weight and direction a criterion are needed"
        )
    if not np.isfinite(figures).all() or not (shares >= 0.0).all() or not 0.0 < shares.sum() < np.inf:
        raise ValueError("every figure is finite; weights are 0 or more and not all 0")
    unfit = sorted(set(directions) - {"less", "more"})
    if unfit:
        raise ValueError(f"directions {', '.join(unfit)}; each is less or more")
    return figures, shares / shares.sum()


def _signs(directions: Sequence[Direction]) -> FloatArray:
    return np.array([1.0 if direction == "more" else -1.0 for direction in directions])


def vector_scaled(figures: FloatArray) -> FloatArray:
    """Give each column divided by its Euclidean length; a column of zeros stays as it is."""
    length = np.sqrt((figures**2).sum(axis=0))
    return np.asarray(figures / np.where(length > 0.0, length, 1.0))


def min_max_scaled(figures: FloatArray) -> FloatArray:
    """Give each column from 0 at its least to 1 at its greatest; a constant column becomes 0."""
    least = figures.min(axis=0, initial=np.inf)
    span = figures.max(axis=0, initial=-np.inf) - least
    return np.asarray((figures - least) / np.where(span > 0.0, span, 1.0))
