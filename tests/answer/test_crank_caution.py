"""Cranks changed with the pedals, and the head unit left as it was."""

import pytest

import worlds
from spindlewise.answer.crank_caution import crank_caution, reading_if_left
from spindlewise.answer.ranking import rank


def caution(**bike):
    return crank_caution(worlds.buyer(bike=bike, riding={"threshold_power_w": 250.0}))


def test_a_setting_left_at_the_old_length_is_feared_and_computed():
    found = caution(crank_mm=172.5, new_crank_mm=170.0)

    assert not found.stated
    assert found.error.error_pct == pytest.approx(1.4706, abs=1e-4)
    assert found.error.error_w == pytest.approx(3.676, abs=1e-3)


def test_a_setting_that_is_stated_and_wrong():
    """Set to 170 mm and ridden at 172.5 mm reads 1.4 % low (common practice, no source)."""
    found = caution(crank_mm=172.5, head_unit_crank_mm=170.0)

    assert found.stated
    assert found.error.error_pct == pytest.approx(-1.449, abs=1e-3)


@pytest.mark.parametrize(
    "bike",
    [
        {},
        {"crank_mm": 172.5},
        {"crank_mm": 172.5, "head_unit_crank_mm": 172.5},
        {"crank_mm": 172.5, "new_crank_mm": 170.0, "head_unit_crank_mm": 170.0},
        {"crank_mm": 172.5, "new_crank_mm": 172.5},
        {"new_crank_mm": 170.0},
    ],
)
def test_a_right_setting_or_an_unknown_length_needs_no_caution(bike):
    assert caution(**bike) is None


def test_without_a_threshold_power_there_are_percent_only():
    found = crank_caution(worlds.buyer(bike={"crank_mm": 172.5, "new_crank_mm": 170.0}))

    assert found.error.error_w is None


def test_a_wrong_setting_moves_no_place_even_where_it_would_take_a_bias_away():
    """A meter that reads 1.1 % low, and a setting that reads 1.5 % high: luck is no accuracy."""
    low = {
        "reading_bias_pct": (worlds.seen(-1.1, plus_minus=0.3),),
        "reading_spread_pct": (worlds.seen(0.9),),
    }
    true = {
        "reading_bias_pct": (worlds.seen(0.0, plus_minus=0.3),),
        "reading_spread_pct": (worlds.seen(0.9),),
    }
    products = [worlds.product("auk", low), worlds.product("brant", true)]
    desk = worlds.desk(products, [worlds.price(name, 500) for name in ("auk", "brant")])
    right = worlds.buyer(bike={"crank_mm": 170.0, "head_unit_crank_mm": 170.0})
    wrong = worlds.buyer(bike={"crank_mm": 170.0, "head_unit_crank_mm": 172.5})
    first, again = rank(desk, right), rank(desk, wrong)

    assert again.placed == first.placed
    assert again.placed[0].product == "brant"
    auk = next(placed for placed in again.placed if placed.product == "auk")
    left = reading_if_left(desk, wrong, auk, crank_caution(wrong))
    assert left.bias_pct == pytest.approx(-1.1 + 1.4706, abs=1e-4)
    assert left.expanded_pct < auk.received.budget.expanded_pct
