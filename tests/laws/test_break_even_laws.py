"""Laws of the break-even price: at it a product is first or level on score, a minor unit dearer it is not."""

from decimal import Decimal

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from laws.merit_tables import questions
from spindlewise.decide.break_even import Outcome, PriceScale, PriceTerm, break_even, headroom, score_without
from spindlewise.decide.curves import Curve
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable


@st.composite
def falling_curves(draw):
    knots = draw(st.lists(st.integers(1, 40), min_size=2, max_size=5, unique=True).map(sorted))
    merits = draw(st.lists(st.integers(0, 10), min_size=len(knots), max_size=len(knots)))
    return Curve(tuple(50.0 * knot for knot in knots), tuple(m / 10 for m in sorted(merits, reverse=True)))


@st.composite
def scales(draw, share):
    rate = draw(st.sampled_from([Decimal("1"), Decimal("0.0061"), Decimal("1.1734"), Decimal("0.33")]))
    exponent = draw(st.sampled_from([0, 2, 3]))
    return PriceScale((PriceTerm(draw(falling_curves()), share),), rate, exponent)


def score_at(table, weights, scale, row, minor_units):
    """Score the whole table anew, the price of one product set: Decimal money, the curve, then `score`."""
    price = Decimal(minor_units).scaleb(-scale.exponent) * scale.rate
    merits = np.array(table.expected)
    merits[row, 0] = scale.terms[0].curve.at(float(price))
    return score(MeritTable(table.products, table.criteria, merits, merits, merits), weights).expected[row]


@settings(deadline=None, max_examples=60)
@given(questions(least=2, certain=True), st.data())
def test_the_break_even_price_is_the_last_at_which_a_product_is_level(question, data):
    table, weights, _ = question
    weights = np.array(weights)
    scale = data.draw(scales(float(weights[0] / weights.sum())))
    scores = score(table, weights).expected
    without = score_without(table, weights, ("price",))
    rival = data.draw(st.integers(0, len(scores) - 1))
    for row, found in enumerate(break_even(scale, without, scores[rival])):
        if found.outcome is Outcome.AT_PRICE:
            assert found.amount == Decimal(found.minor_units).scaleb(-scale.exponent)
            assert score_at(table, weights, scale, row, found.minor_units) >= scores[rival]
            assert score_at(table, weights, scale, row, found.minor_units + 1) < scores[rival]
        elif found.outcome is Outcome.ANY_PRICE:
            assert score_at(table, weights, scale, row, 10**9) >= scores[rival]
        else:
            assert score_at(table, weights, scale, row, 0) < scores[rival]


@settings(deadline=None, max_examples=60)
@given(questions(least=2, certain=True), st.data())
def test_the_leader_keeps_the_first_score_up_to_its_headroom_and_no_further(question, data):
    table, weights, held = question
    weights = np.array(weights)
    scale = data.draw(scales(float(weights[0] / weights.sum())))
    scores = score(table, weights).expected
    first = int(ranking_order(table.products, scores, held)[0])
    rivals = [s for row, s in enumerate(scores) if row != first and held[row] == held[first]]
    found = headroom(scale, score_without(table, weights, ("price",)), scores, first, held)
    if not rivals:
        assert found.outcome is Outcome.ANY_PRICE
    elif found.outcome is Outcome.AT_PRICE:
        assert score_at(table, weights, scale, first, found.minor_units) >= max(rivals)
        assert score_at(table, weights, scale, first, found.minor_units + 1) < max(rivals)
    elif found.outcome is Outcome.ANY_PRICE:
        assert score_at(table, weights, scale, first, 10**9) >= max(rivals)
    else:
        assert found.outcome is Outcome.NO_PRICE
        assert score_at(table, weights, scale, first, 0) < max(rivals)


@settings(deadline=None, max_examples=60)
@given(falling_curves(), st.integers(1, 100), st.integers(0, 400_000), st.integers(0, 100))
def test_a_product_breaks_even_with_its_own_score_at_its_own_price_or_above(
    curve, share, minor_units, without
):
    scale = PriceScale((PriceTerm(curve, share / 100),), Decimal(1), 2)
    own = without * (1 - share / 100) + float(scale.points(minor_units))
    (found,) = break_even(scale, np.array([without * (1 - share / 100)]), own)
    assert found.outcome is Outcome.ANY_PRICE or found.minor_units >= minor_units
