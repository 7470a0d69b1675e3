"""Several means drawn towards their common mean, which as a whole lies nearer the truth."""

import numpy as np
import numpy.typing as npt

from spindlewise.decide.table import FloatArray

LEAST_MEANS = 4
"""Of k means k - 3 count, the common mean being estimated as well (James and Stein 1961)."""


def james_stein(y: npt.ArrayLike, variance: float) -> FloatArray:
    """Give k means of equal variance drawn towards their mean, shape (k,): ybar + c * (y - ybar).

    c = 1 - (k - 3) * variance / sum((y - ybar)^2), not below 0 (positive part; Efron and Morris 1975).
    ValueError for fewer than 4 means or a negative variance.

    >>> james_stein([1.0, 2.0, 3.0, 6.0], 1.4).tolist()
    [1.2, 2.1, 3.0, 5.7]
    """
    means = np.asarray(y, dtype=np.float64)
    if means.ndim != 1 or len(means) < LEAST_MEANS or not variance >= 0.0:
        raise ValueError(
            f"means of shape {means.shape} and a variance of {variance}; at least {LEAST_MEANS} means in a"
            " row and a variance of 0 or more are needed"
        )
    centre = means.mean()
    squares = float(((means - centre) ** 2).sum())
    c = max(0.0, 1.0 - (len(means) - 3) * variance / squares) if squares > 0.0 else 0.0
    return np.asarray(centre + c * (means - centre))
