"""Proportional bias."""

import math

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.proportional_bias import proportional_bias


def test_five_percent_high_at_low_and_five_low_at_high_power_is_a_slope() -> None:
    """Averages to nothing and is wrong everywhere (common practice, no source)."""
    power = np.repeat([100.0, 300.0], [1800, 600])
    reading = power * np.where(power < 200.0, 1.05, 0.95)
    assert reading.mean() == pytest.approx(power.mean())
    found = proportional_bias(reading + autoregressive(np.random.default_rng(9), 1, 2400, 0.8, 4.0)[0], power)
    assert found is not None
    assert found.shows
    assert found.slope.holds(-20.0 / 182.5)  # from +5 W at 102.5 W to -15 W at 292.5 W
    assert (found.pct_at_low, found.pct_at_high) == pytest.approx((5.0, -5.0), abs=1.0)


def test_a_steady_ride_has_no_slope() -> None:
    assert proportional_bias(np.full(30, 205.0), np.full(30, 200.0)) is None
    assert proportional_bias(np.zeros(30), np.zeros(30)) is None


def test_percent_of_nothing_is_no_figure() -> None:
    found = proportional_bias([0.0, 0.0, 100.0], [0.0, 0.0, 90.0], independent=True)
    assert found is not None
    assert math.isnan(found.pct_at_low)
    assert found.pct_at_high == pytest.approx(100 * 10 / 95)


@pytest.mark.parametrize(("count", "independent", "least"), [(19, False, 20), (2, True, 3)])
def test_too_few_readings_are_refused(count: int, independent: bool, least: int) -> None:
    with pytest.raises(ValueError, match=f"a slope needs at least {least}"):
        proportional_bias(np.arange(count), np.arange(count), independent=independent)


def test_95_of_100_intervals_hold_the_true_slope_and_intercept() -> None:
    power = stepped_power(1800)
    rng = np.random.default_rng(28)
    one, two = (autoregressive(rng, 400, 1800, 0.9, 3.0) for _ in range(2))
    true = 0.03 / 1.015  # first reads 3 % more per watt: slope of the difference on the mean of both
    found = [proportional_bias(1.03 * power - 4.0 + a, power + b) for a, b in zip(one, two, strict=True)]
    held = sum(each.slope.holds(true) for each in found if each is not None)
    assert 0.93 <= held / 400 <= 0.97
    true = -4.0 + 2.0 * true  # the line of the difference passes through the same points of the mean
    held = sum(each.intercept.holds(true) for each in found if each is not None)
    assert 0.93 <= held / 400 <= 0.97


def test_a_scale_is_so_many_percent_at_any_power_and_an_offset_is_not() -> None:
    power, noise = stepped_power(1800), autoregressive(np.random.default_rng(29), 1, 1800, 0.5, 2.0)[0]
    scaled, shifted = (
        proportional_bias(1.04 * power + noise, power),
        proportional_bias(power + 6 + noise, power),
    )
    assert scaled is not None
    assert shifted is not None
    assert (scaled.shows, scaled.percent_changes) == (True, False)
    assert (shifted.shows, shifted.percent_changes) == (False, True)
    assert shifted.pct_at_low > shifted.pct_at_high + 2.0


def test_unlike_noise_at_low_and_high_power_counts_where_it_is() -> None:
    """Against White's sandwich (1980) of textbook matrices, with a meter that is noisier at high power."""
    rng = np.random.default_rng(30)
    power = rng.uniform(100.0, 300.0, 4000)
    reading = power + rng.standard_normal(4000) * (power / 100.0) ** 3
    found = proportional_bias(reading, power)
    assert found is not None
    table = np.column_stack([np.ones(4000), (reading + power) / 2])
    inverse = np.linalg.inv(table.T @ table)
    residual = reading - power - table @ (inverse @ table.T @ (reading - power))
    sandwich = inverse @ (table.T * residual**2) @ table @ inverse
    for estimate, variance in ((found.intercept, sandwich[0, 0]), (found.slope, sandwich[1, 1])):
        assert (estimate.high - estimate.value) / 1.96 == pytest.approx(variance**0.5, rel=0.12)
