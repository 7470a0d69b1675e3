"""What merits a product may turn out to have: draws of merits within what is known of its figures."""

from dataclasses import dataclass
from typing import Literal, Protocol, TypeAlias

import numpy as np
import numpy.typing as npt

from spindlewise.decide.table import FloatArray, IntArray, MeritTable

Spread: TypeAlias = Literal[0, 1, 2]
"""How the merit of one product on one criterion spreads: HELD, NORMAL or UNIFORM."""

HELD: Spread = 0
"""The merit stands as expected."""
NORMAL: Spread = 1
"""The figure is known within a plus-minus: half its width is two standard deviations."""
UNIFORM: Spread = 2
"""The figure is unknown: anything from low to high is as likely as anything else."""


class MeritLaw(Protocol):
    """A law of merits; pass one of your own to draw figures themselves and put them through their curves."""

    def draw(
        self, generator: np.random.Generator, criterion: int, draws: int
    ) -> tuple[IntArray, FloatArray] | None:
        """Give the rows whose merit on the criterion is drawn and their merits, shape (rows, draws).

        None where no merit is drawn. Rows are the same in every call for the same criterion; all other merits
        stand as expected. The caller may write into the merits.
        """


@dataclass(frozen=True, slots=True, eq=False)
class SpreadMerits:
    """Merits drawn cell by cell, independently, between the low and the high of a table.

    `kinds` has shape (n, m) and holds HELD, NORMAL or UNIFORM. A normal draw z, cut at two standard
    deviations either way, gives expected + z * (high - expected) / 2 above the expected merit and
    expected + z * (expected - low) / 2 below: half the draws lie on either side, 2 % lie on each end, none
    beyond. A uniform draw lies anywhere from low to high.

    Merits are drawn, not figures: exact where a curve is straight on either side of the expected figure, and
    an approximation where a knot lies within the plus-minus. ValueError for kinds of another shape or value.
    """

    table: MeritTable
    kinds: npt.NDArray[np.int8]

    def __post_init__(self) -> None:
        kinds = np.asarray(self.kinds)
        shape = self.table.expected.shape
        if kinds.shape != shape or not np.isin(kinds, (HELD, NORMAL, UNIFORM)).all():
            raise ValueError(
                f"kinds of shape {kinds.shape} for a table of shape {shape}; one a cell is needed, each of"
                f" {HELD} (held), {NORMAL} (normal), {UNIFORM} (uniform)"
            )
        certain = self.table.low == self.table.high
        object.__setattr__(self, "kinds", np.where(certain, HELD, kinds).astype(np.int8))

    def draw(
        self, generator: np.random.Generator, criterion: int, draws: int
    ) -> tuple[IntArray, FloatArray] | None:
        """Give the rows whose merit on the criterion is not held and their merits, shape (rows, draws)."""
        kinds = self.kinds[:, criterion]
        normal, uniform = np.flatnonzero(kinds == NORMAL), np.flatnonzero(kinds == UNIFORM)
        rows = np.concatenate((normal, uniform))
        if not rows.size:
            return None
        merits = np.empty((len(rows), draws))
        self._normal(generator, criterion, normal, merits[: len(normal)])
        self._uniform(generator, criterion, uniform, merits[len(normal) :])
        return rows, merits

    def _normal(self, generator: np.random.Generator, k: int, rows: IntArray, out: FloatArray) -> None:
        if not rows.size:
            return
        low, expected, high = (each[rows, k][:, None] for each in self._edges)
        mean_step, lean = (high - low) / 4.0, (high + low - 2.0 * expected) / 4.0
        generator.standard_normal(out=out)
        np.clip(out, -2.0, 2.0, out=out)
        # up * z above and down * z below are the mean of both times z, plus half their difference times |z|
        leaning = np.abs(out) if lean.any() else None
        out *= mean_step
        if leaning is not None:
            leaning *= lean
            out += leaning
        out += expected

    def _uniform(self, generator: np.random.Generator, k: int, rows: IntArray, out: FloatArray) -> None:
        if not rows.size:
            return
        low, _, high = (each[rows, k][:, None] for each in self._edges)
        generator.random(out=out)
        out *= high - low
        out += low

    @property
    def _edges(self) -> tuple[FloatArray, FloatArray, FloatArray]:
        return self.table.low, self.table.expected, self.table.high
