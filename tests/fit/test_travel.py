"""A move along the seat tube is also a move back and away from the bars."""

from __future__ import annotations

import math

import pytest

from spindlewise.fit.travel import saddle_travel


def test_an_upright_tube_moves_the_saddle_straight_up() -> None:
    move = saddle_travel(7.0, 90.0)
    assert move.up_mm == 7.0
    assert move.back_mm == pytest.approx(0.0, abs=1e-12)


def test_a_tube_that_lies_nearly_flat_moves_the_saddle_back() -> None:
    move = saddle_travel(7.0, 0.5)
    assert move.back_mm == pytest.approx(7.0, abs=1e-3)
    assert move.up_mm == pytest.approx(7.0 * math.radians(0.5), abs=1e-5)


def test_a_three_four_five_tube_splits_as_the_triangle_does() -> None:
    move = saddle_travel(-10.0, math.degrees(math.atan2(4, 3)))
    assert (move.up_mm, move.back_mm) == (pytest.approx(-8.0), pytest.approx(-6.0))
    assert move.drop_to_bars_mm == move.up_mm
    assert move.along_tube_mm == -10.0


@pytest.mark.parametrize("angle", [0.0, -73.0, 90.5, math.nan])
def test_an_angle_no_seat_tube_has_is_refused(angle: float) -> None:
    with pytest.raises(
        ValueError, match=f"^a seat tube stands at more than 0 and up to 90 degrees, not at {angle}$"
    ):
        saddle_travel(1.0, angle)
