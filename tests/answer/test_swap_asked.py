"""A swap with the head unit and the climb of the rider who asks."""

import pytest

import worlds
from spindlewise.answer.swap_asked import swap_asked

OLD, NEW = worlds.plain("old", 360.0), worlds.product("new", {"weight_g": (worlds.weighed(300.0),)})


def test_new_cranks_and_a_climb_are_told_beside_the_swap():
    buyer = worlds.buyer(
        bike={"crank_mm": 172.5, "new_crank_mm": 170.0, "bike_mass_kg": 8.0},
        needs={"rider_mass_kg": 72.0},
        riding={"climb": {"length_m": 10_000.0, "gradient_pct": 8.0, "power_w": 250.0}},
    )
    found = swap_asked(OLD, NEW, worlds.DAY, buyer, ())

    assert found.swap.weight.expected_g == -60.0
    assert found.crank.error.error_pct == pytest.approx(100 * 2.5 / 170)
    assert found.gram_worth.change_s == pytest.approx(-1.88, abs=0.01)


def test_without_a_buyer_there_is_neither():
    found = swap_asked(OLD, NEW, worlds.DAY, None, ())

    assert found.swap.weight.expected_g == -60.0
    assert (found.crank, found.gram_worth) == (None, "a climb")
