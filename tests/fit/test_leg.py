"""The leg as a linkage: distances and knee angles that can be worked out on paper."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from spindlewise.fit.leg import (
    Contact,
    OutOfReach,
    Rider,
    _hip_to_ankle_at,
    hip_to_ankle_mm,
    knee_flexion_deg,
    longest_reach_mm,
    shortest_reach_mm,
)

RIDER = Rider(430.0, 430.0, 70.0, 715.0, 73.0, 10.0, 20.0)
CONTACT = Contact(20.0, 172.5, 125.0)


def test_over_the_axle_with_a_level_foot_the_crank_adds_and_takes_away_its_length() -> None:
    upright = Rider(430.0, 430.0, 70.0, 700.0, 90.0, 0.0, 0.0)
    over_the_axle = Contact(15.0, 170.0, 0.0)
    assert longest_reach_mm(upright, over_the_axle) == pytest.approx(700 + 80 + 170 - 15 - 70)
    assert shortest_reach_mm(upright, over_the_axle) == pytest.approx(700 + 80 - 170 - 15 - 70)


def test_with_no_crank_the_reach_is_one_distance() -> None:
    """Hip 600 up and 175 back, ankle 85 up and 130 back: a right-angled triangle of 515 and 45."""
    upright = Rider(430.0, 430.0, 70.0, 600.0, 90.0, 0.0, 0.0, setback_mm=175.0, hip_above_saddle_mm=0.0)
    still = Contact(15.0, 0.0, 130.0)
    assert longest_reach_mm(upright, still) == pytest.approx(math.hypot(515, 45))
    assert shortest_reach_mm(upright, still) == pytest.approx(math.hypot(515, 45))


def test_a_toe_down_foot_turns_the_height_above_the_axis_forwards() -> None:
    """At 30 degrees half of the height lies ahead, and half of the foot lies above."""
    toe_down = Rider(430.0, 430.0, 80.0, 700.0, 90.0, 30.0, 30.0, hip_above_saddle_mm=0.0)
    found = hip_to_ankle_mm(toe_down, Contact(20.0, 170.0, 120.0), np.array([180.0]))[0]
    ankle_x = 100 * 0.5 - 120 * math.sqrt(0.75)
    ankle_y = -170 + 100 * math.sqrt(0.75) + 120 * 0.5
    assert found == pytest.approx(math.hypot(ankle_x, ankle_y - 700))


def test_the_pitch_goes_from_up_to_down_as_a_cosine() -> None:
    both = hip_to_ankle_mm(RIDER, CONTACT, np.array([0.0, 90.0, 180.0, 270.0]))
    for place, pitch in enumerate((10.0, 15.0, 20.0, 15.0)):
        fixed = replace(RIDER, pitch_up_deg=pitch, pitch_down_deg=pitch)
        alone = hip_to_ankle_mm(fixed, CONTACT, np.array([90.0 * place]))
        assert both[place] == pytest.approx(alone[0])


def test_the_longest_and_shortest_reach_are_those_of_a_fine_search() -> None:
    every = hip_to_ankle_mm(RIDER, CONTACT, np.arange(0.0, 360.0, 0.01))
    assert longest_reach_mm(RIDER, CONTACT) == pytest.approx(every.max(), abs=1e-5)
    assert shortest_reach_mm(RIDER, CONTACT) == pytest.approx(every.min(), abs=1e-5)
    assert longest_reach_mm(RIDER, CONTACT) >= every.max()


@pytest.mark.parametrize("crank_deg", [0.0, 37.5, 90.0, 174.0, 181.3, 299.0])
def test_one_angle_at_a_time_gives_what_a_whole_turn_gives(crank_deg: float) -> None:
    rider = Rider(430.0, 430.0, 70.0, 715.0, 73.0, 10.0, 20.0, 15.0)
    contact = Contact(20.0, 172.5, 125.0)
    turn = float(hip_to_ankle_mm(rider, contact, np.array([crank_deg]), 3.5)[0])
    assert _hip_to_ankle_at(rider, contact, 3.5)(crank_deg) == pytest.approx(turn, abs=1e-9)


def test_knee_angles_that_need_no_calculator() -> None:
    right_angled = replace(RIDER, thigh_mm=300.0, shank_mm=400.0)
    assert knee_flexion_deg(right_angled, 700.0) == 0
    assert knee_flexion_deg(right_angled, 500.0) == pytest.approx(90)
    assert knee_flexion_deg(right_angled, 100.0) == pytest.approx(180)
    assert knee_flexion_deg(replace(RIDER, thigh_mm=400.0, shank_mm=400.0), 400.0) == pytest.approx(120)


def test_a_leg_at_its_very_end_is_straight_or_folded_whatever_rounding_does() -> None:
    """With these lengths binary fractions put the cosine just beyond 1, where no angle has it."""
    leg = replace(RIDER, thigh_mm=380.0, shank_mm=350.7)
    assert knee_flexion_deg(leg, 380.0 + 350.7) == 0
    leg = replace(RIDER, thigh_mm=380.0, shank_mm=352.1)
    assert knee_flexion_deg(leg, 380.0 - 352.1) == 180


def test_a_leg_too_short_or_too_long_says_so() -> None:
    with pytest.raises(
        OutOfReach,
        match=r"^the ankle gets 860\.1 mm away from the hip, yet thigh and shank are 860\.0 mm long$",
    ):
        knee_flexion_deg(RIDER, 860.1)
    with pytest.raises(
        OutOfReach,
        match=r"^the ankle comes within 99\.0 mm of the hip, yet thigh and shank fold to 100\.0 mm at best$",
    ):
        knee_flexion_deg(replace(RIDER, thigh_mm=330.0), 99.0)


@pytest.mark.parametrize(
    ("figure", "value", "says"),
    [
        ("thigh_mm", 0.0, "^thigh_mm is 0.0; it must be more than zero$"),
        ("saddle_height_mm", -1.0, "saddle_height_mm is -1.0"),
        ("seat_tube_angle_deg", 44.9, "^the seat tube stands at 44.9 degrees; 45 to 100 is possible$"),
        ("seat_tube_angle_deg", 100.1, "^the seat tube stands at 100.1 degrees; 45 to 100 is possible$"),
        ("seat_tube_angle_deg", 30.0, "^the seat tube stands at 30.0 degrees; 45 to 100 is possible$"),
        ("pitch_up_deg", 90.0, "^a foot pitch of 90.0 degrees was given; toe-down is positive, below 90$"),
        ("pitch_down_deg", -95.0, "a foot pitch of -95.0"),
        ("setback_mm", math.nan, "^setback_mm is nan; it must be finite$"),
    ],
)
def test_a_rider_that_cannot_be_is_refused(figure: str, value: float, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        replace(RIDER, **{figure: value})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("figure", "value"),
    [
        ("seat_tube_angle_deg", 45.0),
        ("seat_tube_angle_deg", 100.0),
        ("pitch_up_deg", -89.9),
        ("thigh_mm", 0.43),
        ("shank_mm", 0.43),
        ("saddle_height_mm", 0.715),
    ],
)
def test_the_model_asks_no_more_of_a_rider_than_that_it_can_be(figure: str, value: float) -> None:
    """What is plausible for a rider (and a length in metres is not) is asked where figures are read."""
    assert getattr(replace(RIDER, **{figure: value}), figure) == value  # type: ignore[arg-type]


def test_a_contact_that_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^crank_mm is -170.0; it must be zero or more$"):
        Contact(20.0, -170.0, 120.0)
    with pytest.raises(ValueError, match="axis_to_foot_mm is inf"):
        Contact(math.inf, 170.0, 120.0)
