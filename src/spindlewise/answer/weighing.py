"""From weights as the buyer states them to shares of the whole, with what can be said about the statement."""

from collections.abc import Mapping
from dataclasses import dataclass

from spindlewise.buyer.weights import CRITERIA, Weights
from spindlewise.decide.order_weights import order_weights
from spindlewise.decide.pair_weights import PairWeights, pair_weights
from spindlewise.decide.score import shares
from spindlewise.decide.table import FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Weighed:
    """The weighed criteria in the order in which they are shown, and their shares, which add up to 1."""

    criteria: tuple[str, ...]
    shares: FloatArray
    pairs: PairWeights | None
    """How far pairwise statements agree with each other, where weights were stated so."""

    @property
    def by_name(self) -> Mapping[str, float]:
        """Share by criterion."""
        return dict(zip(self.criteria, map(float, self.shares), strict=True))


def weigh(stated: Weights) -> Weighed:
    """The shares that a statement of weights comes to; criteria of no weight are left out.

    Raises ValueError where pairwise statements do not hang together.
    """
    pairs = None
    if stated.points is not None:
        weights: Mapping[str, float] = {name: float(w) for name, w in stated.points.items()}
    elif stated.order is not None:
        weights = order_weights(stated.order)
    else:
        pairs = pair_weights([(p.more, p.than, p.times) for p in stated.pairs or ()])
        weights = pairs.weights
    criteria = tuple(name for name in CRITERIA if weights.get(name, 0.0) > 0)
    return Weighed(criteria, shares({k: weights[k] for k in criteria}, criteria), pairs)
