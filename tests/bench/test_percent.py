"""The difference in percent, and of whose reading."""

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.percent import difference_pct, percent_difference


def test_three_averages_of_one_indoor_ride() -> None:
    """179, 179 and 173 W: -3.4 % (common practice, no source)."""
    assert percent_difference(179.0, 179.0, "hub").pct == 0.0
    found = percent_difference(173.0, 179.0, "hub")
    assert (round(found.pct, 1), found.percent_of) == (-3.4, "hub")


def test_two_averages_of_a_climb_differ_by_the_denominator() -> None:
    """232 against 221 W: -4.7 % of the higher, +5.0 % of the lower (common practice, no source)."""
    assert round(percent_difference(221.0, 232.0).pct, 1) == -4.7
    assert round(percent_difference(232.0, 221.0).pct, 1) == 5.0


@pytest.mark.parametrize("averages", [(0.0, 100.0), (100.0, 0.0), (float("nan"), 1.0), (1.0, float("inf"))])
def test_no_percentage_of_nothing(averages: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="averages above zero"):
        percent_difference(*averages)


def test_a_mean_of_zero_has_no_percentage() -> None:
    assert difference_pct(np.ones(30), np.zeros(30)) is None


def test_a_pure_scale_is_known_without_doubt() -> None:
    power = stepped_power(600)
    found = difference_pct(0.03 * power, power)
    assert found is not None
    assert (found.value, found.low, found.high) == pytest.approx((3.0, 3.0, 3.0))


def test_95_of_100_intervals_hold_the_true_percentage() -> None:
    power = stepped_power(1800)
    noise = autoregressive(np.random.default_rng(26), 400, 1800, 0.9, 6.0)
    held = [difference_pct(0.02 * power + ride, power).holds(2.0) for ride in noise]  # type: ignore[union-attr]
    assert 0.93 <= sum(held) / 400 <= 0.97
