"""Large changes are made in small moves that add up."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.fit.steps import LARGEST_STEP_MM, step_plan


def test_a_small_change_is_one_move_and_no_change_is_none() -> None:
    assert step_plan(4.75).steps_mm == (4.75,)
    assert step_plan(0.0).steps_mm == ()
    assert step_plan(5.0).because == ()
    assert step_plan(15.1 - 10.1).because == (), "5 mm is not above 5 mm for being worked out in binary"
    assert len(step_plan(15.1 - 10.1 + 0.001).steps_mm) == 3
    assert step_plan(3.0, stack_mm=0.1 + 0.2 - 0.3, cleat_mm=1.5, crank_mm=-2.5).because == ()


def test_a_change_above_five_millimetres_is_made_in_steps() -> None:
    plan = step_plan(-9.0)
    assert plan.steps_mm == (-2.5, -2.5, -2.0, -2.0)
    assert plan.because == ("the change is large",)
    assert not plan.confirm_first


def test_the_odd_rest_goes_into_the_last_move() -> None:
    assert step_plan(6.53).steps_mm == (2.5, 2.0, 6.53 - 4.5)


def test_stack_cleat_and_crank_together_call_for_steps_however_small_the_sum() -> None:
    plan = step_plan(3.0, stack_mm=4.0, cleat_mm=1.5, crank_mm=-2.5)
    assert plan.steps_mm == (1.5, 1.5)
    assert plan.because == ("stack, cleat and crank change together",)
    for two in ({"cleat_mm": 1.5}, {"crank_mm": -1.0}):
        assert step_plan(3.0, stack_mm=4.0, **two).because == ()
    assert step_plan(3.0, cleat_mm=4.0, crank_mm=-1.0).because == ()
    assert step_plan(3.0, stack_mm=4.0, crank_mm=-1.0, other_cleat=True).because == plan.because
    assert step_plan(0.0, stack_mm=4.0, cleat_mm=1.0, crank_mm=-5.0).steps_mm == ()


def test_above_fifteen_millimetres_the_figures_are_confirmed_first() -> None:
    assert not step_plan(15.0).confirm_first
    assert step_plan(15.1).confirm_first
    assert step_plan(-15.1).confirm_first
    assert step_plan(1000.0).confirm_first, "the most that is taken for a move of a saddle"


@pytest.mark.parametrize("change_mm", [math.nan, math.inf, -1000.5])
def test_a_change_that_is_none_is_refused(change_mm: float) -> None:
    with pytest.raises(
        ValueError, match=f"^the change is {change_mm} mm; a saddle moves by less than a metre$"
    ):
        step_plan(change_mm)


@settings(deadline=None)
@given(st.floats(-60, 60), st.booleans())
def test_the_moves_add_up_to_the_very_change(change_mm: float, all_three: bool) -> None:
    parts = (1.0, 1.0, 1.0) if all_three else (0.0, 0.0, 0.0)
    plan = step_plan(change_mm, *parts)
    assert sum(plan.steps_mm) == change_mm
    assert all(step % 0.5 == 0 for step in plan.steps_mm[:-1])
    if plan.because:
        assert all(abs(step) <= LARGEST_STEP_MM for step in plan.steps_mm)
    assert all((step > 0) == (change_mm > 0) and step for step in plan.steps_mm)
