"""The saddle change that keeps the leg's longest reach."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from spindlewise.fit.leg import (
    Contact,
    OutOfReach,
    Rider,
    hip_to_ankle_mm,
    knee_flexion_deg,
    longest_reach_mm,
)
from spindlewise.fit.leg_change import leg_change, saddle_change_mm

RIDER = Rider(430.0, 430.0, 70.0, 715.0, 73.0, 10.0, 20.0)
OLD = Contact(20.0, 172.5, 125.0)
LEVEL = replace(RIDER, pitch_up_deg=0.0, pitch_down_deg=0.0)
TOE_DOWN = replace(RIDER, pitch_up_deg=20.0, pitch_down_deg=20.0)


def taller(by_mm: float) -> Contact:
    return replace(OLD, axis_to_foot_mm=OLD.axis_to_foot_mm + by_mm)


def test_the_same_contact_moves_nothing() -> None:
    found = leg_change(RIDER, OLD, OLD)
    assert (found.saddle_mm, found.plus_minus_mm, found.shortest_reach_change_mm) == (0.0, 0.0, 0.0)
    assert found.straightest_unmoved_deg == found.straightest_before_deg
    assert found.most_bent_after_deg == found.most_bent_before_deg == found.most_bent_unmoved_deg


@pytest.mark.parametrize("by_mm", [-6.0, 4.0, 12.0])
def test_one_to_one_is_exact_for_a_level_foot_under_an_upright_tube(by_mm: float) -> None:
    upright = replace(LEVEL, seat_tube_angle_deg=90.0)
    assert saddle_change_mm(upright, OLD, taller(by_mm)) == pytest.approx(by_mm, abs=1e-6)


def test_one_to_one_is_near_for_a_level_foot_and_too_much_for_a_toe_down_one() -> None:
    """The stack stands normal to the sole, so a foot that points down turns part of it forwards."""
    assert saddle_change_mm(LEVEL, OLD, taller(1.0)) == pytest.approx(1.00, abs=0.02)
    assert saddle_change_mm(TOE_DOWN, OLD, taller(1.0)) == pytest.approx(0.85, abs=0.02)


def slope_by_hand(rider: Rider, contact: Contact) -> float:
    """Saddle per stack, at the longest reach: cos(pitch + lean) / cos(lean - tube lean)."""
    angles = np.arange(0.0, 360.0, 0.001)
    crank = math.radians(float(angles[np.argmax(hip_to_ankle_mm(rider, contact, angles))]))
    pitch = math.radians(rider.pitch_down_deg)
    behind = contact.ankle_to_cleat_mm
    over, tube = contact.axis_to_foot_mm + rider.ankle_height_mm, math.radians(rider.seat_tube_angle_deg)
    x = contact.crank_mm * math.sin(crank) + over * math.sin(pitch) - behind * math.cos(pitch)
    y = contact.crank_mm * math.cos(crank) + over * math.cos(pitch) + behind * math.sin(pitch)
    ahead = x + rider.saddle_height_mm * math.cos(tube) + rider.setback_mm
    below = rider.saddle_height_mm * math.sin(tube) + rider.hip_above_saddle_mm - y
    lean = math.atan2(ahead, below)
    return math.cos(pitch + lean) / math.cos(lean - (math.pi / 2 - tube))


@pytest.mark.parametrize("pitch", [-10.0, 0.0, 10.0, 20.0, 35.0])
def test_small_changes_follow_the_derivative_worked_out_by_hand(pitch: float) -> None:
    rider = replace(RIDER, pitch_up_deg=pitch, pitch_down_deg=pitch)
    slope = (saddle_change_mm(rider, OLD, taller(0.01)) - saddle_change_mm(rider, OLD, taller(-0.01))) / 0.02
    assert slope == pytest.approx(slope_by_hand(rider, OLD), abs=1e-5)


def test_the_longest_reach_and_the_knee_are_as_before() -> None:
    new = Contact(26.0, 165.0, 130.0)
    moved = saddle_change_mm(RIDER, OLD, new)
    assert longest_reach_mm(RIDER, new, moved) == pytest.approx(longest_reach_mm(RIDER, OLD), abs=1e-8)
    raised = replace(RIDER, saddle_height_mm=RIDER.saddle_height_mm + moved)
    after = knee_flexion_deg(raised, longest_reach_mm(raised, new))
    assert after == pytest.approx(leg_change(RIDER, OLD, new).straightest_before_deg, abs=1e-6)


def test_a_shorter_crank_raises_the_saddle_and_opens_the_knee_over_the_top() -> None:
    found = leg_change(RIDER, OLD, replace(OLD, crank_mm=165.0))
    assert 6.5 < found.saddle_mm < 8.5
    assert found.straightest_unmoved_deg is not None
    assert found.straightest_unmoved_deg > found.straightest_before_deg
    assert found.shortest_reach_change_mm > 10
    assert found.most_bent_after_deg < found.most_bent_before_deg - 2


def test_where_the_unmoved_saddle_is_out_of_reach_the_knee_is_unknown_and_the_change_is_not() -> None:
    nearly_straight = replace(RIDER, thigh_mm=400.0, shank_mm=longest_reach_mm(RIDER, OLD) - 399.0)
    found = leg_change(nearly_straight, OLD, replace(OLD, crank_mm=177.5))
    assert found.straightest_unmoved_deg is None
    assert found.most_bent_unmoved_deg is not None
    assert -6 < found.saddle_mm < -4


def test_a_leg_that_does_not_reach_the_old_pedal_is_refused() -> None:
    with pytest.raises(OutOfReach, match="away from the hip"):
        leg_change(replace(RIDER, saddle_height_mm=800.0), OLD, taller(4.0))


@pytest.mark.parametrize("crank_mm", [900.0, 1500.0])
def test_a_crank_for_which_no_saddle_height_will_do_is_refused(crank_mm: float) -> None:
    with pytest.raises(
        OutOfReach,
        match=r"^not even a move of 715 mm along the seat tube gives back the longest reach of 820\.7 mm$",
    ):
        saddle_change_mm(RIDER, OLD, replace(OLD, crank_mm=crank_mm))


@pytest.mark.parametrize("crank_mm", [400.0, 540.0, 600.0])
def test_however_long_the_crank_a_saddle_height_that_will_do_is_found(crank_mm: float) -> None:
    """The longer two need more than half of the saddle's height: twice as far would be below the axle."""
    new = replace(OLD, crank_mm=crank_mm)
    found = saddle_change_mm(RIDER, OLD, new)
    assert -RIDER.saddle_height_mm < found < -200
    assert longest_reach_mm(RIDER, new, found) == pytest.approx(longest_reach_mm(RIDER, OLD), abs=1e-7)


@pytest.mark.parametrize("too_long_mm", [0.001, -0.001])
def test_a_crank_too_long_by_a_hair_is_refused_and_one_just_short_enough_is_not(too_long_mm: float) -> None:
    """Longest of all that may be: with the saddle lowered by its whole height the reach is just as before."""
    target, new = longest_reach_mm(RIDER, OLD), replace(OLD, crank_mm=700.0)
    for _ in range(20):
        beyond = longest_reach_mm(RIDER, new, -RIDER.saddle_height_mm) - target - too_long_mm
        new = replace(new, crank_mm=new.crank_mm - beyond)
    if too_long_mm > 0:
        with pytest.raises(OutOfReach, match="not even a move of 715 mm"):
            saddle_change_mm(RIDER, OLD, new)
    else:
        found = saddle_change_mm(RIDER, OLD, new)
        assert longest_reach_mm(RIDER, new, found) == pytest.approx(target, abs=1e-7)


def test_a_pedal_thinner_by_just_a_millimetre_lowers_the_saddle_by_it() -> None:
    """Over the axle, upright and level, the leg is then too long by exactly 1 mm."""
    upright = replace(LEVEL, seat_tube_angle_deg=90.0)
    over_the_axle = Contact(15.0, 170.0, 0.0)
    assert saddle_change_mm(upright, over_the_axle, replace(over_the_axle, axis_to_foot_mm=14.0)) == -1.0


@pytest.mark.parametrize(("crank_mm", "at_least_mm"), [(165.0, 15.0), (172.3, 0.4)])
def test_a_steep_way_to_the_answer_is_followed_until_it_is_bracketed(
    crank_mm: float, at_least_mm: float
) -> None:
    """A hip far behind a low saddle: the tube hardly lengthens the leg, so the first bracket is too small."""
    recumbent = Rider(430.0, 430.0, 70.0, 300.0, 73.0, 0.0, 0.0, setback_mm=650.0, hip_above_saddle_mm=-150.0)
    new = replace(OLD, crank_mm=crank_mm)
    found = saddle_change_mm(recumbent, OLD, new)
    assert longest_reach_mm(recumbent, new, found) == pytest.approx(
        longest_reach_mm(recumbent, OLD), abs=1e-7
    )
    assert found > at_least_mm


def test_uncertain_figures_add_in_quadrature() -> None:
    spread = {"old.axis_to_foot_mm": 0.5, "new.axis_to_foot_mm": 0.5, "rider.pitch_down_deg": 5.0}
    found = leg_change(TOE_DOWN, OLD, taller(6.0), spread)
    effects = dict(found.effects_mm)
    assert list(effects) == sorted(spread)
    assert effects["new.axis_to_foot_mm"] == pytest.approx(0.425, abs=0.02)
    assert effects["old.axis_to_foot_mm"] == pytest.approx(-effects["new.axis_to_foot_mm"], abs=0.01)
    by_hand = [
        saddle_change_mm(replace(TOE_DOWN, pitch_down_deg=20.0 + turn), OLD, taller(6.0))
        for turn in (5.0, -5.0)
    ]
    assert effects["rider.pitch_down_deg"] == pytest.approx((by_hand[0] - by_hand[1]) / 2)
    assert found.plus_minus_mm == pytest.approx(math.sqrt(sum(e * e for e in effects.values())))


def test_what_stays_on_both_sides_hardly_matters_and_leg_lengths_not_at_all() -> None:
    spread = {"both.axis_to_foot_mm": 3.0, "rider.thigh_mm": 15.0}
    effects = dict(leg_change(RIDER, OLD, taller(6.0), spread).effects_mm)
    assert 0 < abs(effects["both.axis_to_foot_mm"]) < 0.1
    assert effects["rider.thigh_mm"] == 0


def test_a_figure_known_for_certain_has_no_effect() -> None:
    found = leg_change(RIDER, OLD, taller(6.0), {"rider.setback_mm": 0.0, "new.axis_to_foot_mm": 0.5})
    assert dict(found.effects_mm)["rider.setback_mm"] == 0
    assert found.plus_minus_mm == abs(dict(found.effects_mm)["new.axis_to_foot_mm"])


@pytest.mark.parametrize(
    ("spread", "says"),
    [
        (
            {"rider.inseam_mm": 1.0},
            "^no figure of the leg model is called rider.inseam_mm; known are both.ankle[a-z_]+, both.axis",
        ),
        (
            {"old.crank_mm": -1.0},
            "^the plus-minus of old.crank_mm is -1.0; it must be zero or more and finite$",
        ),
        ({"old.crank_mm": math.inf}, "must be zero or more and finite"),
    ],
)
def test_a_plus_minus_of_nothing_known_is_refused(spread: dict[str, float], says: str) -> None:
    with pytest.raises(ValueError, match=says):
        leg_change(RIDER, OLD, OLD, spread)
