"""Lighter or heavier, dearer or cheaper: the four quadrants in which a price per gram means four things."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Context, Decimal
from typing import Literal

Quadrant = Literal[
    "lighter and dearer",
    "lighter and not dearer",
    "heavier and cheaper",
    "heavier and not cheaper",
    "no reliable saving",
]
"""Where an offer lies, seen from the baseline; the last where the weighings cannot tell which is lighter."""

_DIVISION = Context(prec=28)  # not the thread's context: the same input must give the same digits


@dataclass(frozen=True, slots=True)
class Interval:
    """A figure as low, expected and high; low <= expected <= high."""

    low: float
    expected: float
    high: float

    @property
    def holds_zero(self) -> bool:
        """Whether zero lies in the interval, its ends included: then not even the sign is known."""
        return self.low <= 0 <= self.high


@dataclass(frozen=True, slots=True)
class Offer:
    """What a product costs (one currency for all that are compared) and weighs (one basis for all), in grams.

    The baseline's price is 0 where its pedals are owned already (what they cost is spent either way),
    else the price at which it would be bought.
    Raises ValueError for a price below zero or not finite, and unless 0 < low <= expected <= high.
    """

    product: str
    price: Decimal
    weight_g: float
    weight_low_g: float
    weight_high_g: float

    def __post_init__(self) -> None:
        if not (self.price.is_finite() and self.price >= 0):
            raise ValueError(f"{self.product} has the price {self.price}; a price is zero or more")
        weights = (self.weight_low_g, self.weight_g, self.weight_high_g)
        if not (all(map(math.isfinite, weights)) and 0 < weights[0] <= weights[1] <= weights[2]):
            raise ValueError(
                f"{self.product} weighs {weights} g (low, expected, high); "
                "these must be finite, more than zero and in rising order"
            )


@dataclass(frozen=True, slots=True)
class Comparison:
    """One offer against the baseline; at most one of the two prices per gram stands, and it is positive.

    `saving_g` is positive where the offer is lighter, `extra_cost` where it is dearer. `cost_per_gram` stands
    for `lighter and dearer` only, `saved_per_gram` (money saved for each gram added) for
    `heavier and cheaper` only; the ranges follow from the ends of the saving, cheapest gram first.
    """

    quadrant: Quadrant
    saving_g: Interval
    extra_cost: Decimal
    cost_per_gram: Decimal | None = None
    cost_per_gram_range: tuple[Decimal, Decimal] | None = None
    saved_per_gram: Decimal | None = None
    saved_per_gram_range: tuple[Decimal, Decimal] | None = None


def exact_g(weight_g: float) -> Decimal:
    """The weight as the decimal number it is written as, so that 310.4 - 298.3 is 12.1 and nothing else.

    >>> exact_g(310.4) - exact_g(298.3)
    Decimal('12.1')
    """
    return Decimal(repr(float(weight_g)))


def saving_g(reference: Offer, offer: Offer) -> Interval:
    """Grams saved by `offer` against `reference`: low is the lightest reference less the heaviest offer."""
    return Interval(
        low=float(exact_g(reference.weight_low_g) - exact_g(offer.weight_high_g)),
        expected=float(exact_g(reference.weight_g) - exact_g(offer.weight_g)),
        high=float(exact_g(reference.weight_high_g) - exact_g(offer.weight_low_g)),
    )


def per_gram(money: Decimal, grams: Decimal) -> Decimal:
    """Money for each gram, to 28 digits whatever the thread's decimal context says.

    >>> per_gram(Decimal(30), Decimal(8))
    Decimal('3.75')
    """
    return _DIVISION.divide(money, grams)


def compare(baseline: Offer, offer: Offer) -> Comparison:
    """In which quadrant the offer lies, seen from the baseline, and which price per gram has a meaning.

    A ratio of two differences hides its signs: 30 dearer for 10 g less and 30 cheaper for 10 g more are both
    "3 a gram", and 30 cheaper for 10 g less would be minus 3, as bad as it is good. So each quadrant has
    its own answer and two of them have none.

    >>> owned = Offer("owned", Decimal(0), 320.0, 318.0, 322.0)
    >>> found = compare(owned, Offer("light", Decimal(90), 290.0, 289.0, 291.0))
    >>> found.quadrant, found.cost_per_gram
    ('lighter and dearer', Decimal('3'))
    """
    saving = saving_g(baseline, offer)
    extra = offer.price - baseline.price
    if saving.holds_zero:
        return Comparison("no reliable saving", saving, extra)
    spans = tuple(abs(exact_g(grams)) for grams in (saving.low, saving.expected, saving.high))
    price = per_gram(abs(extra), spans[1])
    price_range = (per_gram(abs(extra), max(spans)), per_gram(abs(extra), min(spans)))
    if saving.expected > 0:
        if extra > 0:
            return Comparison("lighter and dearer", saving, extra, price, price_range)
        return Comparison("lighter and not dearer", saving, extra)
    if extra < 0:
        return Comparison(
            "heavier and cheaper", saving, extra, saved_per_gram=price, saved_per_gram_range=price_range
        )
    return Comparison("heavier and not cheaper", saving, extra)
