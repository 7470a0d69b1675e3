"""Laws of the leg model: a higher stack never lowers the saddle, and size is only size."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.fit.leg import Contact, Rider, longest_reach_mm
from spindlewise.fit.leg_change import saddle_change_mm

riders = st.builds(
    Rider,
    st.just(430.0),
    st.just(430.0),
    st.floats(50, 90),
    st.floats(600, 800),
    st.floats(68, 80),
    st.floats(-15, 35),
    st.floats(-15, 35),
    st.floats(-30, 60),
    st.floats(40, 120),
)
contacts = st.builds(Contact, st.floats(8, 40), st.floats(145, 185), st.floats(60, 160))


@settings(deadline=None, max_examples=40)
@given(riders, contacts, st.floats(0.01, 15))
def test_a_higher_stack_never_lowers_the_saddle(rider: Rider, old: Contact, more_mm: float) -> None:
    taller = replace(old, axis_to_foot_mm=old.axis_to_foot_mm + more_mm)
    assert saddle_change_mm(rider, old, taller) > 0


@settings(deadline=None, max_examples=40)
@given(riders, contacts, st.floats(0.01, 15))
def test_a_longer_crank_never_raises_the_saddle(rider: Rider, old: Contact, more_mm: float) -> None:
    assert saddle_change_mm(rider, old, replace(old, crank_mm=old.crank_mm + more_mm)) < 0


@settings(deadline=None, max_examples=40)
@given(riders, contacts, contacts)
def test_there_and_back_is_nothing(rider: Rider, old: Contact, new: Contact) -> None:
    there = saddle_change_mm(rider, old, new)
    raised = replace(rider, saddle_height_mm=rider.saddle_height_mm + there)
    assert saddle_change_mm(raised, new, old) == pytest.approx(-there, abs=1e-6)


@settings(deadline=None, max_examples=40)
@given(riders, contacts, contacts)
def test_everything_twice_as_large_moves_twice_as_far(rider: Rider, old: Contact, new: Contact) -> None:
    def doubled(part: Rider | Contact) -> dict[str, float]:
        names = [name for name in part.__slots__ if name.endswith("_mm")]
        return {name: 2 * getattr(part, name) for name in names}

    twice = saddle_change_mm(
        replace(rider, **doubled(rider)), replace(old, **doubled(old)), replace(new, **doubled(new))
    )
    assert twice == pytest.approx(2 * saddle_change_mm(rider, old, new), abs=1e-6)


@settings(deadline=None, max_examples=40)
@given(riders, contacts, contacts)
def test_the_longest_reach_is_kept(rider: Rider, old: Contact, new: Contact) -> None:
    moved = saddle_change_mm(rider, old, new)
    assert longest_reach_mm(rider, new, moved) == pytest.approx(longest_reach_mm(rider, old), abs=1e-7)


@settings(deadline=None, max_examples=40)
@given(riders, contacts, st.floats(0.1, 10))
def test_a_level_foot_and_no_cleat_change_give_symmetric_swaps(
    rider: Rider, old: Contact, by_mm: float
) -> None:
    """As far up there as down and back: exactly under an upright tube, very nearly under any other."""
    level = replace(rider, pitch_up_deg=0.0, pitch_down_deg=0.0)
    taller = replace(old, axis_to_foot_mm=old.axis_to_foot_mm + by_mm)

    def both_ways(tube_deg: float) -> float:
        on_this = replace(level, seat_tube_angle_deg=tube_deg)
        return saddle_change_mm(on_this, old, taller) + saddle_change_mm(on_this, taller, old)

    assert both_ways(90.0) == pytest.approx(0.0, abs=1e-6)
    assert abs(both_ways(level.seat_tube_angle_deg)) < 0.001 * by_mm * by_mm
