"""The ranking for one buyer: who is in, who is out and why, and who stands where."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.field import Field, field_for
from spindlewise.answer.field_merits import FieldMerits
from spindlewise.answer.market import MARKET_CRITERIA
from spindlewise.answer.merits import MeritSpan
from spindlewise.answer.needs import Failure, Sifted, with_price
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.received import Received
from spindlewise.answer.standing import Standing
from spindlewise.answer.weighing import Weighed, weigh
from spindlewise.answer.worked_out import WorkedOut
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.differences import Differences, differences
from spindlewise.decide.level import Levels, Spreads, footing, levels, spreads
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
    What a brief answer has no use for is worked out only when it is asked for.
    """

    buyer: Buyer
    day: date
    weighed: Weighed
    field: Field
    among: IntArray
    """The rows of the field that are candidates, in the order of the table's rows."""
    too_dear: tuple[bool, ...]
    """By row of the field: whether money keeps it out."""
    barred: frozenset[str]
    table: MeritTable
    scores: Scores
    order: IntArray
    held_back: BoolArray
    standings: Mapping[str, Mapping[str, Standing]]
    prices: Mapping[str, Paid | Unpriced]
    received: Mapping[str, Received]
    merits: FieldMerits

    @cached_property
    def everyone(self) -> FloatArray:
        """The expected score of every product of the field, whether it meets the needs or not."""
        return score(self.merits.whole, self.weighed.shares).expected

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

    @cached_property
    def sifted(self) -> Mapping[str, Sifted]:
        """What each product of the catalog fails, money first, and what could not be checked."""
        return {name: self.sifting(row) for row, name in enumerate(self.field.names)}

    @cached_property
    def levels(self) -> Levels:
        """The rank of every candidate, and who is level with whom."""
        return levels(self.table, self.weighed.shares, self.held_back)

    @cached_property
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

    def sifting(self, row: int) -> Sifted:
        """What the product in this row of the field fails and why, and what of it could not be checked."""
        name, found = self.field.names[row], self.field.sifted[row]
        if self.too_dear[row]:
            found = with_price(found, self.buyer, self.prices[name])
        if name in self.barred:
            found = Sifted((*found.failures, BARRED), found.unchecked)
        return found

    @cached_property
    def _spreads(self) -> Spreads:
        return spreads(self.table, self.weighed.shares)

    def _place(self, row: int) -> Placed:
        name = self.table.products[row]
        paid = self.prices[name]
        if isinstance(paid, Unpriced):  # pragma: no cover  # an unpriced product fails the price need
            raise TypeError(f"{name} has no price and cannot be placed")
        merits = (self.table.low[row], self.table.expected[row], self.table.high[row])
        stands = footing(self.scores.expected, self._spreads, self.held_back, row)
        return Placed(
            product=name,
            rank=stands.rank,
            level_with=tuple(self.table.products[other] for other in stands.level_with),
            score=Span(
                float(self.scores.low[row]), float(self.scores.expected[row]), float(self.scores.high[row])
            ),
            merits={
                criterion: Span(*of_it)
                for criterion, *of_it in zip(
                    self.table.criteria, *(part.tolist() for part in merits), strict=True
                )
            },
            standings=self.standings[name],
            paid=paid,
            received=self.received[name],
            held_back=bool(self.held_back[row]),
            unchecked=self.field.sifted[int(self.among[row])].unchecked,
        )


def rank(
    desk: Desk, buyer: Buyer, with_promised: bool = False, barred: frozenset[str] = frozenset()
) -> Ranking:
    """Rank all products for the buyer; raises NoMarket for a region or currency that cannot be served.

    `with_promised` counts promised firmware as if it were there: a what-if, never a recommendation.
    `barred` products stay out: they failed a need that is no longer known.
    """
    field = field_for(desk, buyer, with_promised)
    weighed = weigh(buyer.weights)
    too_dear = field.too_dear(buyer.budget_amount)
    among = np.array(
        [
            row
            for row, (fails, dear, name) in enumerate(zip(field.fails, too_dear, field.names, strict=True))
            if not (fails or dear or name in barred)
        ],
        dtype=np.intp,
    )
    merits = _merits(desk, buyer, weighed.criteria, with_promised)
    table, held = merits.candidates(among), field.held_back[among]
    scores = score(table, weighed.shares)
    return Ranking(
        buyer=buyer,
        day=desk.day,
        weighed=weighed,
        field=field,
        among=among,
        too_dear=too_dear,
        barred=barred,
        table=table,
        scores=scores,
        order=ranking_order(table.products, scores.expected, held),
        held_back=held,
        standings=standings_of(desk, buyer, weighed.criteria, with_promised),
        prices=desk.market(buyer.region, buyer.currency).prices,
        received=desk.received(buyer, with_promised),
        merits=merits,
    )


def standings_of(
    desk: Desk, buyer: Buyer, criteria: tuple[str, ...], with_promised: bool = False
) -> Mapping[str, Mapping[str, Standing]]:
    """The figures of all products as they count for this buyer, by product, then by criterion."""
    market = desk.market(buyer.region, buyer.currency)
    received = desk.received(buyer, with_promised)
    owned = desk.ownership(buyer) if "ownership" in criteria else {}

    def joined() -> Mapping[str, Mapping[str, Standing]]:
        return WorkedOut(
            market.standings,
            lambda name: {
                **market.standings[name],
                **received[name].standings,
                **(owned[name].standings if owned else {}),
            },
        )

    like = desk.likeness(buyer)
    key = ("standings", buyer.region, buyer.currency, like.reception, with_promised)
    return desk.kept((*key, like.riding if owned else None), joined)


def merit_table(
    desk: Desk,
    buyer: Buyer,
    names: tuple[str, ...],
    criteria: tuple[str, ...],
    with_promised: bool = False,
) -> MeritTable:
    """The merits of these products on these criteria, for this buyer."""
    return _merits(desk, buyer, criteria, with_promised).of(names)


def _merits(desk: Desk, buyer: Buyer, criteria: tuple[str, ...], with_promised: bool) -> FieldMerits:
    """The merits of the catalog, read and checked once for all buyers who are alike in them."""
    market, received = desk.market(buyer.region, buyer.currency), desk.received(buyer, with_promised)
    owned = "ownership" in criteria

    def spans(criterion: str) -> Mapping[str, MeritSpan]:
        if criterion in MARKET_CRITERIA:
            return WorkedOut(market.merits, lambda name: market.merits[name][criterion])
        if criterion == "ownership":
            own = desk.ownership(buyer)
            return {name: own[name].merits[criterion] for name in own}
        return WorkedOut(received, lambda name: received[name].merits[criterion])

    like = desk.likeness(buyer)
    key = ("merits", buyer.region, buyer.currency, like.reception, with_promised, criteria)
    return desk.kept(
        (*key, like.riding if owned else None), lambda: FieldMerits(tuple(market.merits), criteria, spans)
    )
