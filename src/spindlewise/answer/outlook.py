"""How sure the pick is, and what would change it."""

from dataclasses import dataclass

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Ranking
from spindlewise.answer.second import second_look
from spindlewise.answer.standing import Standing
from spindlewise.decide.merit_draws import HELD, NORMAL, UNIFORM, SpreadMerits
from spindlewise.decide.second_opinions import SecondOpinion
from spindlewise.decide.smallest_change import WeightChange, smallest_change
from spindlewise.decide.stability import Stability, stability
from spindlewise.decide.weight_draws import AroundShares, concentration
from spindlewise.decide.weight_range import WeightRange, weight_ranges

DRAWS = 10_000
"""Worlds drawn for a reply: a chance of one half is then known to half a percent."""
SEED = 20_261
"""Fixed, so that the same question has the same answer to the last byte."""


@dataclass(frozen=True, slots=True)
class Outlook:
    """Weight ranges, the smallest change of weights, stability and second opinions for one ranking.

    `change` is None where no weights at all would put another product first. The stability is None where
    nothing meets the needs.
    """

    ranges: tuple[WeightRange, ...]
    change: WeightChange | None
    stability: Stability | None
    second_opinions: tuple[SecondOpinion, ...]


NO_OUTLOOK = Outlook((), None, None, ())


def outlook(desk: Desk, ranking: Ranking) -> Outlook:
    """All that says how sure the first place is and what would change it."""
    if not len(ranking.order):
        return NO_OUTLOOK
    shares = ranking.weighed.shares
    return Outlook(
        weight_ranges(ranking.table, shares, ranking.held_back),
        smallest_change(ranking.table, shares, ranking.held_back),
        worlds(ranking),
        second_look(desk, ranking),
    )


def worlds(ranking: Ranking, draws: int = DRAWS, seed: int = SEED, threads: int = 1) -> Stability:
    """How often each product takes each place when weights and figures move within what is known of them.

    Weights are drawn around the stated ones, wider the less sure the buyer is; figures within their
    plus-minus; unknown figures, and those with a cause that nobody has
    measured, across the plausible span.
    """
    law = AroundShares(tuple(map(float, ranking.weighed.shares)), concentration(ranking.buyer.weights.sure))
    kinds = np.array(
        [
            [_spread(ranking.standings[name][criterion]) for criterion in ranking.table.criteria]
            for name in ranking.table.products
        ],
        dtype=np.int8,
    )
    merits = SpreadMerits(ranking.table, kinds)
    return stability(
        ranking.table,
        law,
        merits,
        held_back=ranking.held_back,
        draws=draws,
        seed=seed,
        threads=threads,
    )


def _spread(standing: Standing) -> int:
    if standing.origin == "unknown" or standing.not_measured:
        return UNIFORM
    return HELD if standing.low is None else NORMAL
