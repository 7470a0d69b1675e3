"""What a series is worth whose neighbours resemble each other."""

import math

import numpy as np
import pytest

from bench.meters import autoregressive
from spindlewise.bench.independence import independence, mean_with_interval


def naive_time(series: np.ndarray) -> float:
    """The same sum, lag by lag and without Fourier transforms."""
    here = ~np.isnan(series)
    count = int(here.sum())
    deviation = np.where(here, series - series[here].mean(), 0.0)
    variance = (deviation**2).sum() / count
    time, lag, least, lags = -1.0, 0, math.inf, max(1, count // 10)
    while lag <= lags:
        pair, weighed = 0.0, 0.0
        for k in (lag, lag + 1):
            partners = int((here[: len(here) - k] & here[k:]).sum())
            rho = (deviation[: len(deviation) - k] * deviation[k:]).sum() / partners / variance
            pair += rho
            weighed += rho * partners / count
        if pair <= 0.0:
            break
        least = min(least, pair)
        time += 2.0 * weighed * least / pair
        lag += 2
    return max(1.0, time / (1.0 - (2 * (lag - 1) + 1) / count))


@pytest.mark.parametrize("phi", [0.0, 0.5, 0.9, 0.995])
@pytest.mark.parametrize("with_gaps", [False, True])
def test_the_time_is_that_of_the_naive_twin(phi: float, with_gaps: bool) -> None:
    series = autoregressive(np.random.default_rng(3), 1, 1400, phi, 4.0)[0]
    if with_gaps:
        series[50:90] = np.nan
        series[::13] = np.nan
    assert independence(series).window > 64 or phi < 0.99  # both ways of summing are seen
    assert independence(series).time == pytest.approx(naive_time(series), rel=1e-9)


@pytest.mark.parametrize("phi", [0.0, 0.5, 0.9])
def test_first_order_noise_has_its_known_time(phi: float) -> None:
    """(1 + phi) / (1 - phi) for a mean and (1 + phi^2) / (1 - phi^2) for a standard deviation."""
    rides = autoregressive(np.random.default_rng(4), 60, 3600, phi, 5.0)
    found = [independence(ride) for ride in rides]
    assert np.mean([each.time for each in found]) == pytest.approx((1 + phi) / (1 - phi), rel=0.15)
    by_squares = np.mean([each.count / each.effective_sd for each in found])
    assert by_squares == pytest.approx((1 + phi**2) / (1 - phi**2), rel=0.1)
    assert np.mean([each.sd**2 for each in found]) == pytest.approx(25.0, rel=0.02)
    assert all(each.settled for each in found)


def test_neighbours_make_the_interval_wider_than_the_naive_one() -> None:
    ride = autoregressive(np.random.default_rng(5), 1, 3600, 0.9, 5.0)[0]
    aware, unaware = independence(ride), independence(ride, independent=True)
    assert 3.5 < aware.standard_error / unaware.standard_error < 5.5  # sqrt(19) = 4.36


def test_slow_drift_beneath_fast_noise_is_found() -> None:
    rng = np.random.default_rng(6)
    drift = autoregressive(rng, 1, 3600, 0.98, 2.0)[0]
    assert independence(drift + 4.0 * rng.standard_normal(3600)).time > 10.0


def test_a_series_that_drifts_throughout_is_not_settled() -> None:
    found = independence(np.linspace(0.0, 10.0, 600))
    assert not found.settled
    assert found.effective < 10.0


def test_readings_that_sway_against_each_other_get_no_credit() -> None:
    found = independence(np.tile([1.0, -1.0], 100))
    assert (found.time, found.effective) == (1.0, 200.0)


def test_a_series_seen_in_patches_bridges_the_lags_that_never_met() -> None:
    series = autoregressive(np.random.default_rng(7), 1, 4000, 0.95, 3.0)[0]
    series[np.arange(4000) % 100 >= 5] = np.nan
    found = independence(series)
    assert found.count == 200
    assert 3.0 < found.time < 8.0  # within a patch of five nearly one reading: 4.6 by hand


def test_equal_readings_have_no_spread() -> None:
    found = independence([7.0] * 30)
    assert (found.sd, found.time, found.standard_error) == (0.0, 1.0, 0.0)


@pytest.mark.parametrize(
    ("series", "independent", "least"),
    [([1.0] * 19, False, 20), ([1.0], True, 2), ([[1.0] * 30], False, 20), ([float("nan")] * 30, False, 20)],
)
def test_too_few_readings_are_refused(series: list[float], independent: bool, least: int) -> None:
    with pytest.raises(ValueError, match=f"at least {least} in one row"):
        independence(series, independent=independent)


@pytest.mark.parametrize("phi", [0.0, 0.9])
def test_95_of_100_intervals_hold_the_true_mean(phi: float) -> None:
    rides = 150.0 + autoregressive(np.random.default_rng(20), 400, 1800, phi, 6.0)
    held = sum(mean_with_interval(ride).holds(150.0) for ride in rides)
    assert 0.93 <= held / 400 <= 0.97


def test_the_spread_of_a_short_ride_is_not_told_too_small() -> None:
    """The mean follows slow noise, which would make the spread about it 9 % too small in variance here."""
    rides = autoregressive(np.random.default_rng(8), 1500, 100, 0.8, 5.0)
    assert np.mean([ride.var() for ride in rides]) == pytest.approx(25.0 * 0.914, rel=0.02)
    assert np.mean([independence(ride).sd ** 2 for ride in rides]) == pytest.approx(25.0, rel=0.03)
