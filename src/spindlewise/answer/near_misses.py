"""Near misses: products that fail one need only and would otherwise have stood at or above the pick."""

from dataclasses import dataclass

from spindlewise.answer.needs import Failure
from spindlewise.answer.paid import Paid
from spindlewise.answer.ranking import Ranking

SHOWN = 3
"""So many near misses are named, the best first."""


@dataclass(frozen=True, slots=True)
class NearMiss:
    """What it would have scored, and the single need that it fails."""

    product: str
    score: float
    failure: Failure
    paid: Paid


def near_misses(ranking: Ranking) -> tuple[NearMiss, ...]:
    """The best products that are out for one reason other than kind or state, and would else have led.

    Where nothing meets the needs, the best of those that fail one need only. A product under a safety
    notice is never held out as nearly right.
    """
    bar = ranking.pick.score.expected if ranking.pick else -1.0
    field, scores = ranking.field, ranking.everyone.tolist()
    failing = zip(field.fails, ranking.too_dear, field.held_back.tolist(), strict=True)
    near = [
        (-scores[row], field.names[row], row)
        for row, (fails, dear, held) in enumerate(failing)
        if not held and scores[row] >= bar and fails + dear + (field.names[row] in ranking.barred) == 1
    ]
    found: list[NearMiss] = []
    for _, name, row in sorted(near):
        failure, paid = ranking.sifting(row).failures[0], ranking.prices[name]
        if isinstance(paid, Paid) and failure.need not in ("kind", "state"):
            found.append(NearMiss(name, scores[row], failure, paid))
        if len(found) == SHOWN:
            break
    return tuple(found)
