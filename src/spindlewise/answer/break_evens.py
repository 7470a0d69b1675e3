"""At which price each candidate would score as much as the leader, and how dear the leader may become."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Ranking, merit_table
from spindlewise.answer.weighing import Weighed
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.break_even import (
    BreakEven,
    Outcome,
    PriceScale,
    PriceTerm,
    break_even,
    flat_beyond,
    headroom,
    score_without,
)
from spindlewise.decide.table import FloatArray, MeritTable
from spindlewise.units import minor_digits

MONEY_CRITERIA = ("price", "ownership")


@dataclass(frozen=True, slots=True)
class OutAt:
    """For a product that is out: the highest price at which it would be in and no worse than the leader.

    `amount` is None where no price would do: it fails a need that no price mends, or it trails even for
    nothing; `because` says which.
    """

    amount: Decimal | None
    because: str


@dataclass(frozen=True, slots=True)
class BreakEvens:
    """By product id: each candidate against the leader; and the leader's own room upwards."""

    against_leader: Mapping[str, BreakEven]
    leader: str | None
    room: BreakEven | None
    out: Mapping[str, OutAt]
    """By product id: what is out, and whether a price would bring it to the leader's score."""
    flat_beyond: Decimal | None = None
    """The price beyond which a dearer leader loses no more points; None where no price is weighed."""


def break_evens(desk: Desk, ranking: Ranking) -> BreakEvens:
    """The break-even price of every candidate but the leader, to the currency's minor unit."""
    if not len(ranking.order):
        return BreakEvens({}, None, None, _out(desk, ranking, None))
    first = int(ranking.order[0])
    names = ranking.table.products
    scale, without = price_scale(desk, ranking.buyer, ranking.table, ranking.weighed)
    found = break_even(
        scale,
        without,
        float(ranking.scores.expected[first]),
        ranking.held_back,
        np.full(len(names), bool(ranking.held_back[first])),
    )
    room = headroom(scale, without, ranking.scores.expected, first, ranking.held_back)
    against = {name: found[row] for row, name in enumerate(names) if row != first}
    flat = flat_beyond(scale, first, len(names)) if scale.terms else None
    return BreakEvens(against, names[first], room, _out(desk, ranking, first), flat)


def _out(desk: Desk, ranking: Ranking, first: int | None) -> dict[str, OutAt]:
    """Only a budget is mended by a price: what fails it alone is held against the leader."""
    dear = tuple(e.product for e in ranking.excluded if [f.need for f in e.because] == ["budget"])
    found = {
        e.product: OutAt(None, f"no price would do: {'; '.join(f.because for f in e.because)}")
        for e in ranking.excluded
        if e.product not in dear
    }
    budget = ranking.buyer.budget_amount
    if not dear or budget is None:
        return dict(sorted(found.items()))
    table = merit_table(desk, ranking.buyer, dear, ranking.table.criteria)
    scale, without = price_scale(desk, ranking.buyer, table, ranking.weighed)
    held = np.array(
        [name in desk.market(ranking.buyer.region, ranking.buyer.currency).held_back for name in dear]
    )
    rival = -1.0 if first is None else float(ranking.scores.expected[first])
    rival_held = np.full(len(dear), first is not None and bool(ranking.held_back[first]))
    for name, level in zip(dear, break_even(scale, without, rival, held, rival_held), strict=True):
        found[name] = _at_most(level, budget)
    return dict(sorted(found.items()))


def _at_most(level: BreakEven, budget: Decimal) -> OutAt:
    if level.outcome is Outcome.AT_PRICE and level.amount is not None:
        return OutAt(min(level.amount, budget), "")
    if level.outcome is Outcome.ANY_PRICE:
        return OutAt(budget, "")
    if level.outcome is Outcome.HELD_BACK:
        return OutAt(None, "no price would do: a safety notice holds it back")
    return OutAt(None, "no price would do: it trails even for nothing")


def break_even_between(desk: Desk, ranking: Ranking, product: str, rival: str) -> BreakEven:
    """The price at which one candidate would score as much as another as that stands."""
    scale, without = price_scale(desk, ranking.buyer, ranking.table, ranking.weighed)
    row, other = ranking.row(product), ranking.row(rival)
    held = np.full(len(without), bool(ranking.held_back[other]))
    score = float(ranking.scores.expected[other])
    return break_even(scale, without, score, ranking.held_back, held)[row]


def price_scale(
    desk: Desk, buyer: Buyer, table: MeritTable, weighed: Weighed
) -> tuple[PriceScale, FloatArray]:
    """How this buyer's prices become points, and the score without them of each product of the table."""
    market = desk.market(buyer.region, buyer.currency)
    names = tuple(name for name in MONEY_CRITERIA if name in table.criteria)
    shares = weighed.by_name
    terms = tuple(
        PriceTerm(desk.yardstick.curves[name], shares[name], _beside(desk, buyer, table, name))
        for name in names
    )
    scale = PriceScale(terms, market.factor, minor_digits(buyer.currency))
    return scale, score_without(table, weighed.shares, names)


def _beside(desk: Desk, buyer: Buyer, table: MeritTable, criterion: str) -> FloatArray | float:
    """What ownership adds to the price of each product, in the curves' currency."""
    if criterion == "price":
        return 0.0
    owned = desk.ownership(buyer)
    return np.array([owned[name].beside_price for name in table.products], dtype=np.float64)
