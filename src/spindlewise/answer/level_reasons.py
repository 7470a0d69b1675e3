"""Why two products are level: by figures that are known and lie close, or by what nobody has measured."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from spindlewise.answer.ranking import Placed, Ranking
from spindlewise.answer.received import Received
from spindlewise.answer.standing import Standing
from spindlewise.answer.trust import has_doubled_side
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.level import Spreads, footing, spreads_between
from spindlewise.decide.table import FloatArray, MeritTable

OWN_BALANCE = "your own balance"
TELLING = 0.1
"""An unknown that moves a score by less than a tenth of what the widest does is not named as the reason."""


@dataclass(frozen=True, slots=True)
class NotKnown:
    """A figure of a product that nobody knows in whole; `missing` names the parts, none where it is all."""

    product: str
    criterion: str
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LevelWith:
    """A product that another is level with.

    `behind` is by how many points it trails the other on expected scores (negative: it leads). `only_by` is
    empty where the two are level by what is known; else it names the figures without whose unknowns they
    would not be level.
    """

    product: str
    behind: float
    only_by: tuple[NotKnown, ...]


class LevelReasons:
    """Says of the products of a ranking whether being level rests on what is known.

    The unknown figures of both are put at what is expected of them, the low end of what is plausible. Two
    that are then no longer level were so only because something was not known.
    """

    def __init__(self, ranking: Ranking, only: Placed | None = None) -> None:
        """Look at the whole ranking or, where one place is enough, at it and those level with it `only`."""
        rows = np.arange(len(ranking.order))
        if only is not None:
            rows = np.array([ranking.row(name) for name in (only.product, *only.level_with)], dtype=np.intp)
        table = ranking.table.at_rows(rows)
        self._rows = {name: row for row, name in enumerate(table.products)}
        self._expected, self._held = ranking.scores.expected[rows], ranking.held_back[rows]
        self._unknown = _Unknown(ranking.standings, ranking.received, ranking.buyer, table)
        self._shares = ranking.weighed.shares
        self._spreads = self._unknown.spreads(self._shares)

    def of(self, placed: Placed, only: str | None = None) -> tuple[LevelWith, ...]:
        """Give a reason for each product that `placed` is level with, in their order; or for `only` one."""
        wanted = [name for name in placed.level_with if only in (None, name)]
        if not wanted:
            return ()
        still = footing(self._expected, self._spreads, self._held, self._rows[placed.product])
        names = self._unknown.table.products
        known = {names[other] for other in still.level_with}
        return tuple(
            LevelWith(
                name,
                placed.score.expected - float(self._expected[self._rows[name]]),
                () if name in known else self._unknown.figures((placed.product, name), self._shares),
            )
            for name in wanted
        )


def level_reasons(ranking: Ranking, placed: Placed) -> tuple[LevelWith, ...]:
    """Give the reasons for one place; for many of one ranking, `LevelReasons` looks at its figures once."""
    return LevelReasons(ranking, placed).of(placed) if placed.level_with else ()


def level_only_by(
    table: MeritTable,
    shares: FloatArray,
    expected: FloatArray,
    standings: Mapping[str, Mapping[str, Standing]],
    received: Mapping[str, Received],
    buyer: Buyer,
) -> tuple[NotKnown, ...]:
    """The same for a table of two products that are level: what makes them so, empty where it is known."""
    unknown = _Unknown(standings, received, buyer, table)
    nobody_held = np.zeros(len(table.products), dtype=np.bool_)
    if footing(expected, unknown.spreads(shares), nobody_held, 0).level_with:
        return ()
    return unknown.figures(table.products, shares)


@dataclass(frozen=True)
class _Unknown:
    """Which figures of a merit table hang on something that nobody knows, and what is known of them."""

    standings: Mapping[str, Mapping[str, Standing]]
    received: Mapping[str, Received]
    buyer: Buyer
    table: MeritTable

    def spreads(self, shares: FloatArray) -> Spreads:
        """How far scores may move by what is known."""
        low, high = self._known
        return spreads_between(low, self.table.expected, high, shares)

    def figures(self, products: Sequence[str], shares: FloatArray) -> tuple[NotKnown, ...]:
        """What is not known of these products and tells, with the parts that are missing."""
        low, high = self._known
        rows = [self._rows[name] for name in products]
        wide = ((self.table.high - self.table.low) - (high - low))[rows] * shares
        telling = (wide >= TELLING * wide.max()) & (wide > 0.0)
        return tuple(
            NotKnown(name, self.table.criteria[k], self.missing(name, self.table.criteria[k]) or ())
            for name, row in zip(products, telling, strict=True)
            for k in np.flatnonzero(row).tolist()
        )

    def missing(self, product: str, criterion: str) -> tuple[str, ...] | None:
        """What is missing of a figure: nothing at all (None), all of it (empty), or the parts named."""
        standing = self.standings[product][criterion]
        if standing.origin == "unknown":
            return ()
        parts = standing.not_measured
        doubled = has_doubled_side(self.received[product].budget)
        if criterion == "reading_uncertainty" and doubled and self._no_balance:
            parts = (OWN_BALANCE, *parts)
        return parts or None

    @cached_property
    def _rows(self) -> dict[str, int]:
        return {name: row for row, name in enumerate(self.table.products)}

    @property
    def _no_balance(self) -> bool:
        return isinstance(self.buyer.riding.balance_left_pct, str)

    @cached_property
    def _known(self) -> tuple[FloatArray, FloatArray]:
        """The low and the high of each merit by what is known: unknown figures stand as they are expected."""
        table = self.table
        low, high = table.low.copy(), table.high.copy()
        for row, name in enumerate(table.products):
            for k, criterion in enumerate(table.criteria):
                missing = None if low[row, k] == high[row, k] else self.missing(name, criterion)
                if missing is None:
                    continue
                expected = table.expected[row, k]
                known = (expected, expected, expected)
                if criterion == "reading_uncertainty" and missing:
                    known = self.received[name].reading_known
                low[row, k], high[row, k] = min(known[0], expected), max(known[2], expected)
        return low, high
