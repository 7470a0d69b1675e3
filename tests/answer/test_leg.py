"""The leg model beside common practice, from what a buyer states."""

import math

import pytest

import worlds
from spindlewise.answer.leg import SADDLE_TIP_TO_SEAT_MM
from spindlewise.answer.swap import swap

BIKE = {"crank_mm": 172.5, "saddle_height_mm": 745.0, "seat_tube_deg": 73.5, "saddle_setback_mm": 60.0}


def leg(bike=BIKE, **body):
    low = worlds.product("low", {"stack_mm": (worlds.stack(10.0),)})
    tall = worlds.product("tall", {"stack_mm": (worlds.stack(14.0),)})
    return swap(low, tall, worlds.DAY, worlds.buyer(bike=bike, body=body), ()).leg


def test_a_toe_down_foot_raises_the_saddle_by_less_than_the_stack():
    found = leg(height_mm=1780.0).change

    assert 3.0 < found.saddle_mm < 3.7
    assert found.plus_minus_mm > 0.2


def test_a_level_foot_comes_near_one_to_one():
    low_saddle = {**BIKE, "saddle_height_mm": 690.0}
    found = leg(low_saddle, height_mm=1780.0, foot_pitch_bottom_deg=0.0, foot_pitch_top_deg=0.0).change

    assert found.saddle_mm == pytest.approx(4.0, abs=0.15)


def test_stated_segments_stand_in_for_the_height():
    found = leg(thigh_mm=436.1, shank_mm=437.9)

    assert found.change.saddle_mm == pytest.approx(leg(height_mm=1780.0).change.saddle_mm, abs=0.05)


def test_what_is_lacking_is_named():
    assert leg().because == "it needs body height, or thigh and shank"
    assert leg({"crank_mm": 170.0}, height_mm=1780.0).because == "it needs saddle height, seat-tube angle"


def test_a_leg_that_cannot_reach_is_said_in_words():
    found = leg({**BIKE, "saddle_height_mm": 950.0}, height_mm=1500.0)

    assert found.change is None
    assert found.because.startswith("the figures stated do not fit a leg on this bike: ")


def test_a_stack_to_the_sole_holds_the_cleat_already():
    known = {"stack_mm": (worlds.stack(15.5, "axis to sole"),)}
    taller = {"stack_mm": (worlds.stack(19.5, "axis to sole"),)}
    low, tall = worlds.product("low", known), worlds.product("tall", taller)
    buyer = worlds.buyer(bike=BIKE, body={"height_mm": 1780.0})
    found = swap(low, tall, worlds.DAY, buyer, ()).leg.change

    assert found.saddle_mm == pytest.approx(leg(height_mm=1780.0).change.saddle_mm, abs=1e-6)


def test_a_saddle_tip_behind_the_bracket_says_where_the_rider_sits():
    on_the_tube = 745.0 * math.cos(math.radians(73.5)) - SADDLE_TIP_TO_SEAT_MM
    stated = leg({**BIKE, "saddle_setback_mm": on_the_tube}, height_mm=1780.0)
    unstated = leg({k: v for k, v in BIKE.items() if k != "saddle_setback_mm"}, height_mm=1780.0)

    assert stated.change.saddle_mm == pytest.approx(unstated.change.saddle_mm, abs=1e-9)
    assert dict(stated.given)["rider.setback_mm"] < dict(unstated.given)["rider.setback_mm"]


def test_a_cleat_moved_along_the_sole_moves_the_saddle_where_the_foot_points_down():
    low = worlds.product("low", {"stack_mm": (worlds.stack(10.0),)})

    def moved(new_mm, **body):
        shoes = {"axis_before_ankle_mm": 130.0, "new_axis_before_ankle_mm": new_mm}
        buyer = worlds.buyer(bike=BIKE, body={"height_mm": 1780.0, **body}, shoes=shoes)
        return swap(low, low, worlds.DAY, buyer, ()).leg.change.saddle_mm

    assert moved(130.0) == 0.0
    # the ankle comes nearer to the axis, so it stands lower over a heel that is up
    assert moved(120.0) < -1.0
    assert moved(140.0) > 1.0


def test_what_stands_in_is_said_and_counts_with_a_wider_plus_minus():
    vague = leg(height_mm=1780.0)
    exact = leg(
        height_mm=1780.0,
        thigh_mm=436.0,
        shank_mm=438.0,
        foot_pitch_bottom_deg=20.0,
        foot_pitch_top_deg=20.0,
    )

    assert len(vague.assumed) == 3
    assert exact.assumed == ("a cleat half a foot length before the ankle",)
    assert exact.change.plus_minus_mm < vague.change.plus_minus_mm
