"""How far makers' claims stray from what is measured, and what an unchecked claim is therefore worth."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from spindlewise.decide.james_stein import LEAST_MEANS

LEAST_PAIRS = 8
"""Fewer claims with a measurement than this, all makers together, predict nothing."""

LEAST_MAKERS = LEAST_MEANS
"""With fewer makers, how they differ cannot be told from chance."""

Fallback: TypeAlias = Literal["too few makers", "no maker measured twice", "maker not in the record"]
"""Why a prediction rests on the pooled record and not on the maker's own."""


@dataclass(frozen=True, slots=True)
class ClaimPair:
    """One figure as its maker claims it and as it was measured, in the same unit, both above 0.

    `u_measured` is the relative standard uncertainty of the measurement, 0.001 for 0.1 %.
    """

    maker: str
    claimed: float
    measured: float
    u_measured: float = 0.0

    def __post_init__(self) -> None:
        if not (0.0 < self.claimed < math.inf and 0.0 < self.measured < math.inf):
            raise ValueError(f"claimed {self.claimed}, measured {self.measured}; both are above 0 and finite")
        if not 0.0 <= self.u_measured < 1.0:
            raise ValueError(f"a relative uncertainty of {self.u_measured}; it is 0 or more and below 1")

    @property
    def stray(self) -> float:
        """By what fraction of the claim the measured figure lies above it (below: negative)."""
        return self.measured / self.claimed - 1.0


@dataclass(frozen=True, slots=True)
class Prediction:
    """What a claim is worth, with its arithmetic: predicted = claimed * (1 + stray_pct / 100).

    `plus_minus` is twice the standard deviation of a further item of the maker, in the unit of the claim.
    `own_stray_pct` is the mean stray in the maker's own `maker_n` pairs (None without any),
    `pooled_stray_pct` that of the whole record of `pooled_n` pairs, and `own_weight`, 0 to 1, how much the
    maker's own counts: stray_pct = own_weight * own_stray_pct + (1 - own_weight) * pooled_stray_pct.
    """

    maker: str
    claimed: float
    predicted: float
    plus_minus: float
    stray_pct: float
    own_stray_pct: float | None
    pooled_stray_pct: float
    own_weight: float
    maker_n: int
    pooled_n: int
    fallback: Fallback | None


@dataclass(frozen=True, slots=True)
class NoPrediction:
    """Nothing is predicted: the record holds `pooled_n` pairs where `needed` are the least."""

    maker: str
    claimed: float
    pooled_n: int
    needed: int


@dataclass(frozen=True, slots=True)
class ClaimsRecord:
    """What a record of claims says of its makers; strays are fractions of the claim.

    `within` is the variance of a stray about its maker's mean, `between` that of makers' means about
    `mean_stray`; `between` is None for a pooled record, `within` then being the variance of all strays.
    """

    own: dict[str, tuple[int, float]]
    """Number of pairs and mean stray by maker, in alphabetical order."""
    pairs: int
    mean_stray: float
    mean_variance: float
    within: float
    between: float | None
    pooled_because: Fallback | None

    def predict(self, maker: str, claimed: float) -> Prediction | NoPrediction:
        """Give what a claim of the maker is worth, or that the record is too short to tell.

        With at least 4 makers, one of them measured twice, the maker's mean is drawn towards the mean of all
        by B = s^2 / (s^2 + between), s^2 being within / n of the maker (empirical Bayes, Efron and Morris
        1975, Data analysis using Stein's estimator), and the spread counts: a further item, what B leaves
        open of the maker's mean, the mean of all, and B itself being estimated (Morris 1983, Parametric
        empirical Bayes inference; from memory). ValueError for a claim that is not above 0.
        """
        if not 0.0 < claimed < math.inf:
            raise ValueError(f"the claim is {claimed}; a finite figure above 0 is needed")
        if self.pairs < LEAST_PAIRS:
            return NoPrediction(maker, claimed, self.pairs, LEAST_PAIRS)
        n, own = self.own.get(maker, (0, self.mean_stray))
        towards_all, variance, fallback = 1.0, self.within + self.mean_variance, self.pooled_because
        if self.between is not None and not n:
            variance, fallback = variance + self.between, "maker not in the record"
        elif self.between is not None:
            towards_all, mean_variance = self._shrinkage(n, own, self.between)
            variance = self.within + mean_variance
        stray = towards_all * self.mean_stray + (1.0 - towards_all) * own
        return Prediction(
            maker,
            claimed,
            predicted=claimed * (1.0 + stray),
            plus_minus=2.0 * claimed * math.sqrt(variance),
            stray_pct=100.0 * stray,
            own_stray_pct=100.0 * own if n else None,
            pooled_stray_pct=100.0 * self.mean_stray,
            own_weight=1.0 - towards_all,
            maker_n=n,
            pooled_n=self.pairs,
            fallback=fallback,
        )

    def _shrinkage(self, n: int, own: float, between: float) -> tuple[float, float]:
        """Give B and the variance of the maker's mean for a maker of n pairs."""
        s2 = self.within / n
        # all strays alike to the last digit: the maker's own mean is as good as any
        b = s2 / (s2 + between) if s2 > 0.0 else 0.0
        of_b = 2.0 / (len(self.own) - 3) * (b * (own - self.mean_stray)) ** 2
        return b, (1.0 - b) * s2 + b * b * self.mean_variance + of_b


def claims_record(pairs: Iterable[ClaimPair]) -> ClaimsRecord:
    """Give what the record says: of each maker, of all makers, and how widely claims stray.

    The variances are those of the one-way random model, found by moments: within makers from the pooled
    squares, between makers from the squares of their means, not below 0 (Searle, Casella and McCulloch 1992,
    Variance components). The scatter within makers is never taken to be less than the measurements' own
    uncertainty. With fewer than 4 makers, or none of them measured twice, the record is pooled: all strays
    are taken as one sample. The result does not depend on the order of the pairs.
    """
    strays: dict[str, list[float]] = {}
    noise = []
    for pair in pairs:
        strays.setdefault(pair.maker, []).append(pair.stray)
        noise.append(pair.u_measured**2)
    own = {maker: (len(strays[maker]), _mean(strays[maker])) for maker in sorted(strays)}
    everything = [stray for maker in own for stray in strays[maker]]
    floor = _mean(noise) if noise else 0.0
    n, k = len(everything), len(own)
    if k < LEAST_MAKERS or n == k:
        because: Fallback = "too few makers" if k < LEAST_MAKERS else "no maker measured twice"
        mean = _mean(everything) if n else 0.0
        variance = max(_squares(everything, mean) / (n - 1) if n > 1 else 0.0, floor)
        return ClaimsRecord(own, n, mean, variance / max(n, 1), variance, None, because)
    within = max(math.fsum(_squares(strays[maker], own[maker][1]) for maker in own) / (n - k), floor)
    between = _between(list(own.values()), within)
    # with no variance at all the makers' means are one and the same, and any weights will do
    precisions = [
        1.0 / (between + within / size) if between + within > 0.0 else 1.0 for size, _ in own.values()
    ]
    total = math.fsum(precisions)
    mean = math.fsum(p * own_mean for p, (_, own_mean) in zip(precisions, own.values(), strict=True)) / total
    mean_variance = 1.0 / total if between + within > 0.0 else 0.0
    return ClaimsRecord(own, n, mean, mean_variance, within, between, None)


def _between(own: Sequence[tuple[int, float]], within: float) -> float:
    n, k = sum(size for size, _ in own), len(own)
    mean = math.fsum(size * stray for size, stray in own) / n
    of_means = math.fsum(size * (stray - mean) ** 2 for size, stray in own) / (k - 1)
    typical_size = (n - sum(size * size for size, _ in own) / n) / (k - 1)
    return max(0.0, (of_means - within) / typical_size)


def _mean(values: Sequence[float]) -> float:
    return math.fsum(values) / len(values)


def _squares(values: Sequence[float], mean: float) -> float:
    return math.fsum((value - mean) ** 2 for value in values)
