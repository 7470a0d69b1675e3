"""At which price each candidate would draw level with the leader, and how dear the leader may become."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Ranking
from spindlewise.answer.weighing import Weighed
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.break_even import (
    BreakEven,
    PriceScale,
    PriceTerm,
    break_even,
    headroom,
    score_without,
)
from spindlewise.decide.table import FloatArray, MeritTable
from spindlewise.units import minor_digits

MONEY_CRITERIA = ("price", "ownership")


@dataclass(frozen=True, slots=True)
class BreakEvens:
    """By product id: each candidate against the leader; and the leader's own room upwards."""

    against_leader: Mapping[str, BreakEven]
    leader: str | None
    room: BreakEven | None


def break_evens(desk: Desk, ranking: Ranking) -> BreakEvens:
    """The break-even price of every candidate but the leader, to the currency's minor unit."""
    if not len(ranking.order):
        return BreakEvens({}, None, None)
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
    return BreakEvens(against, names[first], room)


def break_even_between(desk: Desk, ranking: Ranking, product: str, rival: str) -> BreakEven:
    """The price at which one candidate would draw level with another as that stands."""
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
