"""The ranking for one buyer: who is in, who is out and why, and who stands where."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.needs import Failure, Sifted, sift_but_price, with_price
from spindlewise.answer.owning import riding_key
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.received import Received, reception_key
from spindlewise.answer.standing import Standing
from spindlewise.answer.weighing import Weighed, weigh
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.differences import Differences, differences
from spindlewise.decide.level import Levels, levels
from spindlewise.decide.score import Scores, ranking_order, score
from spindlewise.decide.table import BoolArray, FloatArray, IntArray, MeritTable

BARRED = Failure("rider weight", "failed the rider's weight, which was not kept", safety=True)


@dataclass(frozen=True, slots=True)
class Span:
    """A figure as low, expected and high."""

    low: float
    expected: float
    high: float


@dataclass(frozen=True, slots=True)
class Placed:
    """One product's place and all that it rests on."""

    product: str
    rank: int
    level_with: tuple[str, ...]
    score: Span
    merits: Mapping[str, Span]
    """By criterion, weighed ones only."""
    standings: Mapping[str, Standing]
    paid: Paid
    received: Received
    held_back: bool
    unchecked: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Excluded:
    """A product that fails one need or more."""

    product: str
    because: tuple[Failure, ...]
    paid: Paid | Unpriced


@dataclass(frozen=True)
class Ranking:
    """Candidates as a merit table with their scores and order; `placed` gives each with its whole story.

    `order` holds rows of `table` from first to last; products held back by a safety notice stand last.
    """

    buyer: Buyer
    day: date
    weighed: Weighed
    table: MeritTable
    scores: Scores
    order: IntArray
    levels: Levels
    held_back: BoolArray
    standings: Mapping[str, Mapping[str, Standing]]
    prices: Mapping[str, Paid | Unpriced]
    received: Mapping[str, Received]
    sifted: Mapping[str, Sifted]

    @cached_property
    def placed(self) -> tuple[Placed, ...]:
        """All candidates from first to last."""
        return tuple(self._place(int(row)) for row in self.order)

    @cached_property
    def excluded(self) -> tuple[Excluded, ...]:
        """All products that are out, by id."""
        return tuple(
            Excluded(name, sifted.failures, self.prices[name])
            for name, sifted in self.sifted.items()
            if sifted.failures
        )

    @property
    def pick(self) -> Placed | None:
        """The product to recommend: the first that no safety notice holds back."""
        if not len(self.order) or self.held_back[self.order[0]]:
            return None
        return self.place_at(0)

    def place_at(self, position: int) -> Placed:
        """The product that stands at a position of the order, 0 for the first, with its whole story."""
        return self._place(int(self.order[position]))

    def row(self, product: str) -> int:
        """The product's row in the table."""
        return self.table.products.index(product)

    def against(self, product: str, other: str) -> Differences:
        """By how many points `product` leads or trails `other`, criterion by criterion, largest first."""
        return differences(self.table, self.weighed.shares, self.row(product), self.row(other))

    def _place(self, row: int) -> Placed:
        name = self.table.products[row]
        paid = self.prices[name]
        if isinstance(paid, Unpriced):  # pragma: no cover  # an unpriced product fails the price need
            raise TypeError(f"{name} has no price and cannot be placed")
        merits = {
            criterion: Span(
                float(self.table.low[row, k]),
                float(self.table.expected[row, k]),
                float(self.table.high[row, k]),
            )
            for k, criterion in enumerate(self.table.criteria)
        }
        together = np.flatnonzero(self.levels.level[row])
        return Placed(
            product=name,
            rank=int(self.levels.ranks[row]),
            level_with=tuple(self.table.products[j] for j in together if j != row),
            score=Span(
                float(self.scores.low[row]), float(self.scores.expected[row]), float(self.scores.high[row])
            ),
            merits=merits,
            standings=self.standings[name],
            paid=paid,
            received=self.received[name],
            held_back=bool(self.held_back[row]),
            unchecked=self.sifted[name].unchecked,
        )


def rank(
    desk: Desk, buyer: Buyer, with_promised: bool = False, barred: frozenset[str] = frozenset()
) -> Ranking:
    """Rank all products for the buyer; raises NoMarket for a region or currency that cannot be served.

    `with_promised` counts promised firmware as if it were there: a what-if, never a recommendation.
    `barred` products stay out: they failed a need that is no longer known.
    """
    market = desk.market(buyer.region, buyer.currency)
    received = desk.received(buyer, with_promised)
    weighed = weigh(buyer.weights)
    sifted = {
        name: with_price(found, buyer, market.prices[name])
        for name, found in _sifted_but_price(desk, buyer, received, with_promised).items()
    }
    for name in barred & sifted.keys():
        sifted[name] = Sifted((*sifted[name].failures, BARRED), sifted[name].unchecked)
    names = tuple(name for name, found in sifted.items() if not found.failures)
    table = merit_table(desk, buyer, names, weighed.criteria, with_promised)
    scores = score(table, weighed.shares)
    held = np.array([name in market.held_back for name in names], dtype=np.bool_)
    return Ranking(
        buyer=buyer,
        day=desk.day,
        weighed=weighed,
        table=table,
        scores=scores,
        order=ranking_order(names, scores.expected, held),
        levels=levels(table, weighed.shares, held),
        held_back=held,
        standings=standings_of(desk, buyer, weighed.criteria, with_promised),
        prices=market.prices,
        received=received,
        sifted=sifted,
    )


def _sifted_but_price(
    desk: Desk, buyer: Buyer, received: Mapping[str, Received], with_promised: bool
) -> dict[str, Sifted]:
    return desk.kept(
        ("sifted", buyer.needs, reception_key(buyer), with_promised),
        lambda: {
            name: sift_but_price(product, buyer, desk.day, received[name].reception)
            for name, product in desk.catalog.products.items()
        },
    )


def standings_of(
    desk: Desk, buyer: Buyer, criteria: tuple[str, ...], with_promised: bool = False
) -> Mapping[str, Mapping[str, Standing]]:
    """The figures of all products as they count for this buyer, by product, then by criterion."""
    market = desk.market(buyer.region, buyer.currency)
    received = desk.received(buyer, with_promised)
    owned = desk.ownership(buyer) if "ownership" in criteria else {}

    def joined() -> Mapping[str, Mapping[str, Standing]]:
        return {
            name: {
                **market.standings[name],
                **received[name].standings,
                **(owned[name].standings if owned else {}),
            }
            for name in market.standings
        }

    key = (buyer.region, buyer.currency, reception_key(buyer), with_promised)
    return desk.kept(("standings", key, riding_key(buyer) if owned else None), joined)


def merit_table(
    desk: Desk,
    buyer: Buyer,
    names: tuple[str, ...],
    criteria: tuple[str, ...],
    with_promised: bool = False,
) -> MeritTable:
    """The merits of these products on these criteria, for this buyer."""
    whole = _all_merits(desk, buyer, criteria, with_promised)
    if not names:
        nothing = np.empty((0, len(criteria)))
        return MeritTable((), criteria, nothing, nothing, nothing)
    rows = [whole.rows[name] for name in names]
    low, expected, high = (np.ascontiguousarray(part) for part in whole.merits[:, rows])
    return MeritTable(names, criteria, low, expected, high)


@dataclass(frozen=True, slots=True)
class _AllMerits:
    """The merits of the whole catalog, shape (3, products, criteria): low, expected, high."""

    rows: Mapping[str, int]
    merits: FloatArray


def _all_merits(desk: Desk, buyer: Buyer, criteria: tuple[str, ...], with_promised: bool) -> _AllMerits:
    owned = "ownership" in criteria

    def gathered() -> _AllMerits:
        market, received = desk.market(buyer.region, buyer.currency), desk.received(buyer, with_promised)
        own = desk.ownership(buyer) if owned else {}
        table = [
            [
                {**market.merits[n], **received[n].merits, **(own[n].merits if own else {})}[criterion]
                for criterion in criteria
            ]
            for n in market.merits
        ]
        merits = np.array(table, dtype=np.float64).reshape(len(table), len(criteria), 3)
        rows = {name: row for row, name in enumerate(market.merits)}
        return _AllMerits(rows, np.ascontiguousarray(merits.transpose(2, 0, 1)))

    key = (buyer.region, buyer.currency, reception_key(buyer), with_promised, criteria)
    return desk.kept(("merits", key, riding_key(buyer) if owned else None), gathered)
