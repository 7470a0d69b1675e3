"""Weights from an order of importance alone."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import chain
from typing import TypeAlias

Place: TypeAlias = str | Sequence[str]
"""One criterion, or several that matter equally and share the places they take."""


def order_weights(order: Sequence[Place]) -> dict[str, float]:
    """Give the rank-order-centroid weight of each criterion, from an order of importance, the first most.

    The weight of place k of n is (1/n) * sum(1/i for i = k..n), the mean of all weights in this order
    (Barron and Barrett 1996, Decision quality using ranked attribute weights). Criteria given together matter
    equally: each gets the average of the weights of the places they take. The weights add up to 1.

    Raises ValueError, naming all of them, for criteria that stand more than once, and for an empty order or
    an empty group.

    >>> order_weights(["price", "weight"])
    {'price': 0.75, 'weight': 0.25}
    >>> order_weights(["price", ("weight", "stack")])["stack"] == (5 / 18 + 1 / 9) / 2
    True
    """
    groups = [(place,) if isinstance(place, str) else tuple(place) for place in order]
    names = list(chain.from_iterable(groups))
    _refuse(groups, names)
    places = centroids(len(names))
    weights: dict[str, float] = {}
    taken = 0
    for group in groups:
        share = sum(places[taken : taken + len(group)], Fraction(0)) / len(group)
        weights.update(dict.fromkeys(group, float(share)))
        taken += len(group)
    return weights


def centroids(n: int) -> list[Fraction]:
    """Give the rank-order-centroid weights of n places, exactly; ValueError unless n is 1 or more.

    >>> [str(weight) for weight in centroids(3)]
    ['11/18', '5/18', '1/9']
    """
    if n < 1:
        raise ValueError(f"weights asked for {n} places; an order has at least one")
    weights = [Fraction(1, n * n)]
    for i in range(n - 1, 0, -1):
        weights.append(weights[-1] + Fraction(1, n * i))
    return weights[::-1]


def _refuse(groups: Sequence[Sequence[str]], names: Sequence[str]) -> None:
    faults = []
    if not groups:
        faults.append("the order of importance is empty; name at least one criterion")
    if not all(groups):
        faults.append("a group in the order of importance is empty; leave it out")
    twice = sorted({name for name in names if names.count(name) > 1})
    if twice:
        faults.append(f"each criterion stands once in the order; more than once: {', '.join(twice)}")
    if faults:
        raise ValueError("; ".join(faults))
