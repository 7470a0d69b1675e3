"""At which price a product scores as much as a rival, to the currency's minor unit."""

from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from enum import StrEnum

import numpy as np
import numpy.typing as npt

from spindlewise.decide.curves import Curve
from spindlewise.decide.score import held_flags, score, settled
from spindlewise.decide.table import BoolArray, FloatArray, MeritTable

HIGHEST_MINOR_UNITS = 2**52
"""Prices beyond this could not be told apart to the minor unit, and no product costs as much."""


class Outcome(StrEnum):
    """What the question for a break-even price comes to."""

    AT_PRICE = "at this price or less"
    ANY_PRICE = "at any price"
    NO_PRICE = "at no price, not even free"
    HELD_BACK = "at no price while it is held back"


@dataclass(frozen=True, slots=True)
class BreakEven:
    """The highest price at which a product scores no less than its rival.

    `minor_units` and `amount` (in the buyer's currency, with all its decimals) are given for AT_PRICE only.
    """

    outcome: Outcome
    minor_units: int | None = None
    amount: Decimal | None = None


@dataclass(frozen=True, slots=True)
class PriceTerm:
    """One criterion that a price bears on: its curve, its share of all weight, and what adds to the price.

    `offset`, one for each product or one for all, is in the curve's currency: 0 for the price itself, the
    other costs of ownership for a criterion that scores price plus those. Raises ValueError for a curve that
    rises anywhere, since a dearer product would then be better, and for a share outside 0 to 1.
    """

    curve: Curve
    share: float
    offset: FloatArray | float = 0.0

    def __post_init__(self) -> None:
        if np.any(np.diff(self.curve.merit) > 0):
            raise ValueError(
                f"the price curve's merits {self.curve.merit} rise somewhere; they may only fall"
            )
        if not 0.0 <= self.share <= 1.0:
            raise ValueError(f"the share of price is {self.share}; it lies in 0 to 1")
        if not np.all(np.isfinite(self.offset)):
            raise ValueError("what is added to the price is not a finite number for every product")


@dataclass(frozen=True, slots=True)
class PriceScale:
    """How a price in the buyer's currency becomes points: terms, rate and the currency's decimals.

    `rate` is what one unit of the buyer's currency is in the curves' currency; `exponent` the number of
    decimals of the buyer's currency (ISO 4217: 2 for most, 0 or 3 for some).

    >>> scale = PriceScale((PriceTerm(Curve((400.0, 1200.0), (1.0, 0.0)), 0.5),), Decimal("1"), 2)
    >>> scale.points(np.array([60000])).tolist()
    [37.5]
    """

    terms: tuple[PriceTerm, ...]
    rate: Decimal
    exponent: int

    def __post_init__(self) -> None:
        if not self.rate.is_finite() or self.rate <= 0:
            raise ValueError(f"the exchange rate is {self.rate}; it is above 0")
        if not 0 <= self.exponent <= 4:
            raise ValueError(f"{self.exponent} decimals of a currency; 0 to 4 are in use")

    @property
    def per_minor_unit(self) -> Decimal:
        """What one minor unit of the buyer's currency is in the curves' currency."""
        return self.rate.scaleb(-self.exponent)

    def points(self, minor_units: npt.ArrayLike) -> FloatArray:
        """Give the points that prices of so many minor units earn, over all terms, shape as given."""
        price = np.asarray(minor_units, dtype=np.float64) * float(self.per_minor_unit)
        earned = np.zeros(price.shape)
        for term in self.terms:
            earned = earned + 100.0 * term.share * term.curve.at(price + term.offset)
        return earned

    def flat_from(self) -> int:
        """Give a price in minor units from which on every curve is flat for every product."""
        ends = [term.curve.x[-1] - float(np.min(term.offset)) for term in self.terms if np.size(term.offset)]
        reach = (Decimal(max([0.0, *ends])) / self.per_minor_unit).to_integral_value(ROUND_CEILING)
        if reach >= HIGHEST_MINOR_UNITS:
            raise ValueError(
                f"the price curve reaches to {reach} minor units; no more than 2^52 can be told apart"
            )
        return int(reach) + 1


def score_without(table: MeritTable, weights: FloatArray, criteria: tuple[str, ...]) -> FloatArray:
    """Give each product's expected score less its points on `criteria`, shape (n,), not settled."""
    strangers = sorted(set(criteria) - set(table.criteria))
    if strangers:
        raise ValueError(f"no criterion {', '.join(strangers)}; there are {', '.join(table.criteria)}")
    score(table, weights)  # refuses weights that do not fit, in the words of the score
    kept = np.array([name not in criteria for name in table.criteria])
    points = np.where(kept, 100.0 * weights / np.sum(weights), 0.0)
    return np.asarray(np.einsum("ij,j->i", table.expected, points), dtype=np.float64)


def break_even(
    scale: PriceScale,
    without: FloatArray,
    rival_scores: npt.ArrayLike,
    held_back: npt.ArrayLike | None = None,
    rival_held_back: npt.ArrayLike | None = None,
) -> tuple[BreakEven, ...]:
    """Give for each product the highest price at which its expected score is no less than its rival's.

    `without` has shape (n,): the products' scores without the points for price (`score_without`);
    `rival_scores` the score of each product's rival (one for all, or one a product). A tie counts: at the
    price given the product is first or level on score, and where scores are equal the order of ids decides.

    Scores fall as prices rise, so the last minor unit is found by halving between free and where all curves
    are flat, with the very arithmetic of `score`: exact also where a curve has flats, kinks or several terms.
    A product held back never passes one that is not; one that is not passes a rival held back at any price.
    """
    n = len(without)
    target = np.broadcast_to(np.asarray(rival_scores, dtype=np.float64), (n,))
    held, rival_held = held_flags(held_back, n), held_flags(rival_held_back, n)

    def reaches(minor_units: npt.ArrayLike) -> BoolArray:
        return np.asarray(settled(without + scale.points(minor_units)) >= settled(target))

    lowest, highest = np.zeros(n, dtype=np.int64), np.full(n, scale.flat_from(), dtype=np.int64)
    never, ever = ~reaches(lowest), reaches(highest)
    while np.any(highest - lowest > 1):
        middle = (lowest + highest) // 2
        enough = reaches(middle)
        lowest, highest = np.where(enough, middle, lowest), np.where(enough, highest, middle)

    found = []
    for row in range(n):
        if held[row] and not rival_held[row]:
            found.append(BreakEven(Outcome.HELD_BACK))
        elif ever[row] or (rival_held[row] and not held[row]):
            found.append(BreakEven(Outcome.ANY_PRICE))
        elif never[row]:
            found.append(BreakEven(Outcome.NO_PRICE))
        else:
            units = int(lowest[row])
            found.append(BreakEven(Outcome.AT_PRICE, units, Decimal(units).scaleb(-scale.exponent)))
    return tuple(found)


def headroom(
    scale: PriceScale,
    without: FloatArray,
    expected: FloatArray,
    first: int,
    held_back: npt.ArrayLike | None = None,
) -> BreakEven:
    """Give how dear row `first` may become before another product scores more, the others' prices unchanged.

    `expected` has shape (n,): the scores as they stand. With no other product to lose to: at any price.
    """
    n = len(expected)
    held = held_flags(held_back, n)
    rivals = (held == held[first]) & (np.arange(n) != first)
    if held[first] and not held.all():
        return BreakEven(Outcome.HELD_BACK)
    if not rivals.any():
        return BreakEven(Outcome.ANY_PRICE)
    best = float(np.max(expected[rivals]))
    return break_even(_of_row(scale, first, n), without[first : first + 1], best)[0]


def flat_beyond(scale: PriceScale, row: int, products: int) -> Decimal:
    """Give the price from which on row `row` of so many products loses no more points by being dearer.

    In the buyer's currency; 0 where the curves are flat from the start, as with no terms at all.
    """
    return Decimal(_of_row(scale, row, products).flat_from() - 1).scaleb(-scale.exponent)


def _of_row(scale: PriceScale, row: int, n: int) -> PriceScale:
    terms = tuple(
        PriceTerm(term.curve, term.share, float(np.broadcast_to(term.offset, (n,))[row]))
        for term in scale.terms
    )
    return PriceScale(terms, scale.rate, scale.exponent)
