"""Near misses: products that fail one need only and would otherwise have stood at or above the pick."""

from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.needs import Failure
from spindlewise.answer.paid import Paid
from spindlewise.answer.ranking import Ranking, merit_table
from spindlewise.decide.score import score

SHOWN = 3
"""So many near misses are named, the best first."""


@dataclass(frozen=True, slots=True)
class NearMiss:
    """What it would have scored, and the single need that it fails."""

    product: str
    score: float
    failure: Failure
    paid: Paid


def near_misses(desk: Desk, ranking: Ranking) -> tuple[NearMiss, ...]:
    """The best products that are out for one reason other than kind or state, and would else have led.

    Where nothing meets the needs, the best of those that fail one need only. A product under a safety
    notice is never held out as nearly right.
    """
    bar = ranking.pick.score.expected if ranking.pick else -1.0
    held_back = desk.market(ranking.buyer.region, ranking.buyer.currency).held_back
    single = [
        (out.product, out.because[0], out.paid)
        for out in ranking.excluded
        if len(out.because) == 1
        and out.because[0].need not in ("kind", "state", "price")
        and isinstance(out.paid, Paid)
        and out.product not in held_back
    ]
    if not single:
        return ()
    names = tuple(name for name, _, _ in single)
    scores = score(merit_table(desk, ranking.buyer, names, ranking.table.criteria), ranking.weighed.shares)
    found = [
        NearMiss(name, float(value), failure, paid)
        for (name, failure, paid), value in zip(single, scores.expected, strict=True)
        if value >= bar and isinstance(paid, Paid)
    ]
    return tuple(sorted(found, key=lambda miss: (-miss.score, miss.product))[:SHOWN])
