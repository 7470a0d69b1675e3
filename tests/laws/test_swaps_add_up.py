"""Laws of the swap: there and back is nothing, the same is nothing, and two swaps are one."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.fit.saddle import SaddleChange, Side, Stack, StackBasis, practice_change
from spindlewise.fit.stance import Pedals, StanceChange, stance_change

millimetres = st.floats(0, 40)
BASES: tuple[StackBasis, ...] = ("axis to pedal top", "axis to sole")


def sides(product: str) -> st.SearchStrategy[Side]:
    stacks = st.builds(Stack, millimetres, st.sampled_from(BASES), st.floats(0, 2))
    cranks = st.floats(150, 185)
    return st.builds(Side, st.just(product), stacks, millimetres, millimetres, cranks, st.floats(0, 2))


def pedals(product: str) -> st.SearchStrategy[Pedals]:
    return st.builds(Pedals, st.just(product), millimetres, millimetres, st.floats(0, 4), st.floats(0, 4))


def saddle(old: Side, new: Side) -> SaddleChange:
    found = practice_change(old, new, kept=())
    assert isinstance(found, SaddleChange)
    return found


def stance(old: Pedals, new: Pedals) -> float:
    found = stance_change(old, new)
    assert isinstance(found, StanceChange)
    return found.width_mm


@settings(deadline=None)
@given(sides("a"), sides("b"))
def test_there_and_back_is_nothing(a: Side, b: Side) -> None:
    there, back = saddle(a, b), saddle(b, a)
    assert there.change_mm == pytest.approx(-back.change_mm, abs=1e-9)
    assert there.plus_minus_mm == pytest.approx(back.plus_minus_mm)


@settings(deadline=None)
@given(sides("a"))
def test_the_same_for_the_same_is_nothing(a: Side) -> None:
    assert saddle(a, a).change_mm == 0


@settings(deadline=None)
@given(sides("a"), sides("b"), sides("c"))
def test_swaps_add_up_like_or_unlike_the_bases(a: Side, b: Side, c: Side) -> None:
    by_way_of = saddle(a, b).change_mm + saddle(b, c).change_mm
    assert saddle(a, c).change_mm == pytest.approx(by_way_of, abs=1e-9)


@settings(deadline=None)
@given(sides("a"), sides("b"))
def test_the_parts_add_up_to_the_change(a: Side, b: Side) -> None:
    found = saddle(a, b)
    parts = found.stack_mm + found.cleat_mm + found.sole_mm + found.crank_mm
    assert found.change_mm == pytest.approx(parts, abs=1e-9)


@settings(deadline=None)
@given(pedals("a"), pedals("b"), pedals("c"))
def test_stances_add_up_and_return(a: Pedals, b: Pedals, c: Pedals) -> None:
    assert stance(a, a) == 0
    assert stance(a, b) == pytest.approx(-stance(b, a), abs=1e-9)
    assert stance(a, b) + stance(b, c) == pytest.approx(stance(a, c), abs=1e-9)
