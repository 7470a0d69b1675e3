"""Saddle height after a swap, by common practice."""

from __future__ import annotations

import math

import pytest

from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.saddle import Kept, SaddleChange, Side, Stack, practice_change

TOP = "axis to pedal top"
SOLE = "axis to sole"


def change(old: Side, new: Side, **kwargs: object) -> SaddleChange:
    found = practice_change(old, new, **kwargs)  # type: ignore[arg-type]
    assert isinstance(found, SaddleChange)
    return found


def missing(old: Side, new: Side, **kwargs: object) -> list[tuple[str, str]]:
    found = practice_change(old, new, **kwargs)  # type: ignore[arg-type]
    assert isinstance(found, MissingFigures)
    return [(m.product, m.figure) for m in found.missing]


@pytest.mark.parametrize(
    ("stack_mm", "crank_before_mm", "crank_after_mm", "saddle_mm"),
    [(4.0, 172.5, 170.0, 6.5), (-4.0, 170.0, 175.0, -9.0)],
)
def test_higher_stack_raises_and_longer_crank_lowers_the_saddle(
    stack_mm: float, crank_before_mm: float, crank_after_mm: float, saddle_mm: float
) -> None:
    """Common practice, no source."""
    old = Side("plain", Stack(12.0, TOP), crank_mm=crank_before_mm)
    new = Side("tall", Stack(12.0 + stack_mm, TOP), crank_mm=crank_after_mm)
    found = change(old, new, kept=("cleat", "sole"))
    assert found.change_mm == saddle_mm
    assert (found.stack_mm, found.crank_mm) == (stack_mm, crank_before_mm - crank_after_mm)
    assert (found.cleat_mm, found.sole_mm, found.converted) == (0.0, 0.0, ())


def test_every_part_counts_once() -> None:
    old = Side("plain", Stack(10.0, TOP), cleat_mm=5.0, sole_mm=6.0, crank_mm=172.5)
    new = Side("tall", Stack(14.0, TOP), cleat_mm=7.0, sole_mm=9.0, crank_mm=170.0)
    found = change(old, new, kept=())
    assert (found.stack_mm, found.cleat_mm, found.sole_mm, found.crank_mm) == (4.0, 2.0, 3.0, 2.5)
    assert found.change_mm == 11.5


def test_what_is_kept_cancels_though_nobody_knows_it() -> None:
    found = change(Side("plain", Stack(10.0, SOLE)), Side("tall", Stack(11.0, SOLE)))
    assert (found.change_mm, found.basis) == (1.0, SOLE)


def test_a_changed_but_unknown_figure_is_named_and_not_taken_as_zero() -> None:
    old = Side("plain", Stack(10.0, TOP), sole_mm=6.0)
    new = Side("tall", None, cleat_mm=5.0)
    assert missing(old, new, kept=()) == [
        ("plain", "cleat"),
        ("plain", "crank"),
        ("tall", "stack"),
        ("tall", "sole"),
        ("tall", "crank"),
    ]


def test_both_stacks_to_the_sole_have_their_cleats_in_already() -> None:
    old = Side("plain", Stack(17.0, SOLE), cleat_mm=5.0)
    new = Side("tall", Stack(19.0, SOLE), cleat_mm=7.0)
    assert change(old, new).change_mm == 2.0


def test_unlike_bases_are_refused_with_the_figure_that_would_convert_them() -> None:
    found = practice_change(Side("plain", Stack(10.0, TOP)), Side("tall", Stack(19.0, SOLE)))
    assert isinstance(found, MissingFigures)
    (only,) = found.missing
    assert (only.product, only.figure) == ("plain", "cleat")
    assert only.because == (
        "it turns this stack, axis to pedal top, into axis to sole as the other product has it"
    )


@pytest.mark.parametrize("turned", [False, True])
def test_a_known_cleat_converts_axis_to_pedal_top_into_axis_to_sole(turned: bool) -> None:
    to_top = Side("plain", Stack(10.0, TOP, 0.3), cleat_mm=5.5, cleat_plus_minus_mm=0.4)
    to_sole = Side("tall", Stack(19.0, SOLE, 1.2))
    found = change(to_sole, to_top) if turned else change(to_top, to_sole)
    assert found.change_mm == (-3.5 if turned else 3.5)
    assert (found.stack_mm, found.cleat_mm, found.basis) == (found.change_mm, 0.0, SOLE)
    assert found.converted == ("plain",)
    assert found.plus_minus_mm == pytest.approx(1.3)


@pytest.mark.parametrize("turned", [False, True])
def test_a_kept_cleat_converts_whichever_side_knows_its_height(turned: bool) -> None:
    to_top = Side("plain", Stack(10.0, TOP))
    to_sole = Side("tall", Stack(19.0, SOLE), cleat_mm=5.5)
    kept = ("cleat", "sole", "crank")
    pair = (to_sole, to_top) if turned else (to_top, to_sole)
    assert change(*pair, kept=kept).change_mm == (-3.5 if turned else 3.5)
    assert missing(*pair) == [("plain", "cleat")]


def test_plus_minuses_add_in_quadrature_and_those_of_kept_things_cancel() -> None:
    old = Side(
        "plain", Stack(10.0, TOP, 0.3), 5.0, 6.0, 170.0, cleat_plus_minus_mm=9.0, sole_plus_minus_mm=0.5
    )
    new = Side(
        "tall", Stack(14.0, TOP, 0.4), 5.0, 7.0, 170.0, cleat_plus_minus_mm=9.0, sole_plus_minus_mm=1.2
    )
    found = change(old, new, kept=("cleat", "crank"))
    assert found.plus_minus_mm == pytest.approx(math.sqrt(0.09 + 0.16 + 0.25 + 1.44))


def test_the_same_pedal_changes_nothing_whatever_its_stack() -> None:
    for stack in (None, Stack(12.0, SOLE, 0.5)):
        found = change(Side("plain", stack, cleat_mm=5.0), Side("plain", stack, cleat_mm=6.5))
        assert (found.stack_mm, found.cleat_mm, found.change_mm, found.plus_minus_mm) == (0.0, 1.5, 1.5, 0.0)


def test_a_thing_that_is_said_to_stay_cannot_have_two_figures() -> None:
    old, new = Side("plain", Stack(10.0, TOP), crank_mm=170.0), Side("tall", Stack(10.0, TOP), crank_mm=175.0)
    with pytest.raises(ValueError, match=r"the crank is said to stay, yet is 170\.0 before and 175\.0 after"):
        practice_change(old, new)
    with pytest.raises(ValueError, match="the stack is said to stay"):
        practice_change(Side("plain", Stack(10.0, TOP)), Side("plain", Stack(11.0, TOP)))


@pytest.mark.parametrize(
    "bad",
    [
        Side("bad", Stack(-1.0, TOP)),
        Side("bad", Stack(1.0, TOP, math.nan)),
        Side("bad", None, cleat_mm=-0.1),
        Side("bad", None, sole_mm=math.inf),
    ],
)
def test_figures_below_zero_or_not_finite_are_refused(bad: Side) -> None:
    with pytest.raises(ValueError, match=r"of bad is .* mm; it must be zero or more"):
        practice_change(Side("plain", Stack(10.0, TOP)), bad)


@pytest.mark.parametrize(
    ("bad", "named"),
    [
        (Side("bad", Stack(-1.0, TOP)), "stack"),
        (Side("bad", Stack(1.0, TOP, -0.5)), "stack plus-minus"),
        (Side("bad", Stack(1.0, TOP), cleat_mm=-0.1), "cleat"),
        (Side("bad", None, sole_mm=-6.0), "sole"),
        (Side("bad", None, crank_mm=-172.5), "crank"),
        (Side("bad", Stack(1.0, TOP), cleat_plus_minus_mm=-1.0), "cleat plus-minus"),
        (Side("bad", Stack(1.0, TOP), sole_plus_minus_mm=-1.0), "sole plus-minus"),
    ],
)
def test_the_figure_that_cannot_be_is_named(bad: Side, named: str) -> None:
    with pytest.raises(ValueError, match=f"the {named} of bad is -"):
        practice_change(Side("plain", Stack(10.0, TOP)), bad)


@pytest.mark.parametrize("kept", ["cleat", "sole", "crank"])
def test_the_thing_that_stays_and_does_not_is_named(kept: Kept) -> None:
    old = Side("plain", Stack(10.0, TOP), cleat_mm=5.0, sole_mm=6.0, crank_mm=170.0)
    new = Side("tall", Stack(12.0, TOP), cleat_mm=5.5, sole_mm=6.5, crank_mm=172.5)
    with pytest.raises(ValueError, match=f"the {kept} is said to stay"):
        practice_change(old, new, kept=(kept,))


def test_each_missing_figure_says_what_it_is_needed_for() -> None:
    found = practice_change(Side("plain", None), Side("tall", None), kept=())
    assert isinstance(found, MissingFigures)
    assert {(m.figure, m.because) for m in found.missing} == {
        ("stack", "the pedal is changed"),
        ("cleat", "the cleat is changed"),
        ("sole", "the shoe is changed"),
        ("crank", "the crank is changed"),
    }


def test_a_stack_to_the_sole_against_none_at_all_is_missing_on_the_side_that_has_none() -> None:
    assert missing(Side("plain", None), Side("tall", Stack(19.0, SOLE))) == [
        ("plain", "stack"),
        ("plain", "cleat"),
    ]


def test_the_change_says_from_where_to_where_it_was_worked_out() -> None:
    both_top = change(
        Side("plain", Stack(10.0, TOP)), Side("tall", Stack(14.0, TOP)), kept=("cleat", "sole", "crank")
    )
    assert both_top.basis == TOP
    shoes_alone = change(
        Side("plain", None, sole_mm=6.0), Side("plain", None, sole_mm=7.5), kept=("cleat", "crank")
    )
    assert shoes_alone.basis == TOP


def test_a_crank_length_has_no_plus_minus_of_its_own() -> None:
    old = Side("plain", Stack(10.0, TOP, 0.3), crank_mm=172.5)
    new = Side("tall", Stack(14.0, TOP, 0.4), crank_mm=170.0)
    assert change(old, new, kept=("cleat", "sole")).plus_minus_mm == pytest.approx(0.5)
