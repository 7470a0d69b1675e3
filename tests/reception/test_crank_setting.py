"""A wrong crank length in the head unit."""

from __future__ import annotations

import math

import pytest

from spindlewise.reception.crank_setting import crank_setting_error


@pytest.mark.parametrize(
    ("set_mm", "ridden_mm", "error_pct"),
    [(170, 172.5, -1.449275), (172.5, 170, 1.470588), (172.5, 172.5, 0), (165, 175, -5.714286)],
)
def test_the_reading_scales_with_the_length_that_is_set(
    set_mm: float, ridden_mm: float, error_pct: float
) -> None:
    """Power is force times crank length times angular speed; common practice, no source."""
    assert crank_setting_error(set_mm, ridden_mm).error_pct == pytest.approx(error_pct, abs=1e-6)


def test_watts_at_threshold_power() -> None:
    assert crank_setting_error(170, 172.5, 276).error_w == pytest.approx(-4)
    assert crank_setting_error(170, 172.5).error_w is None


def test_forty_newton_metres_at_ninety_a_minute() -> None:
    """The same torque read with the wrong lever: 376.99 W with the lever set right."""
    force_n, turns = 40 / 0.1725, 90 / 60
    true_w, shown_w = (force_n * lever * 2 * math.pi * turns for lever in (0.1725, 0.170))

    found = crank_setting_error(170, 172.5, true_w)

    assert true_w == pytest.approx(376.99111843077515)
    assert found.error_w == pytest.approx(shown_w - true_w)


@pytest.mark.parametrize("wrong", [(0, 170, 250), (170, -1, 250), (170, math.nan, 250), (170, 170, math.inf)])
def test_figures_that_cannot_be_are_refused(wrong: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="more than zero and finite"):
        crank_setting_error(*wrong)


@pytest.mark.parametrize(
    ("wrong", "named"),
    [
        ((-170, 170, 250), "set_mm is -170"),
        ((170, 0, 250), "ridden_mm is 0"),
        ((170, 170, -1), "threshold_power_w is -1"),
    ],
)
def test_the_figure_that_cannot_be_is_named(wrong: tuple[float, float, float], named: str) -> None:
    with pytest.raises(ValueError, match=f"^{named};"):
        crank_setting_error(*wrong)


def test_lengths_in_metres_give_the_same_error_and_come_back_as_they_were_given() -> None:
    """Only the ratio counts, and a figure below one is a figure; the report names what was set and ridden."""
    found = crank_setting_error(0.170, 0.1725, 0.5)

    assert (found.set_mm, found.ridden_mm) == (0.170, 0.1725)
    assert found.error_pct == pytest.approx(crank_setting_error(170, 172.5).error_pct)
    assert found.error_w == pytest.approx(-0.5 * 2.5 / 172.5)
