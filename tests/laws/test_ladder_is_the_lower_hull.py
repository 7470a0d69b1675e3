"""Laws of the ladder: it is the lower convex hull, and what does not touch the hull does not move it."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.cost.ladder import LadderStep, ladder
from spindlewise.cost.quadrants import Offer

BASELINE = Offer("pedal 00", Decimal(40), 320.0, 320.0, 320.0)
points = st.tuples(st.integers(0, 80), st.integers(290, 330))
markets = st.lists(points, max_size=9)


def offers_of(market: list[tuple[int, int]], shift_g: int = 0) -> list[Offer]:
    return [
        Offer(f"pedal {number:02}", Decimal(price), *(3 * [float(grams + shift_g)]))
        for number, (price, grams) in enumerate(market, start=1)
    ]


def on_ladder(steps: tuple[LadderStep, ...]) -> list[LadderStep]:
    foot = [] if steps[0].dominated_by else [steps[0]]
    return foot + [s for s in steps if s.status in ("rung", "lighter and not dearer")]


def naive_hull(market: list[tuple[int, int]]) -> set[tuple[int, int]]:
    """Every point that no other point, and no mixture of two others, beats: tried pair by pair."""
    field = {(40, 320)} | {(price, grams) for price, grams in market if grams < 320}
    kept = {p for p in field if not any(q != p and q[0] <= p[0] and q[1] <= p[1] for q in field)}

    def beaten_by_a_mixture(p: tuple[int, int]) -> bool:
        for left in kept:
            for right in kept:
                if left[0] < p[0] < right[0]:
                    share = Fraction(p[0] - left[0], right[0] - left[0])
                    if left[1] + share * (right[1] - left[1]) < p[1]:
                        return True
        return False

    return {p for p in kept if not beaten_by_a_mixture(p)}


@settings(deadline=None)
@given(markets)
def test_the_ladder_is_the_lower_convex_hull(market: list[tuple[int, int]]) -> None:
    stands = on_ladder(ladder(BASELINE, offers_of(market)))
    spots = [(40 + int(s.extra_cost), 320 - int(s.saving_g.expected)) for s in stands]
    assert set(spots) == naive_hull(market)
    assert len(set(spots)) == len(spots)


@settings(deadline=None)
@given(markets)
def test_step_prices_are_positive_and_never_fall(market: list[tuple[int, int]]) -> None:
    stands = on_ladder(ladder(BASELINE, offers_of(market)))
    prices = [s.step_cost_per_gram for s in stands[1:] if s.step_cost_per_gram is not None]
    assert len(prices) == max(0, len(stands) - 1)
    assert prices == sorted(prices)
    assert all(price > 0 for price in prices)


@settings(deadline=None)
@given(markets)
def test_grams_and_money_of_the_steps_add_up(market: list[tuple[int, int]]) -> None:
    stands = on_ladder(ladder(BASELINE, offers_of(market)))
    grams = sum(s.step_saving_g.expected for s in stands[1:] if s.step_saving_g is not None)
    assert grams == stands[-1].saving_g.expected - stands[0].saving_g.expected


@settings(deadline=None)
@given(markets, points)
def test_a_dominated_product_more_changes_no_step(
    market: list[tuple[int, int]], more: tuple[int, int]
) -> None:
    before = ladder(BASELINE, offers_of(market))
    after = ladder(BASELINE, offers_of([*market, more]))
    newcomer = next(s for s in after if s.product == f"pedal {len(market) + 1:02}")
    if newcomer.status == "dominated":
        assert on_ladder(after) == on_ladder(before)


@settings(deadline=None)
@given(markets, st.integers(-100, 400))
def test_weighing_everything_with_the_same_error_changes_no_price(
    market: list[tuple[int, int]], shift: int
) -> None:
    shifted = Offer("pedal 00", Decimal(40), *(3 * [float(320 + shift)]))
    assert ladder(shifted, offers_of(market, shift)) == ladder(BASELINE, offers_of(market))


@settings(deadline=None)
@given(markets)
def test_no_price_per_gram_is_negative_infinite_or_not_a_number(market: list[tuple[int, int]]) -> None:
    for step in ladder(BASELINE, offers_of(market)):
        for price in (step.cost_per_gram, step.saved_per_gram, step.step_cost_per_gram):
            assert price is None or (price.is_finite() and price > 0)
        assert step.cost_per_gram is None or step.saved_per_gram is None
