"""At which price each candidate would draw level with the leader, and how dear the leader may become."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Ranking
from spindlewise.decide.break_even import (
    BreakEven,
    PriceScale,
    PriceTerm,
    break_even,
    headroom,
    score_without,
)
from spindlewise.decide.table import FloatArray
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
    scale, without = price_scale_of(desk, ranking)
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
    """The price at which `product` would draw level with `rival` as it stands."""
    scale, without = price_scale_of(desk, ranking)
    row, other = ranking.row(product), ranking.row(rival)
    found = break_even(
        scale,
        without,
        float(ranking.scores.expected[other]),
        ranking.held_back,
        np.full(len(without), bool(ranking.held_back[other])),
    )
    return found[row]


def price_scale_of(desk: Desk, ranking: Ranking) -> tuple[PriceScale, FloatArray]:
    """How this buyer's prices become points, and each candidate's score without them."""
    market = desk.market(ranking.buyer.region, ranking.buyer.currency)
    weighed = [name for name in MONEY_CRITERIA if name in ranking.table.criteria]
    shares = ranking.weighed.by_name
    terms = tuple(
        PriceTerm(desk.yardstick.curves[name], shares[name], _offsets(desk, ranking, name))
        for name in weighed
    )
    scale = PriceScale(terms, market.factor, minor_digits(ranking.buyer.currency))
    return scale, score_without(ranking.table, ranking.weighed.shares, tuple(weighed))


def _offsets(desk: Desk, ranking: Ranking, criterion: str) -> FloatArray | float:
    """What ownership adds to the price of each candidate, in the curves' currency."""
    if criterion == "price":
        return 0.0
    extras = desk.ownership(ranking.buyer)
    return np.array([extras[name].beside_price for name in ranking.table.products], dtype=np.float64)
