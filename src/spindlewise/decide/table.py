"""Merits of products on criteria: the one table that all ranking mathematics reads."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

FloatArray: TypeAlias = npt.NDArray[np.float64]
IntArray: TypeAlias = npt.NDArray[np.intp]
BoolArray: TypeAlias = npt.NDArray[np.bool_]

ORDER_SLACK = 1e-9
"""How far, by rounding alone, an expected merit may lie outside its own low and high before it is refused."""


@dataclass(frozen=True, slots=True, eq=False)
class MeritTable:
    """The merits of n products on m criteria, each as low, expected and high.

    `low`, `expected` and `high` have shape (n, m) and lie in 0 to 1, with low <= expected <= high; they are
    kept as read-only, row-contiguous views. Where nothing is uncertain, pass the same array three times: it
    is then checked and scored once.

    Raises ValueError for names that occur twice, shapes that do not fit, merits outside 0 to 1, and merits
    out of order by more than rounding (1e-9; within that, low and high are widened to hold the expected).

    >>> figures = np.array([[1.0, 0.5], [0.25, 0.75]])
    >>> MeritTable(("heron", "siskin"), ("price", "weight"), figures, figures, figures).expected[1, 0]
    np.float64(0.25)
    """

    products: tuple[str, ...]
    criteria: tuple[str, ...]
    low: FloatArray
    expected: FloatArray
    high: FloatArray
    stacked: FloatArray = field(init=False, repr=False)
    """Low, expected and high as one array of shape (3, n, m), or (1, n, m) where nothing is uncertain."""

    def __post_init__(self) -> None:
        _refuse_repeats("product", self.products)
        _refuse_repeats("criterion", self.criteria)
        shape = (len(self.products), len(self.criteria))
        expected = _merits("expected", self.expected, shape)
        low, high = expected, expected
        if self.low is not self.expected:
            low = _merits("low", self.low, shape)
            _refuse_disorder("low", low, "expected", expected)
            low = np.minimum(low, expected)
        if self.high is not self.expected:
            high = _merits("high", self.high, shape)
            _refuse_disorder("expected", expected, "high", high)
            high = np.maximum(high, expected)
        certain = low is expected is high
        self._hold(np.stack((expected,) if certain else (low, expected, high)))

    def _hold(self, stacked: FloatArray) -> None:
        stacked.flags.writeable = False
        object.__setattr__(self, "stacked", stacked)
        known = stacked[len(stacked) // 2]
        object.__setattr__(self, "expected", known)
        object.__setattr__(self, "low", known if len(stacked) == 1 else stacked[0])
        object.__setattr__(self, "high", known if len(stacked) == 1 else stacked[2])

    @property
    def is_certain(self) -> bool:
        """Whether low, expected and high are one and the same array."""
        return len(self.stacked) == 1

    def keep(self, products: Sequence[str]) -> "MeritTable":
        """Give the table of these products only, in the order named; ValueError for an unknown one."""
        place = {product: i for i, product in enumerate(self.products)}
        strangers = [product for product in products if product not in place]
        if strangers:
            raise ValueError(
                f"the table has no product {', '.join(strangers)}; it has {', '.join(self.products)}"
            )
        names = tuple(products)
        _refuse_repeats("product", names)
        return self.at_rows(np.array([place[name] for name in names], dtype=np.intp))

    def at_rows(self, rows: IntArray) -> "MeritTable":
        """Give the table of these rows, each named at most once; nothing is checked again.

        For the many questions that are answered from one table: its merits have been checked already.
        """
        part = object.__new__(MeritTable)
        object.__setattr__(part, "products", tuple(self.products[row] for row in rows.tolist()))
        object.__setattr__(part, "criteria", self.criteria)
        part._hold(self.stacked.take(rows, axis=1))
        return part


def _refuse_repeats(kind: str, names: tuple[str, ...]) -> None:
    if len(set(names)) != len(names):
        twice = sorted({name for name in names if names.count(name) > 1})
        raise ValueError(f"each {kind} stands once in a merit table; more than once: {', '.join(twice)}")


def _merits(name: str, merits: FloatArray, shape: tuple[int, int]) -> FloatArray:
    array = np.ascontiguousarray(merits, dtype=np.float64)
    if array.shape != shape:
        raise ValueError(f"{name} merits have shape {array.shape}; {shape} (products, criteria) is needed")
    # the comparison is written so that NaN, which min() and max() hand on, fails it too
    if array.size and not (array.min() >= 0.0 and array.max() <= 1.0):
        raise ValueError(f"{name} merits run from {array.min()} to {array.max()}; each lies in 0 to 1")
    return array


def _refuse_disorder(lower_name: str, lower: FloatArray, upper_name: str, upper: FloatArray) -> None:
    wrong = np.argwhere(lower > upper + ORDER_SLACK)
    if wrong.size:
        row, column = wrong[0]
        raise ValueError(
            f"the {lower_name} merit in row {row}, column {column} stands above the {upper_name} merit;"
            " low <= expected <= high is needed"
        )
