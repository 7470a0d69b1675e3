from dataclasses import replace

import pytest

import worlds
from spindlewise.answer.leg import LegAnswer
from spindlewise.answer.saddle_views import SaddleViews, saddle_views
from spindlewise.answer.swap import swap
from spindlewise.fit.leg_change import LegChange
from spindlewise.render.words_leg import INPUTS, leg_sentences

BIKE = {"crank_mm": 172.5, "saddle_height_mm": 745.0, "seat_tube_deg": 73.5}
BODY = {"height_mm": 1800.0}


def told(bike=BIKE, **body):  # type: ignore[no-untyped-def]
    old = worlds.plain("old", observations={"stack_mm": (worlds.stack(11.0),)})
    new = worlds.product("new", {"stack_mm": (worlds.stack(15.0),)})
    found = swap(old, new, worlds.DAY, worlds.buyer(bike=bike, body=body or BODY), ())
    return found.leg, saddle_views(found)


def test_the_rule_is_said_to_overstate_for_a_foot_that_points_down() -> None:
    beside, knee, hangs_on = leg_sentences(*told())

    assert beside == (
        "A model of the leg, which lets the ankle move, says up 3.5 mm, unrounded +3.5 mm, give or take "
        "0.5 mm: the 1:1 rule overstates it by 0.5 mm for you, "
        "which is no more than the model itself may be off."
    )
    assert "the knee at its straightest would be bent " in knee
    assert " degrees more (" in knee
    assert "over the top as before." in knee
    assert "no published measurement of them was found" in knee
    assert hangs_on.startswith(
        "Most hangs on the pitch of the foot at the bottom: 10.0 degrees either way make 0.4 mm. Assumed: "
        "thigh and shank by the usual shares of body height, a foot 20 degrees toe-down, "
    )


def test_shorter_cranks_bend_the_knee_less_over_the_top() -> None:
    knee = leg_sentences(*told({**BIKE, "new_crank_mm": 165.0}))[1]

    assert "and over the top " in knee
    assert " degrees less (" in knee
    assert " mm further. These" in knee


def test_longer_cranks_bring_the_ankle_nearer_to_the_hip() -> None:
    knee = leg_sentences(*told({**BIKE, "new_crank_mm": 175.0}))[1]

    assert " mm nearer. These" in knee


@pytest.mark.parametrize(
    ("practice", "leg", "said"),
    [
        (4.0, 4.04, "for you both agree."),
        (-4.0, -3.6, "the 1:1 rule overstates it by 0.4 mm for you."),
        (1.0, 1.5, "the 1:1 rule understates it by 0.5 mm for you."),
        (0.3, -0.4, "the 1:1 rule points the other way, 0.7 mm apart."),
    ],
)
def test_how_far_the_rule_is_off(practice: float, leg: float, said: str) -> None:
    answer, _ = told()
    assert answer.change is not None
    sure = replace(answer, change=replace(answer.change, plus_minus_mm=0.1))

    assert leg_sentences(sure, SaddleViews(practice, leg, practice - leg))[0].endswith(f": {said}")


def test_a_leg_that_would_not_reach_round_with_the_saddle_left() -> None:
    answer, views = told()
    assert answer.change is not None
    short = replace(answer, change=replace(answer.change, straightest_unmoved_deg=None))

    assert leg_sentences(short, views)[1].startswith(
        "If the saddle stayed where it is, the leg would no longer reach round."
    )


def test_where_nothing_moves_it_no_input_is_blamed() -> None:
    answer, views = told()
    assert answer.change is not None
    still = LegChange(0.0, 0.0, 30.0, 30.0, 110.0, 110.0, 110.0, 0.0, (("rider.setback_mm", 0.01),))
    text = leg_sentences(replace(answer, change=still, assumed=()), views)[2]

    assert text == "No input of the model that is off by as much as may be moves this by 0.1 mm."


def test_what_it_lacks_and_a_leg_that_is_none_are_said_in_words() -> None:
    assert leg_sentences(LegAnswer(None, "it needs body height"), None) == (
        "A model of the leg gives no second opinion: it needs body height.",
    )
    answer, views = told({**BIKE, "saddle_height_mm": 950.0}, height_mm=1500.0)
    (text,) = leg_sentences(answer, views)
    assert text.startswith(
        "A model of the leg gives no second opinion: the figures stated do not fit a leg on this bike: the "
    )


def test_every_input_that_is_counted_with_has_a_name() -> None:
    assert {name for name, _ in told()[0].given} == set(INPUTS)
