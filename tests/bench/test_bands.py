"""Agreement by band."""

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.bands import cadence_bands, even_edges, power_bands

NAMES = ("pedals", "hub")
NOISE = autoregressive(np.random.default_rng(62), 2, 3600, 0.7, 3.0)


def test_five_percent_high_at_low_and_low_at_high_power_shows_by_band() -> None:
    hub = np.repeat([100.0, 300.0], [2700, 900])
    pedals = hub * np.where(hub < 200.0, 1.05, 0.95) + NOISE[0]
    assert abs(pedals.mean() / hub.mean() - 1.0) < 0.005
    low, empty, high = power_bands(pedals, hub, (50, 150, 250, 350), names=NAMES, percent_of="hub")
    assert low.difference_pct is not None
    assert high.difference_pct is not None
    assert low.difference_pct.holds(5.0)
    assert high.difference_pct.holds(-5.0)
    assert (low.count, high.count) == (2700, 900)
    assert (empty.count, empty.mean_difference, empty.difference_pct, empty.sd) == (0, None, None, None)


def test_equal_meters_are_equal_in_every_band() -> None:
    """By one meter alone its own errors would sort the bands, and the other would seem low in high ones."""
    power = 200.0 + 20.0 * np.random.default_rng(63).standard_normal(3600)
    rng = np.random.default_rng(64)
    one, two = power + 15.0 * rng.standard_normal(3600), power + 15.0 * rng.standard_normal(3600)
    high_by_one = one >= 230.0
    assert (one - two)[high_by_one].mean() > 10.0
    bands = power_bands(one, two, (140, 170, 200, 230, 260), names=NAMES, percent_of="hub")
    assert sum(band.mean_difference.holds(0.0) for band in bands if band.mean_difference) == 4


def test_cadence_bands_leave_out_unknown_cadence() -> None:
    power, cadence = stepped_power(3600), np.repeat([70.0, 95.0, np.nan], 1200)
    pedals = power * np.where(cadence > 80.0, 1.03, 1.0)
    slow, fast = cadence_bands(pedals, power, cadence, (60, 80, 100), names=NAMES, percent_of="hub")
    assert (slow.count, fast.count) == (1200, 1200)
    assert slow.difference_pct is not None
    assert fast.difference_pct is not None
    assert slow.difference_pct.value == pytest.approx(0.0)
    assert fast.difference_pct.value == pytest.approx(3.0)


def test_the_low_end_is_in_and_the_high_end_is_out() -> None:
    cadence = np.repeat([80.0, 90.0], 60)
    power = np.full(120, 200.0)
    bands = cadence_bands(power, power, cadence, (80, 90, 100), names=NAMES, percent_of="hub")
    assert [band.count for band in bands] == [60, 60]


def test_without_zeros_coasting_is_in_no_band() -> None:
    power = np.repeat([0.0, 200.0], [300, 300])
    with_zeros = power_bands(power, power, (0, 100, 300), names=NAMES, percent_of="mean of both")
    without = power_bands(
        power, power, (0, 100, 300), names=NAMES, percent_of="mean of both", zeros="without zeros"
    )
    assert [band.count for band in with_zeros] == [300, 300]
    assert [band.count for band in without] == [0, 300]
    assert with_zeros[0].difference_pct is None
    assert with_zeros[0].mean_difference is not None


def test_a_band_of_few_seconds_claims_nothing() -> None:
    power = np.repeat([100.0, 200.0], [59, 61])
    few, enough = power_bands(power, power + 1, (0, 150, 300), names=NAMES, percent_of="hub")
    assert (few.count, few.mean_difference) == (59, None)
    assert enough.mean_difference is not None
    assert enough.percent_of == "hub"


def test_even_edges_hold_every_reading() -> None:
    assert even_edges([100.0, 199.0, np.nan], 50.0) == (100.0, 150.0, 200.0)
    assert even_edges([100.0, 200.0], 50.0) == (100.0, 150.0, 200.0, 250.0)
    assert even_edges([-20.0], 50.0) == (-50.0, 0.0)


@pytest.mark.parametrize(("series", "step"), [([], 50.0), ([float("nan")], 50.0), ([1.0], 0.0)])
def test_edges_of_nothing_are_refused(series: list[float], step: float) -> None:
    with pytest.raises(ValueError, match="a step above 0"):
        even_edges(series, step)


@pytest.mark.parametrize(
    ("edges", "percent_of", "least_s", "says"),
    [
        ((100,), "hub", 60, "at least two edges that rise"),
        ((100, 100), "hub", 60, "at least two edges that rise"),
        ((100, 200), "hub", 19, "at least two edges that rise"),
        ((100, 200), "trainer", 60, "it is one of 'pedals', 'hub', 'mean of both'"),
    ],
)
def test_a_wrong_call_is_refused(edges: tuple[float, ...], percent_of: str, least_s: int, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        power_bands([1.0], [1.0], edges, names=NAMES, percent_of=percent_of, least_s=least_s)


def test_cadence_has_the_same_clock() -> None:
    with pytest.raises(ValueError, match="one clock for all"):
        cadence_bands([1.0, 2.0], [1.0, 2.0], [80.0], (60, 100), names=NAMES, percent_of="hub")


def test_sixty_seconds_are_enough_and_the_mean_of_both_is_a_denominator() -> None:
    one, two = np.full(60, 210.0), np.full(60, 190.0)
    (band,) = power_bands(one, two, (0, 400), names=NAMES, percent_of="mean of both")
    assert band.difference_pct is not None
    assert (band.difference_pct.value, band.percent_of) == (pytest.approx(10.0), "mean of both")
