"""Which seconds of two recordings are compared: both read, and, where asked, neither of them zero."""

from __future__ import annotations

from typing import Literal, get_args

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import FloatArray

ZeroRule = Literal["with zeros", "without zeros"]


def paired(
    first: npt.ArrayLike, second: npt.ArrayLike, zeros: ZeroRule = "with zeros"
) -> tuple[FloatArray, FloatArray]:
    """Give both series, shape (n,) each, with nan in both wherever the two are not compared.

    A second without a reading of either (nan) is not compared. `without zeros` also leaves out every second
    in which at least one of them reads zero or less: the two figures then speak of the same seconds. Seconds
    left out stay in their place, so that neighbours in time stay neighbours.
    Raises ValueError for series of unlike length or more than one dimension, for readings without end, and
    for an unknown rule.

    >>> [part.tolist() for part in paired([100.0, 0.0, 90.0], [101.0, 50.0, float("nan")], "without zeros")]
    [[100.0, nan, nan], [101.0, nan, nan]]
    """
    one, two = np.array(first, dtype=np.float64), np.array(second, dtype=np.float64)
    if one.ndim != 1 or one.shape != two.shape:
        raise ValueError(f"series of shapes {one.shape} and {two.shape}; they share one clock and one length")
    if np.isinf(one).any() or np.isinf(two).any():
        raise ValueError("a reading without end; a missing reading is nan")
    if zeros not in get_args(ZeroRule):
        raise ValueError(f"the rule for zeros is {zeros!r}; it is one of: {', '.join(get_args(ZeroRule))}")
    left_out = np.isnan(one) | np.isnan(two)
    if zeros == "without zeros":
        left_out |= (one <= 0.0) | (two <= 0.0)
    one[left_out] = two[left_out] = np.nan
    return one, two
