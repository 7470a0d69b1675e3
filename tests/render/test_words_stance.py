import worlds
from small_answers import names
from spindlewise.answer.stance import stance
from spindlewise.render.words_stance import stance_sentences

SPAN = {"span": "crank face to pedal centre"}
SLIM = worlds.product("slim", {"pedal_offset_mm": (worlds.seen(52.0, SPAN),)})
WIDE = worlds.product("wide", {"pedal_offset_mm": (worlds.seen(55.0, SPAN, plus_minus=0.5),)})


def said(new=WIDE, **bike):  # type: ignore[no-untyped-def]
    return stance_sentences(stance(SLIM, new, worlds.DAY, worlds.buyer(bike=bike).bike), names())


def test_each_side_and_the_cranks_that_stay() -> None:
    assert said() == (
        "Stance width: 6.0 mm wider in all (left +3.0 mm, right +3.0 mm), give or take 0.7 mm and more "
        "(no plus-minus is stated for slim). "
        "The Q-factor is the cranks' own and stays.",
    )


def test_new_cranks_with_a_known_and_an_unknown_q_factor() -> None:
    (known,) = said(q_factor_mm=150.0, new_q_factor_mm=142.0)
    assert known.endswith("The new cranks' Q-factor adds -8.0 mm: 2.0 mm narrower together.")
    (wider,) = said(q_factor_mm=146.0, new_q_factor_mm=150.0)
    assert wider.endswith("adds +4.0 mm: 10.0 mm wider together.")
    (unknown,) = said(crank_mm=172.5, new_crank_mm=170.0)
    assert unknown.endswith("the new cranks may have another Q-factor, of which nothing is stated.")


def test_washers_of_one_side_and_of_both() -> None:
    width, thread = said(SLIM, new_washers_each_side_mm={"left": 0.0, "right": 1.27})
    assert width.startswith("Stance width: 1.3 mm wider in all (left 0.0 mm, right +1.3 mm).")
    assert thread == (
        "The washers on the right side take 1.3 mm of thread, 1.0 turns: "
        "ask the maker whether enough is left."
    )
    moved_over = said(
        SLIM,
        washers_each_side_mm={"left": 1.0, "right": 0.0},
        new_washers_each_side_mm={"left": 0.0, "right": 1.0},
    )
    assert moved_over[0].startswith("Stance width: no change in all (left -1.0 mm, right +1.0 mm).")
    assert said(SLIM)[0].startswith("Stance width: no change. The Q-factor")


def test_a_missing_offset_is_named() -> None:
    (text,) = said(worlds.product("bare", {"pedal_offset_mm": "unknown"}))
    assert text.startswith("Stance width: the change cannot be said. Not known: the left offset of bare")
