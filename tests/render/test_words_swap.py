import worlds
from small_answers import names
from spindlewise.answer.crank_caution import CrankCaution
from spindlewise.answer.gram_worth import NO_CLIMB
from spindlewise.answer.swap import Swap, swap
from spindlewise.answer.swap_asked import SwapAsked
from spindlewise.reception.crank_setting import crank_setting_error
from spindlewise.render.words_swap import (
    saddle_sentences,
    swap_blocks,
    swap_sentences,
    tool_sentences,
    weight_sentence,
)

BIKE = {"crank_mm": 172.5, "saddle_height_mm": 745.0, "seat_tube_deg": 73.5}


def swapped(old_mm: float, new_mm: float, new: dict | None = None, **buyer: object) -> Swap:  # type: ignore[type-arg]
    old_pedal = worlds.plain("old", observations={"stack_mm": (worlds.stack(old_mm),)})
    new_pedal = worlds.product("new", {"stack_mm": (worlds.stack(new_mm),), **(new or {})})
    return swap(old_pedal, new_pedal, worlds.DAY, worlds.buyer(bike=BIKE, **buyer), ("Take care.",))


def test_up_down_and_no_change() -> None:
    texts = [saddle_sentences(swapped(11.0, new), names())[0] for new in (14.0, 8.0, 11.1)]
    assert texts[0].startswith("Saddle: up 3.0 mm by common practice")
    assert (
        "Unrounded 3.0 mm along the tube: 2.9 mm higher and 0.9 mm further back, "
        "so the drop to the bars grows by 2.9 mm." in texts[0]
    )
    assert texts[1].startswith("Saddle: down 3.0 mm")
    assert "2.9 mm lower and 0.9 mm further forward, so the drop to the bars shrinks by 2.9 mm" in texts[1]
    assert texts[2].startswith("Saddle: no change")


def test_the_leg_model_and_the_difference_of_both() -> None:
    body = {"height_mm": 1800.0, "foot_pitch_bottom_deg": 20.0}
    text = saddle_sentences(swapped(8.0, 17.0, body=body), names())[1]
    assert text.startswith("A model of the leg, which lets the ankle move, says up ")
    assert ": the 1:1 rule overstates it by " in text
    agreeing = saddle_sentences(swapped(11.0, 11.1, body=body), names())[1]
    assert agreeing.endswith("both agree.")


def test_what_the_leg_model_lacks_is_named() -> None:
    assert saddle_sentences(swapped(11.0, 14.0), names())[1] == (
        "A model of the leg gives no second opinion: it needs body height, or thigh and shank."
    )


def test_a_large_change_goes_in_steps_that_add_up() -> None:
    text = saddle_sentences(swapped(8.0, 15.0), names())[-1]
    assert text.startswith(
        "Move it in 3 steps with some days of riding on each: up 2.5 mm, up 2.5 mm then up 2.0 mm."
    )
    assert "the change is large" in text
    assert "That steps begin above 5 mm and are of 2.5 mm at most is a design choice" in text


def test_one_step_is_followed_by_days_of_riding_where_three_things_change_together() -> None:
    reef = {"bolts": "three-bolt", "pattern": "Reef", "height_mm": 5.5}
    old = worlds.plain("old", observations={"stack_mm": (worlds.stack(11.0),)})
    new = worlds.product("new", {"stack_mm": (worlds.stack(15.0),)}, cleat=reef)
    bike = {**BIKE, "new_crank_mm": 175.0}
    found = swap(old, new, worlds.DAY, worlds.buyer(bike=bike), ())
    assert saddle_sentences(found, names())[-1] == (
        "Ride some days before anything else is moved. Why so: stack, cleat and crank change together."
    )


def test_unlike_bases_are_said_to_be_brought_together() -> None:
    found = swapped(8.0, 15.0, {"stack_mm": (worlds.stack(15.0, "axis to sole"),)})
    assert any("was brought to the sole" in text for text in saddle_sentences(found, names()))


def test_missing_figures_are_named_once() -> None:
    found = swapped(8.0, 15.0, {"stack_mm": "unknown", "pedal_offset_mm": "unknown", "weight_g": "unknown"})
    text = " ".join(swap_sentences(found, names()))
    assert text.count("Not known: the stack of new (the pedal is changed).") == 1
    assert "Stance width: the change cannot be said." in text
    assert "Weight: the change cannot be said. Weight of New: " in text


def test_weight_stance_and_tools() -> None:
    found = swapped(11.0, 14.0)
    assert weight_sentence(found) == (
        "Weight: 30 g heavier, between +28 and +32 g (from 300 g measured to 330 g measured)."
    )
    assert tool_sentences(found)[:2] == (
        "Tools: to take the old ones off, hex key 8 mm; to put the new ones on, hex key 8 mm.",
        "Fitting torque: 35 N m, claimed.",
    )


def test_a_torque_that_nobody_states_is_asked_of_the_maker() -> None:
    text = tool_sentences(swapped(11.0, 14.0, {"fitting_torque_nm": "unknown"}))[1]
    assert text.startswith("Fitting torque: unknown")
    assert text.endswith("ask the maker.")


def test_wider_by_washers_and_what_they_take_of_the_thread() -> None:
    bike = {**BIKE, "new_washers_each_side_mm": 1.5}
    new_pedal = worlds.product("new")
    found = swap(worlds.plain("old"), new_pedal, worlds.DAY, worlds.buyer(bike=bike), ())
    texts = swap_sentences(found, names())
    assert any("3.0 mm wider in all (left +1.5 mm, right +1.5 mm)" in text for text in texts)
    assert sum("take 1.5 mm of thread, 1.2 turns" in text for text in texts) == 2


def test_the_whole_ends_with_the_cautions() -> None:
    found = SwapAsked(swapped(11.0, 14.0), None, NO_CLIMB)
    assert "Take care." in swap_blocks(found, names())[-1].items  # type: ignore[union-attr]


def test_head_unit_and_climb_stand_in_the_swap_of_a_rider() -> None:
    crank = CrankCaution(crank_setting_error(172.5, 170.0), stated=True)
    items = swap_blocks(SwapAsked(swapped(11.0, 14.0), crank, "the bike's weight"), names())[2].items  # type: ignore[union-attr]
    assert items[-2].endswith("power reads 1.5 % high. Set it right; no score here counts that error.")
    assert items[-1] == "What the weight is worth on your climb needs the bike's weight."
