"""What a buyer should know of the question itself: weights and needs that do not do what they seem to."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import combinations
from typing import Literal

import numpy as np
import numpy.typing as npt

from spindlewise.decide.fixed_scale import AS_IT_IS, FixedScale
from spindlewise.decide.rank_agreement import pearson, spearman
from spindlewise.decide.table import BoolArray, FloatArray, MeritTable

HIGH_CORRELATION = 0.9
"""From here on two criteria tell nearly the same story of the candidates."""

LEAST_CANDIDATES = 5
"""Among fewer candidates any two criteria may run alike by chance."""

ALIKE = 0.01
"""Merits that differ by no more than this are alike."""


@dataclass(frozen=True, slots=True)
class CountedTwice:
    """Two weighed criteria that count the same thing, or against each other.

    `kin`: the caller declared them to be of one kind. `move together` and `pull apart`: both the correlation
    of merits (Pearson) and that of ranks (Spearman) are high among the candidates, above or below 0.
    The correlations are None where a criterion has the same merit for all.
    """

    kind: Literal["kin", "move together", "pull apart"]
    first: str
    second: str
    pearson: float | None
    spearman: float | None


@dataclass(frozen=True, slots=True)
class AllAlike:
    """A weighed criterion on which the expected merits of all candidates lie close: they span `spread`."""

    kind: Literal["all alike"]
    criterion: str
    share: float
    spread: float


@dataclass(frozen=True, slots=True)
class WithoutEffect:
    """A weighed criterion without which the first, or the whole order, stays the same."""

    kind: Literal["order stays", "first stays"]
    criterion: str
    share: float


@dataclass(frozen=True, slots=True)
class NobodyLeft:
    """No product passes all needs.

    `relief`: each need that brings products back if it alone is dropped, with these products, the one that
    brings back most first. `nearest`: the products that fail fewest needs, with the needs they fail.
    """

    kind: Literal["nobody left"]
    relief: tuple[tuple[str, tuple[str, ...]], ...]
    nearest: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class MissedByLittle:
    """A product that costs `over` more than the budget, `over_pct` per cent of it."""

    kind: Literal["missed by little"]
    product: str
    price: Decimal
    over: Decimal
    over_pct: Decimal


def counted_twice(
    table: MeritTable,
    shares: FloatArray,
    kin: Sequence[Sequence[str]] = (),
    high: float = HIGH_CORRELATION,
) -> tuple[CountedTwice, ...]:
    """Give the pairs of weighed criteria that are declared kin, or whose merits are highly correlated.

    `kin` holds groups of criteria of one kind; a group may name criteria that the table has not. Correlation
    is looked at with 5 candidates or more. Pairs come in the order of the criteria.
    """
    groups = [set(group) for group in kin]
    found = []
    for i, k in combinations(np.flatnonzero(np.asarray(shares) > 0.0).tolist(), 2):
        first, second = table.criteria[i], table.criteria[k]
        merits = table.expected[:, i], table.expected[:, k]
        by_merit, by_rank = pearson(*merits), spearman(*merits)
        if any(first in group and second in group for group in groups):
            found.append(CountedTwice("kin", first, second, by_merit, by_rank))
        elif len(table.products) >= LEAST_CANDIDATES and by_merit is not None and by_rank is not None:
            if min(by_merit, by_rank) >= high:
                found.append(CountedTwice("move together", first, second, by_merit, by_rank))
            elif max(by_merit, by_rank) <= -high:
                found.append(CountedTwice("pull apart", first, second, by_merit, by_rank))
    return tuple(found)


def all_alike(table: MeritTable, shares: FloatArray, within: float = ALIKE) -> tuple[AllAlike, ...]:
    """Give the weighed criteria that tell no candidates apart, in the order of the criteria.

    A table of fewer than two products gives none: there is nobody to be told apart.
    """
    if len(table.products) < 2:
        return ()
    spread = np.ptp(table.expected, axis=0)
    return tuple(
        AllAlike("all alike", table.criteria[k], float(shares[k]), float(spread[k]))
        for k in np.flatnonzero((np.asarray(shares) > 0.0) & (spread <= within))
    )


def without_effect(
    table: MeritTable, shares: FloatArray, held_back: npt.ArrayLike | None = None
) -> tuple[WithoutEffect, ...]:
    """Give the weighed criteria that decide nothing: left out, they change no place, or not the first.

    A criterion that bears all the weight is never among them; nor is any where there are fewer than two
    products.
    """
    weights = np.asarray(shares, dtype=np.float64)
    weighed = np.flatnonzero(weights > 0.0)
    if len(table.products) < 2 or len(weighed) < 2:
        return ()
    scale = FixedScale(table.products, (AS_IT_IS,) * len(weights))
    order = scale.order(table.expected, weights, held_back)
    found = []
    for k in weighed:
        others = weights.copy()
        others[k] = 0.0
        without = scale.order(table.expected, others, held_back)
        if np.array_equal(without, order):
            found.append(WithoutEffect("order stays", table.criteria[k], float(weights[k])))
        elif without[0] == order[0]:
            found.append(WithoutEffect("first stays", table.criteria[k], float(weights[k])))
    return tuple(found)


def nobody_left(products: Sequence[str], needs: Sequence[str], passes: BoolArray) -> NobodyLeft | None:
    """Give which single need, dropped, would bring products back, if no product passes all; else None.

    `passes` has shape (products, needs). None too where there are no products. ValueError for another shape.
    """
    met = np.asarray(passes, dtype=np.bool_)
    if met.shape != (len(products), len(needs)):
        raise ValueError(
            f"passes have shape {met.shape}; ({len(products)}, {len(needs)}), products by needs, is needed"
        )
    failed = np.count_nonzero(~met, axis=1)
    if not len(products) or not failed.all():
        return None
    relief = []
    for k, need in enumerate(needs):
        back = tuple(sorted(products[row] for row in np.flatnonzero((failed == 1) & ~met[:, k]).tolist()))
        if back:
            relief.append((need, back))
    relief.sort(key=lambda each: (-len(each[1]), each[0]))
    nearest = sorted(
        (products[row], tuple(needs[k] for k in np.flatnonzero(~met[row]).tolist()))
        for row in np.flatnonzero(failed == failed.min()).tolist()
    )
    return NobodyLeft("nobody left", tuple(relief), tuple(nearest))


def missed_by_little(
    products: Sequence[str],
    prices: Sequence[Decimal | None],
    budget: Decimal,
    within_pct: Decimal = Decimal(5),
) -> tuple[MissedByLittle, ...]:
    """Give the products dearer than the budget by no more than `within_pct` per cent of it, cheapest first.

    Prices are in the currency of the budget; None is a product without a price. Equal prices go by id.
    ValueError for lists of different lengths or a budget that is not above 0.
    """
    if len(products) != len(prices) or not budget > 0:
        raise ValueError(
            f"{len(products)} products, {len(prices)} prices, a budget of {budget}; one price a product and"
            " a budget above 0 are needed"
        )
    found = [
        MissedByLittle("missed by little", product, price, price - budget, 100 * (price - budget) / budget)
        for product, price in zip(products, prices, strict=True)
        if price is not None and budget < price <= budget + budget * within_pct / 100
    ]
    return tuple(sorted(found, key=lambda each: (each.price, each.product)))
