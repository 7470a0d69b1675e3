"""What other methods of the trade say of the same figures, and why, where their first differs from ours."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np
import numpy.typing as npt

from spindlewise.decide.other_methods import (
    Direction,
    checked,
    min_max_scaled,
    min_max_sum,
    topsis,
    vector_scaled,
)
from spindlewise.decide.rank_agreement import kendall_tau_b
from spindlewise.decide.score import held_flags, ranking_order, settled
from spindlewise.decide.table import FloatArray, IntArray, MeritTable

Method: TypeAlias = Literal["TOPSIS", "min-max weighted sum"]

_Rating: TypeAlias = Callable[[FloatArray, FloatArray, Sequence[Direction]], FloatArray]


@dataclass(frozen=True, slots=True)
class Stretch:
    """How much weight the method in truth gives a criterion, on which its first is better than ours.

    `share` is what the buyer gave; `effective_share` what a unit of merit counts after the method has scaled
    the figures by the set of candidates; `ratio` the second over the first. The last two are None where all
    candidates have the same merit and only the method tells them apart.
    """

    criterion: str
    share: float
    effective_share: float | None
    ratio: float | None


@dataclass(frozen=True, slots=True)
class Reason:
    """Why the method puts another product first: it scales by the set of candidates, ours by fixed curves.

    `reversed_by`: the products, neither our first nor the method's, without any one of which the method would
    agree with us on the first (rank reversal). `stretched`: the criteria that the method counts for more than
    the buyer said and on which its first is better than ours, the one that gains most weight first.
    """

    reversed_by: tuple[str, ...]
    stretched: tuple[Stretch, ...]


@dataclass(frozen=True, slots=True, eq=False)
class SecondOpinion:
    """One method's values (n,), its first, and its likeness to our order as Kendall's tau-b.

    `tau_b` is None where all of one side are tied. `reason` is None where both have the same first.
    """

    method: Method
    values: FloatArray
    first: str
    tau_b: float | None
    reason: Reason | None


def second_opinions(
    table: MeritTable,
    shares: FloatArray,
    values: npt.ArrayLike,
    directions: Sequence[Direction],
    held_back: npt.ArrayLike | None = None,
) -> tuple[SecondOpinion, SecondOpinion]:
    """Give what TOPSIS and the min-max weighted sum say, beside our ranking of the same products.

    `values` (n, m) are the figures themselves, the expected ones where unknown, and `directions` (m,) which
    of each is better. Ties go to the product id, and held-back products stand last, as in our ranking.
    ValueError for shapes that do not fit, a figure that is not finite, and a table without products.
    """
    figures, weights = checked(values, shares, directions)
    if figures.shape != table.expected.shape or not len(figures):
        raise ValueError(
            f"figures of shape {figures.shape} for merits of shape {table.expected.shape}; the same shape and"
            " at least one product are needed"
        )
    held = held_flags(held_back, len(figures))
    ours = settled(np.einsum("ij,j->i", table.expected, weights * 100.0))
    our_first = int(ranking_order(table.products, ours, held)[0])
    everybody = np.arange(len(figures))

    def opinion(method: Method, rate: _Rating, scaled: FloatArray) -> SecondOpinion:
        def first_of(rows: IntArray) -> int:
            rated = settled(rate(figures[rows], weights, directions))
            return int(rows[ranking_order([table.products[row] for row in rows], rated, held[rows])[0]])

        rated = rate(figures, weights, directions)
        first, reason = first_of(everybody), None
        if first != our_first:
            others = [row for row in everybody if row not in (first, our_first)]
            reversed_by = [row for row in others if first_of(np.delete(everybody, row)) == our_first]
            stretched = _stretched(table, weights, scaled, first, our_first)
            reason = Reason(tuple(sorted(table.products[row] for row in reversed_by)), stretched)
        alike = kendall_tau_b(ours, settled(rated))
        return SecondOpinion(method, rated, table.products[first], alike, reason)

    return (
        opinion("TOPSIS", topsis, vector_scaled(figures)),
        opinion("min-max weighted sum", min_max_sum, min_max_scaled(figures)),
    )


def _stretched(
    table: MeritTable, weights: FloatArray, scaled: FloatArray, first: int, our_first: int
) -> tuple[Stretch, ...]:
    merits = table.expected
    merit_range, scaled_range = np.ptp(merits, axis=0), np.ptp(scaled, axis=0)
    told_apart = merit_range > 0.0
    per_merit = np.zeros(len(weights))
    np.divide(weights * scaled_range, merit_range, out=per_merit, where=told_apart)
    effective = per_merit / (per_merit.sum() or 1.0)
    found = []
    for k, criterion in enumerate(table.criteria):
        share = float(weights[k])
        if not told_apart[k] and share > 0.0 and scaled_range[k] > 0.0:
            found.append((-share, Stretch(criterion, share, None, None)))
        elif merits[first, k] > merits[our_first, k] and effective[k] > share > 0.0:
            gain = float(effective[k]) - share
            found.append((-gain, Stretch(criterion, share, float(effective[k]), float(effective[k]) / share)))
    return tuple(stretch for _, stretch in sorted(found, key=lambda each: (each[0], each[1].criterion)))
