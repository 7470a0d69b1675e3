"""Cranks changed with the pedals, and the head unit left as it was."""

import pytest

import worlds
from spindlewise.answer.crank_caution import crank_caution


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
