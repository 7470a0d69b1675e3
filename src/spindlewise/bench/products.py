"""The sum of products of two series, in one thread."""

from __future__ import annotations

import numpy as np

from spindlewise.bench.estimate import FloatArray


def sum_of_products(first: FloatArray, second: FloatArray) -> float:
    """Give the sum of first times second, shape (n,) each.

    The matrix product would share out even such short rows among threads: on a busy machine that waits a
    hundred times longer than it sums, and its last bits depend on how many threads there are. Raises
    ValueError for series of unlike length.

    >>> sum_of_products(np.array([1.0, 2.0]), np.array([3.0, 4.0]))
    11.0
    """
    return float(np.einsum("i,i->", first, second))
