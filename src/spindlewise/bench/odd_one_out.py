"""Which of several meters is the odd one out, if any can be told apart."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from spindlewise.bench.estimate import Estimate, FloatArray, t_quantile


@dataclass(frozen=True, slots=True)
class Apart:
    """Two meters, first minus second with its interval, and whether that tells them apart."""

    first: str
    second: str
    difference: Estimate

    @property
    def told_apart(self) -> bool:
        """Whether the interval of the difference leaves out zero; else they can't be told apart."""
        return not self.difference.holds(0.0)


@dataclass(frozen=True, slots=True)
class OddOneOut:
    """The odd one out, None where there is none, and every pair behind that."""

    odd: str | None
    pairs: tuple[Apart, ...]

    @property
    def any_told_apart(self) -> bool:
        """Whether any two can be told apart at all."""
        return any(pair.told_apart for pair in self.pairs)


def interval_of_draws(
    value: float, draws: FloatArray, blocks: int, level: float, widening: float = 1.0
) -> Estimate:
    """Give the value with the percentile interval of its bootstrap draws, shape (r,), made a little wider.

    Draws from b blocks spread less than the truth does, by sqrt((b - 1) / b) for a mean, and as the normal
    where Student's t belongs: the percentiles are moved out by both (expanded percentile interval, Hesterberg
    2015, Am Stat 69:371), with b - 2 for b - 1 as suits a slope, and by the `widening` of the blocks.
    """
    from scipy.special import ndtr

    reach = widening * math.sqrt(blocks / (blocks - 2.0)) * t_quantile(level, blocks - 2.0)
    low, high = np.quantile(draws, (float(ndtr(-reach)), float(ndtr(reach))))
    return Estimate(value, float(low), float(high))


def odd_one_out(
    names: Sequence[str],
    values: FloatArray,
    draws: FloatArray,
    interval: Callable[[float, FloatArray], Estimate],
) -> OddOneOut:
    """Name the odd one out of k figures, values of shape (k,), bootstrap draws of shape (r, k).

    `interval` gives the interval of a figure from the figure and its draws, shape (r,).

    Two meters are told apart where the interval of their difference leaves out zero: that is sharper than
    asking whether their intervals overlap, since what moves both together cancels. The odd one is told apart
    from all others, and either no two of the others are told apart, or it lies farther from its nearest
    neighbour than the others spread, and the interval of that comparison leaves out zero too.
    Raises ValueError where names, values and draws do not match, or for fewer than three.

    >>> import numpy as np
    >>> noise = np.random.default_rng(0).standard_normal((2000, 3))
    >>> figures = np.array([0.0, 0.0, 9.0])
    >>> def interval(value, draws):
    ...     return interval_of_draws(value, draws, 60, 0.95)
    >>> odd_one_out("ABC", figures, figures + noise, interval).odd
    'C'
    """
    k = len(names)
    if k < 3 or values.shape != (k,) or draws.ndim != 2 or draws.shape[1] != k:
        raise ValueError(
            f"{k} names, values of shape {values.shape}, draws of shape {draws.shape}; one column a meter,"
            " and at least three meters"
        )
    pairs = {
        (i, j): Apart(
            names[i],
            names[j],
            interval(float(values[i] - values[j]), draws[:, i] - draws[:, j]),
        )
        for i, j in combinations(range(k), 2)
    }
    odd = None
    order = np.argsort(values, kind="stable")
    for end in (int(order[0]), int(order[-1])):
        others = [i for i in range(k) if i != end]
        from_all = all(pairs[min(end, i), max(end, i)].told_apart for i in others)
        if from_all and _stands_off(end, others, order, values, draws, interval, pairs):
            odd = names[end]
    return OddOneOut(odd, tuple(pairs.values()))


def _stands_off(
    end: int,
    others: list[int],
    order: np.ndarray,
    values: FloatArray,
    draws: FloatArray,
    interval: Callable[[float, FloatArray], Estimate],
    pairs: dict[tuple[int, int], Apart],
) -> bool:
    if not any(pairs[i, j].told_apart for i, j in combinations(others, 2)):
        return True
    low_end = end == int(order[0])
    nearest, farthest = (int(order[1]), int(order[-1])) if low_end else (int(order[-2]), int(order[0]))
    sign = 1.0 if low_end else -1.0

    def lead(of: FloatArray) -> FloatArray:
        gap = sign * (of[..., nearest] - of[..., end])
        return np.asarray(gap - sign * (of[..., farthest] - of[..., nearest]))

    return interval(float(lead(values)), lead(draws)).low > 0.0
