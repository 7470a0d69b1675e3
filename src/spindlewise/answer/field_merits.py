"""The merits of a whole catalog for all buyers who are alike in them, read as far as they are asked for."""

from collections.abc import Callable, Mapping, Sequence
from functools import cached_property

import numpy as np

from spindlewise.answer.merits import MeritSpan
from spindlewise.decide.table import IntArray, MeritTable


class FieldMerits:
    """Merits of many products on these criteria; `spans` gives those of one criterion by product.

    One question reads those of its own candidates; from the second on it pays to read all of them once.
    """

    def __init__(
        self,
        names: Sequence[str],
        criteria: tuple[str, ...],
        spans: Callable[[str], Mapping[str, MeritSpan]],
    ) -> None:
        """`names` are the products in the order of rows."""
        self._names = tuple(names)
        self._criteria = criteria
        self._spans = spans
        self._asked = False

    @cached_property
    def whole(self) -> MeritTable:
        """The table of all products."""
        return self._read(self._names)

    def candidates(self, rows: IntArray) -> MeritTable:
        """The table of these rows, in their order."""
        if self._asked or not len(rows):
            return self.whole.at_rows(rows)
        self._asked = True
        return self._read([self._names[row] for row in rows.tolist()])

    def of(self, names: Sequence[str]) -> MeritTable:
        """The table of these products; a few more for a question that is being answered."""
        return self.whole.keep(names) if "whole" in vars(self) or not names else self._read(names)

    def _read(self, names: Sequence[str]) -> MeritTable:
        columns = [self._spans(criterion) for criterion in self._criteria]
        rows = [[column[name] for column in columns] for name in names]
        spans = np.array(rows, dtype=np.float64).reshape(len(rows), len(columns), 3)
        low, expected, high = spans.transpose(2, 0, 1)
        return MeritTable(tuple(names), self._criteria, low, expected, high)
