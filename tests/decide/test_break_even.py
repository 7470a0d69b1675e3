from decimal import Decimal

import numpy as np
import pytest

from spindlewise.decide.break_even import (
    BreakEven,
    Outcome,
    PriceScale,
    PriceTerm,
    break_even,
    flat_beyond,
    headroom,
    score_without,
)
from spindlewise.decide.curves import Curve
from spindlewise.decide.table import MeritTable

CURVE = Curve((400.0, 1200.0), (1.0, 0.0))
HALF = PriceScale((PriceTerm(CURVE, 0.5),), Decimal(1), 2)


def one(scale, without, rival, held=False, rival_held=False):
    return break_even(scale, np.array([float(without)]), rival, [held], [rival_held])[0]


def test_a_tie_exactly_at_a_minor_unit_counts_by_hand():
    # half the score is price: 30 points elsewhere need 20 more, a merit of 0.4, a price of 1200 - 0.4 * 800
    assert one(HALF, 30, 50) == BreakEven(Outcome.AT_PRICE, 88000, Decimal("880.00"))


def test_between_two_minor_units_the_lower_one_is_given():
    # a merit of 1/3 is at 933.333...; 933.33 still reaches it, 933.34 does not
    assert one(HALF, 30, 30 + 50 / 3).amount == Decimal("933.33")


@pytest.mark.parametrize(
    ("exponent", "rate", "amount"), [(0, "0.0061", "144262"), (3, "2.5", "352.000"), (2, "1.1", "800.00")]
)
def test_the_answer_is_in_the_buyers_currency_with_all_its_decimals(exponent, rate, amount):
    # 880 in the curve's currency, by hand: 880 / 0.0061 = 144262.29..., 880 / 2.5 = 352, 880 / 1.1 = 800
    found = one(PriceScale((PriceTerm(CURVE, 0.5),), Decimal(rate), exponent), 30, 50)
    assert str(found.amount) == amount


def test_any_price_and_no_price_are_told_apart_from_a_price():
    assert one(HALF, 50, 50) == BreakEven(Outcome.ANY_PRICE)
    assert one(HALF, 49.999, 50).outcome is Outcome.AT_PRICE
    assert one(HALF, 0, 50.001) == BreakEven(Outcome.NO_PRICE)
    assert one(HALF, 0, 50).amount == Decimal("400.00")


def test_free_may_be_the_only_price_that_will_do():
    steep = PriceScale((PriceTerm(Curve((0.0, 100.0), (1.0, 0.0)), 0.5),), Decimal(1), 2)
    assert one(steep, 0, 50) == BreakEven(Outcome.AT_PRICE, 0, Decimal("0.00"))


def test_a_flat_piece_is_used_to_its_dear_end():
    flat = Curve((400.0, 600.0, 900.0, 1200.0), (1.0, 0.5, 0.5, 0.0))
    scale = PriceScale((PriceTerm(flat, 0.5),), Decimal(1), 2)
    assert one(scale, 25, 50).amount == Decimal("900.00")
    assert one(scale, 24.9, 50).amount == Decimal("599.20")


def test_a_price_without_weight_changes_nothing():
    idle = PriceScale((PriceTerm(CURVE, 0.0),), Decimal(1), 2)
    assert one(idle, 50, 50).outcome is Outcome.ANY_PRICE
    assert one(idle, 49, 50).outcome is Outcome.NO_PRICE


def test_a_price_may_bear_on_two_criteria_at_once():
    # price: 0.25 of the score; ownership: 0.25, the price plus 100 of batteries over the years
    terms = (PriceTerm(CURVE, 0.25), PriceTerm(CURVE, 0.25, np.array([100.0, 0.0])))
    first, second = break_even(PriceScale(terms, Decimal(1), 2), np.array([30.0, 30.0]), 50.0)
    # 20 points are a mean merit of 0.4: mean of the two figures 880, so a price of 830 with the 100 added
    assert first.amount == Decimal("830.00")
    assert second.amount == Decimal("880.00")


def test_a_safety_notice_outweighs_every_price():
    assert one(HALF, 90, 50, held=True).outcome is Outcome.HELD_BACK
    assert one(HALF, 0, 90, rival_held=True).outcome is Outcome.ANY_PRICE
    assert one(HALF, 30, 50, held=True, rival_held=True).amount == Decimal("880.00")


def test_each_product_may_have_its_own_rival():
    found = break_even(HALF, np.array([30.0, 30.0]), np.array([50.0, 80.0]))
    assert [each.amount for each in found] == [Decimal("880.00"), Decimal("400.00")]


def test_the_leaders_headroom_is_to_the_best_of_the_others():
    expected, without = np.array([70.0, 50.0, 60.0]), np.array([40.0, 0.0, 0.0])
    assert headroom(HALF, without, expected, 0).amount == Decimal("880.00")
    assert headroom(HALF, without, expected, 0, [False, False, True]).amount == Decimal("1040.00")
    assert headroom(HALF, without, expected, 0, [False, True, True]).outcome is Outcome.ANY_PRICE
    assert headroom(HALF, without, expected, 0, [True, False, False]).outcome is Outcome.HELD_BACK
    assert headroom(HALF, without, expected, 0, [True, True, True]).amount == Decimal("880.00")


def test_the_leaders_own_addition_to_the_price_goes_with_it():
    scale = PriceScale((PriceTerm(CURVE, 0.5, np.array([80.0, 0.0])),), Decimal(1), 2)
    assert headroom(scale, np.array([30.0, 0.0]), np.array([60.0, 50.0]), 0).amount == Decimal("800.00")


def test_the_score_without_price_and_the_points_for_it_make_the_score():
    merits = np.array([[0.5, 0.8, 0.1]])
    table = MeritTable(("heron",), ("price", "weight", "ownership"), merits, merits, merits)
    weights = np.array([2.0, 1.0, 1.0])
    assert score_without(table, weights, ("price",)) == pytest.approx([22.5])
    assert score_without(table, weights, ("price", "ownership")) == pytest.approx([20.0])
    with pytest.raises(ValueError, match=r"^no criterion colour, logo; there are price, weight, ownership$"):
        score_without(table, weights, ("price", "logo", "colour"))
    with pytest.raises(ValueError, match="one a criterion"):
        score_without(table, np.ones(2), ("price",))


def test_scales_that_cannot_be_are_refused():
    with pytest.raises(ValueError, match=r"merits \(1.0, 0.2, 0.3\) rise somewhere; they may only fall$"):
        PriceTerm(Curve((1.0, 2.0, 3.0), (1.0, 0.2, 0.3)), 0.5)
    with pytest.raises(ValueError, match=r"^the share of price is 1.5; it lies in 0 to 1$"):
        PriceTerm(CURVE, 1.5)
    with pytest.raises(ValueError, match=r"^the share of price is -0.1"):
        PriceTerm(CURVE, -0.1)
    with pytest.raises(
        ValueError, match=r"^what is added to the price is not a finite number for every product$"
    ):
        PriceTerm(CURVE, 0.5, np.array([1.0, float("nan")]))
    for rate in ("0", "-1", "NaN", "Infinity"):
        with pytest.raises(ValueError, match=f"^the exchange rate is {rate}; it is above 0$"):
            PriceScale((PriceTerm(CURVE, 0.5),), Decimal(rate), 2)
    for exponent in (-1, 5):
        with pytest.raises(ValueError, match=f"^{exponent} decimals of a currency; 0 to 4 are in use$"):
            PriceScale((PriceTerm(CURVE, 0.5),), Decimal(1), exponent)
    with pytest.raises(
        ValueError,
        match=r"^the price curve reaches to \S+ minor units; no more than 2\^52 can be told apart$",
    ):
        one(PriceScale((PriceTerm(CURVE, 0.5),), Decimal("1e-15"), 2), 30, 50)


def test_a_large_addition_for_one_product_does_not_cut_short_the_search_for_another():
    scale = PriceScale((PriceTerm(CURVE, 0.5, np.array([900.0, 0.0])),), Decimal(1), 2)
    dear, plain = break_even(scale, np.array([30.0, 30.0]), 50.0)
    assert dear.outcome is Outcome.NO_PRICE
    assert plain.amount == Decimal("880.00")


def test_beyond_its_curve_a_price_costs_no_more_points():
    scale = PriceScale(
        (PriceTerm(CURVE, 0.25), PriceTerm(CURVE, 0.25, np.array([80.0, 900.0]))), Decimal(1), 2
    )
    # the price's own curve ends at 1200, however much batteries add
    assert str(flat_beyond(scale, 0, 2)) == str(flat_beyond(scale, 1, 2)) == "1200.00"
    owning = PriceScale((PriceTerm(CURVE, 0.5, np.array([80.0, 1300.0])),), Decimal("2.5"), 3)
    # (1200 - 80) / 2.5; and a pedal whose batteries alone take it past the curve
    assert [str(flat_beyond(owning, row, 2)) for row in (0, 1)] == ["448.000", "0.000"]
    assert str(flat_beyond(PriceScale((), Decimal(1), 0), 0, 2)) == "0"
    # 1200 / 0.9 is 1333.333...: at 1333.33 there is still something to lose
    assert str(flat_beyond(PriceScale((PriceTerm(CURVE, 0.5),), Decimal("0.9"), 2), 0, 1)) == "1333.34"


def test_currencies_have_up_to_four_decimals():
    # as the Chilean unit of account (ISO 4217)
    assert one(PriceScale((PriceTerm(CURVE, 0.5),), Decimal(40), 4), 30, 50).amount == Decimal("22.0000")


def test_where_nobody_is_left_there_is_nothing_to_find():
    scale = PriceScale((PriceTerm(CURVE, 0.5, np.array([])),), Decimal(1), 2)
    assert break_even(scale, np.array([]), 50.0) == ()


def test_prices_are_told_apart_just_below_2_to_the_52():
    def far(end):
        return PriceScale((PriceTerm(Curve((0.0, end), (1.0, 0.0)), 1.0),), Decimal(1), 0)

    assert one(far(2.0**52 - 1), 0, 50).amount == pytest.approx(Decimal(2**51))
    with pytest.raises(ValueError, match=r"2\^52"):
        far(2.0**52).flat_from()
