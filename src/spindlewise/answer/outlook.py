"""How sure the pick is, and what would change it."""

from dataclasses import dataclass

from spindlewise.answer.ranking import Ranking
from spindlewise.decide.smallest_change import WeightChange, smallest_change
from spindlewise.decide.weight_range import WeightRange, weight_ranges


@dataclass(frozen=True, slots=True)
class Outlook:
    """Weight ranges over which the first place stays, and the smallest change of weights that takes it."""

    ranges: tuple[WeightRange, ...]
    change: WeightChange | None


def outlook(ranking: Ranking) -> Outlook:
    """All that would change the first place, for a ranking with at least one candidate."""
    if not len(ranking.order):
        return Outlook((), None)
    shares = ranking.weighed.shares
    return Outlook(
        weight_ranges(ranking.table, shares, ranking.held_back),
        smallest_change(ranking.table, shares, ranking.held_back),
    )
