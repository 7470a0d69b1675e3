"""Seconds and watts per gram on a climb."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from spindlewise.cost.climb import (
    Climb,
    Road,
    climb_seconds,
    climbing_speed_m_s,
    extra_power_w,
    power_needed_w,
    seconds_per_gram,
)

ALPINE = Climb(length_m=10_000.0, gradient=0.08, mass_kg=80.0, power_w=250.0)


def test_at_the_speed_found_the_power_is_just_enough() -> None:
    speed = climbing_speed_m_s(ALPINE)
    assert power_needed_w(speed, 0.08, 80.0) == pytest.approx(250.0, abs=1e-9)
    assert climb_seconds(ALPINE) == 10_000.0 / speed


def test_with_gravity_alone_speed_is_power_over_weight_and_rise() -> None:
    """Without drag or rolling only the bearings are left beside gravity, which makes a quadratic."""
    bare = Road(0.0, 0.0, 0.0, 1.2, 1.0, 10.0)
    speed = climbing_speed_m_s(replace(ALPINE, gradient=0.75, mass_kg=100.0, power_w=600.0), bare)
    force = 100 * 10 * 0.6 + 0.091
    assert speed == pytest.approx((-force + math.sqrt(force**2 + 4 * 0.0087 * 600)) / (2 * 0.0087))


def test_the_speed_is_the_real_root_of_the_cubic() -> None:
    import numpy as np

    road = Road()
    angle = math.atan(0.08)
    force = 80 * 9.81 * (math.sin(angle) + 0.0032 * math.cos(angle)) + 0.091
    drag = 0.5 * road.air_density_kg_m3 * (road.drag_area_m2 + road.spoke_drag_area_m2)
    (root,) = (r.real for r in np.roots([drag, 0.0087, force, -250 * 0.976]) if abs(r.imag) < 1e-9)
    assert climbing_speed_m_s(ALPINE) == pytest.approx(root, rel=1e-12)


def test_seconds_per_gram_is_what_two_climbs_differ_by() -> None:
    heavier, lighter = replace(ALPINE, mass_kg=80.1), replace(ALPINE, mass_kg=79.9)
    by_difference = (climb_seconds(heavier) - climb_seconds(lighter)) / 200
    assert seconds_per_gram(ALPINE) == pytest.approx(by_difference, rel=1e-6)


def test_another_road_is_climbed_by_its_own_figures() -> None:
    gravel = replace(Road(), rolling=0.012)
    slower = climbing_speed_m_s(ALPINE, gravel)
    assert slower < climbing_speed_m_s(ALPINE)
    assert climb_seconds(ALPINE, gravel) == 10_000.0 / slower
    heavier, lighter = replace(ALPINE, mass_kg=80.1), replace(ALPINE, mass_kg=79.9)
    by_difference = (climb_seconds(heavier, gravel) - climb_seconds(lighter, gravel)) / 200
    assert seconds_per_gram(ALPINE, gravel) == pytest.approx(by_difference, rel=1e-6)


def test_extra_power_is_what_two_masses_differ_by_at_one_speed() -> None:
    for road in (Road(), replace(Road(), drivetrain_share=0.9, rolling=0.012)):
        more = power_needed_w(5.0, 0.08, 80.1, road) - power_needed_w(5.0, 0.08, 80.0, road)
        assert extra_power_w(100.0, 5.0, 0.08, road) == pytest.approx(more, rel=1e-9)


def test_from_the_flat_to_one_in_one_and_the_least_of_riders() -> None:
    for gradient in (0.0, 1.0):
        assert climbing_speed_m_s(replace(ALPINE, gradient=gradient)) > 0
    toy = Climb(length_m=0.5, gradient=0.5, mass_kg=0.5, power_w=0.5)
    assert power_needed_w(climbing_speed_m_s(toy), 0.5, 0.5) == pytest.approx(0.5)


def test_a_head_wind_costs_and_saved_grams_give_back() -> None:
    assert power_needed_w(8.0, 0.0, 80.0, wind_m_s=3.0) > power_needed_w(8.0, 0.0, 80.0)
    assert extra_power_w(-100.0, 5.0, 0.08) == -extra_power_w(100.0, 5.0, 0.08)


@pytest.mark.parametrize("figure", ["length_m", "mass_kg", "power_w"])
@pytest.mark.parametrize("value", [0.0, -1.0, math.inf, math.nan])
def test_a_climb_that_cannot_be_is_refused(figure: str, value: float) -> None:
    with pytest.raises(ValueError, match=f"^a climb's {figure} is {value}; it must be more than zero$"):
        replace(ALPINE, **{figure: value})


@pytest.mark.parametrize("gradient", [-0.01, 1.01, 8.0, math.nan])
def test_a_gradient_that_is_no_climb_or_is_in_percent_is_refused(gradient: float) -> None:
    with pytest.raises(
        ValueError, match=r"^a gradient of \S+ was given; a climb has 0 to 1 \(8 % is 0\.08\)$"
    ):
        replace(ALPINE, gradient=gradient)


@pytest.mark.parametrize("figure", ["drag_area_m2", "rolling", "gravity_m_s2"])
@pytest.mark.parametrize("value", [-0.1, math.inf])
def test_a_road_that_cannot_be_is_refused(figure: str, value: float) -> None:
    with pytest.raises(
        ValueError, match=f"^the road's {figure} is {value}; it must be zero or more and finite$"
    ):
        replace(Road(), **{figure: value})


@pytest.mark.parametrize("share", [0.0, 1.01, 97.6])
def test_a_drivetrain_that_loses_all_or_gains_is_refused(share: float) -> None:
    with pytest.raises(ValueError, match=f"^a drivetrain passes on more than 0 and up to 1, not {share}$"):
        Road(drivetrain_share=share)
