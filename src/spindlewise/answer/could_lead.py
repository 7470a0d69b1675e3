"""Whether any weights at all would put a product first."""

from dataclasses import dataclass

from spindlewise.answer.ranking import Ranking
from spindlewise.decide.potentially_first import potentially_first


@dataclass(frozen=True, slots=True)
class CouldLead:
    """`shares` are weights, by criterion, under which it leads by most; None where no weights do it."""

    product: str
    shares: dict[str, float] | None


def could_lead(ranking: Ranking) -> tuple[CouldLead, ...]:
    """For each candidate in the order of the ranking, by a linear programme on the expected merits."""
    found = []
    for row in ranking.order.tolist():
        best = potentially_first(ranking.table, row, ranking.held_back)
        shares = None
        if best.can_be_first and best.shares is not None:
            shares = dict(zip(ranking.table.criteria, map(float, best.shares), strict=True))
        found.append(CouldLead(ranking.table.products[row], shares))
    return tuple(found)
