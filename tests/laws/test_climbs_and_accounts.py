"""Laws of cost: heavier never climbs faster, stronger never slower, and more hours never cost less."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.cost.climb import Climb, climb_seconds, climbing_speed_m_s, power_needed_w, seconds_per_gram
from spindlewise.cost.ownership import Upkeep, ownership

climbs = st.builds(Climb, st.floats(100, 30_000), st.floats(0, 0.25), st.floats(45, 150), st.floats(60, 500))
hours = st.integers(0, 900).map(Decimal)
parts = st.builds(
    Upkeep,
    st.just("part"),
    st.integers(0, 90).map(Decimal),
    st.one_of(st.none(), st.integers(1, 500).map(Decimal)),
    st.one_of(st.none(), st.integers(1, 5).map(Decimal)),
    st.booleans(),
)


@settings(deadline=None)
@given(climbs, st.floats(0.001, 20))
def test_heavier_never_climbs_faster(climb: Climb, more_kg: float) -> None:
    assert climb_seconds(replace(climb, mass_kg=climb.mass_kg + more_kg)) > climb_seconds(climb)
    assert seconds_per_gram(climb) > 0


@settings(deadline=None)
@given(climbs, st.floats(0.1, 100))
def test_stronger_never_climbs_slower(climb: Climb, more_w: float) -> None:
    assert climb_seconds(replace(climb, power_w=climb.power_w + more_w)) < climb_seconds(climb)


@settings(deadline=None)
@given(climbs)
def test_speed_and_power_are_one_anothers_inverse(climb: Climb) -> None:
    needed = power_needed_w(climbing_speed_m_s(climb), climb.gradient, climb.mass_kg)
    assert abs(needed - climb.power_w) < 1e-8


@settings(deadline=None)
@given(st.lists(parts, max_size=4), st.integers(1, 9).map(Decimal), hours, hours)
def test_more_hours_never_cost_less(
    some: list[Upkeep], years: Decimal, first: Decimal, second: Decimal
) -> None:
    fewer, more = sorted((first, second))
    assert (
        ownership(Decimal(9), years, fewer, some).known_total
        <= ownership(Decimal(9), years, more, some).known_total
    )


@settings(deadline=None)
@given(st.lists(parts, max_size=4), st.integers(1, 9).map(Decimal), hours)
def test_lines_add_up_and_every_part_is_either_priced_or_unknown(
    some: list[Upkeep], years: Decimal, ridden: Decimal
) -> None:
    account = ownership(Decimal(9), years, ridden, some)
    assert sum(line.amount for line in account.lines) == account.known_total
    assert len(account.lines) + len(account.unknown) == len(some) + 1
