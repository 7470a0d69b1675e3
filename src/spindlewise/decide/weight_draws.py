"""What weights a buyer may mean: laws from which weights are drawn, each draw adding up to 1."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, Protocol, TypeAlias

import numpy as np

from spindlewise.decide.table import FloatArray

Sureness: TypeAlias = Literal["very", "fairly", "barely"]
"""How sure a buyer says to be of the weights."""

SPREAD_OF_A_FIFTH: dict[Sureness, float] = {"very": 0.10, "fairly": 0.25, "barely": 0.50}
"""By how much, as a fraction of itself, a stated share of one fifth strays (one standard deviation)."""


class WeightLaw(Protocol):
    """A law of weights over `criteria` criteria."""

    @property
    def criteria(self) -> int:
        """How many criteria share the weight."""

    def draw(self, generator: np.random.Generator, draws: int) -> FloatArray:
        """Give so many weightings, shape (criteria, draws); each column is 0 or more and adds up to 1."""


def concentration(sure: Sureness | float) -> float:
    """Give the concentration of the Dirichlet law around stated shares that fits how sure the buyer is.

    A word, or as a number the relative standard deviation r of a share of one fifth, above 0 and at most 1.
    A share s of concentration c has the variance s * (1 - s) / (c + 1), so c = 4 / r^2 - 1: "very" sure is
    399 (a share of 20 % is then 18 to 22 %, two times out of three), "fairly" 63 (15 to 25 %), "barely" 15
    (10 to 30 %). What the words mean in numbers is a choice of ours. ValueError for anything else.

    >>> [concentration(word) for word in ("very", "fairly", "barely")]
    [399.0, 63.0, 15.0]
    """
    spread = SPREAD_OF_A_FIFTH.get(sure) if isinstance(sure, str) else sure
    if spread is None or not 0.0 < spread <= 1.0:
        words = ", ".join(SPREAD_OF_A_FIFTH)
        raise ValueError(f"sureness is {sure!r}; one of {words}, or a relative spread above 0 and at most 1")
    return round(4.0 / spread**2 - 1.0, 9)


@dataclass(frozen=True, slots=True)
class HeldWeights:
    """The stated shares themselves, in every draw: for what the figures alone may change."""

    shares: tuple[float, ...]

    def __post_init__(self) -> None:
        _refuse_unfit(self.shares)

    @property
    def criteria(self) -> int:
        """How many criteria share the weight."""
        return len(self.shares)

    def draw(self, generator: np.random.Generator, draws: int) -> FloatArray:  # noqa: ARG002  # the law has no chance in it
        """Give the shares so many times, shape (criteria, draws)."""
        held = np.array(self.shares)
        return np.repeat((held / held.sum())[:, None], draws, axis=1)


@dataclass(frozen=True, slots=True)
class AroundShares:
    """Weights around stated shares: the Dirichlet law of mean `shares`, tighter by `concentration`.

    A share of 0 stays 0. `shares` need not add up to 1. ValueError for a share below 0, NaN or infinite, for
    nothing but zeros, and for a concentration that is not above 0.
    """

    shares: tuple[float, ...]
    concentration: float

    def __post_init__(self) -> None:
        _refuse_unfit(self.shares)
        if not 0.0 < self.concentration < np.inf:
            raise ValueError(f"the concentration is {self.concentration}; a finite number above 0 is needed")

    @property
    def criteria(self) -> int:
        """How many criteria share the weight."""
        return len(self.shares)

    def draw(self, generator: np.random.Generator, draws: int) -> FloatArray:
        """Give so many weightings, shape (criteria, draws), as gamma draws over their sum."""
        total = float(np.sum(self.shares))
        weights = np.zeros((self.criteria, draws))
        for row, share in zip(weights, self.shares, strict=True):
            if share > 0.0:
                generator.standard_gamma(self.concentration * share / total, out=row)
        return _to_one(weights)


@dataclass(frozen=True, slots=True)
class AnyWeights:
    """All weightings alike: the uniform law on the simplex, for a buyer of whom nothing is known."""

    criteria: int

    def __post_init__(self) -> None:
        if self.criteria < 1:
            raise ValueError(f"weights over {self.criteria} criteria asked for; at least one is needed")

    def draw(self, generator: np.random.Generator, draws: int) -> FloatArray:
        """Give so many weightings, shape (criteria, draws), as exponential draws over their sum."""
        return _to_one(generator.standard_exponential((self.criteria, draws)))


@dataclass(frozen=True, slots=True)
class OrderedWeights:
    """All weightings that keep an order of importance alike: uniform on that part of the simplex.

    `places` holds the criteria, as columns 0 to m - 1, from most to least important; those in one group are
    said to matter equally: they share their places, any order within the group being as likely as any other.
    The mean weights are the rank-order centroids. ValueError unless each column stands exactly once.
    """

    places: tuple[tuple[int, ...], ...]

    def __post_init__(self) -> None:
        named = [column for group in self.places for column in group]
        if not named or sorted(named) != list(range(len(named))):
            raise ValueError(f"the places are {self.places}; each column from 0 up stands there exactly once")

    @property
    def criteria(self) -> int:
        """How many criteria share the weight."""
        return sum(map(len, self.places))

    def draw(self, generator: np.random.Generator, draws: int) -> FloatArray:
        """Give so many weightings, shape (criteria, draws).

        The k-th largest of m exponential draws is distributed as sum(E_i / i for i = k..m) of m fresh ones
        (Renyi 1953, On the theory of order statistics), so nothing need be sorted.
        """
        m = self.criteria
        spacings = generator.standard_exponential((m, draws))
        spacings /= np.arange(1.0, m + 1.0)[:, None]
        falling = _to_one(np.cumsum(spacings[::-1], axis=0)[::-1])
        weights = np.empty((m, draws))
        taken = 0
        for group in self.places:
            block = falling[taken : taken + len(group)]
            weights[list(group)] = generator.permuted(block, axis=0) if len(group) > 1 else block
            taken += len(group)
        return weights


def _to_one(weights: FloatArray) -> FloatArray:
    weights /= weights.sum(axis=0)
    return weights


def _refuse_unfit(shares: Sequence[float]) -> None:
    if not all(0.0 <= share < np.inf for share in shares) or not sum(shares) > 0.0:
        raise ValueError(
            f"the shares are {tuple(shares)}; each is a number, 0 or more, and at least one above 0"
        )
