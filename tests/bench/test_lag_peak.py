"""Between two seconds: the peak of the correlation, and how well it is known."""

import math

import numpy as np
import pytest

from spindlewise.bench.lag_peak import refined_lag, spread_of_blocks
from spindlewise.bench.movements import SharedSeconds, on_shared_seconds
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

PLAN = [Stretch(200, 150), Stretch(40, 0, 0), *[Stretch(30, 300), Stretch(30, 160)] * 6, Stretch(300, 210)]


def powers(seed, late_s, stamped=(0.0, 0.0), rate_hz=1.0, **second):
    truth = ride(PLAN, seed)
    a = record(truth, Meter("a", noise_w=3.0, noise_memory=0.3), seed)
    b = record(truth, Meter("b", late_s=late_s, noise_w=4.0, rate_hz=rate_hz, **second), seed)
    return on_shared_seconds(a.times_s + stamped[0], a.power_w, b.times_s + stamped[1], b.power_w)


@pytest.mark.parametrize("late_s", [-0.5, -0.3, 0.0, 0.15, 0.35, 0.5])
def test_no_part_of_a_second_is_favoured(late_s):
    """Errors over many rides cancel at every part of a second; a parabola alone is off by up to 0.04 s."""
    errors = [refined_lag(powers(seed, late_s), round(late_s))[0] - late_s for seed in range(25)]
    assert abs(np.mean(errors)) < 0.011
    assert np.std(errors) < 0.04


def test_parts_of_a_second_in_the_stamps_count_too():
    lag, plus_minus = refined_lag(powers(3, 0.4, stamped=(0.35, 0.85)), 1)
    assert abs(lag - 0.9) <= 1.5 * plus_minus


@pytest.mark.parametrize("written", ["zero", "held", "missing"])
def test_dropouts_hardly_move_it_and_hardly_widen_it(written):
    gone = tuple(Dropout(start, 8.0, written) for start in (90.0, 320.0, 700.0))
    whole, torn = refined_lag(powers(5, 0.3), 0), refined_lag(powers(5, 0.3, dropouts=gone), 0)
    assert torn[0] == pytest.approx(whole[0], abs=0.02)
    assert torn[1] < 1.6 * whole[1]


def test_rows_two_seconds_apart_know_it_less_well():
    dense, sparse = refined_lag(powers(6, 0.3), 0), refined_lag(powers(6, 0.3, rate_hz=0.5), 0)
    assert abs(sparse[0] - 0.3) <= sparse[1]
    assert sparse[1] > max(dense[1], 0.02)


def test_the_interval_is_never_narrower_than_what_rows_of_a_second_tell():
    truth = ride(PLAN, 8)
    a = record(truth, Meter("a", step_w=0), 8)
    lag, plus_minus = refined_lag(on_shared_seconds(a.times_s, a.power_w, a.times_s, a.power_w), 0)
    assert (lag, plus_minus) == (pytest.approx(0.0, abs=1e-9), pytest.approx(0.01, abs=1e-9))


def test_where_hardly_anything_moves_nothing_is_told():
    still = np.full(600, 200.0)
    once = still.copy()
    once[320:] = 260.0
    for power in (still, once):
        found = refined_lag(SharedSeconds(power, power, 0.0, 1), 0)
        assert all(math.isnan(each) for each in found)


def test_a_peak_that_is_not_near_is_none():
    random = np.random.default_rng(9)
    power = np.cumsum(random.standard_normal(900)) + 200
    assert math.isnan(refined_lag(SharedSeconds(power, np.roll(power, 5), 0.0, 1), 1)[0])


def test_the_spread_of_blocks_is_the_standard_error_of_a_mean():
    readings = np.random.default_rng(10).standard_normal(40)
    without = np.array([np.delete(readings, i).mean() for i in range(40)])
    error, freedom = spread_of_blocks(without)
    assert error == pytest.approx(readings.std(ddof=1) / math.sqrt(40))
    assert 25 < freedom <= 39


def test_the_degrees_of_freedom_are_those_of_the_few_blocks_that_matter():
    random = np.random.default_rng(11)
    found = [
        spread_of_blocks(np.concatenate([random.standard_normal(5), 0.01 * random.standard_normal(25)]))[1]
        for _ in range(400)
    ]
    assert 4.0 < np.median(found) < 9.0
    assert spread_of_blocks(np.ones(12)) == (0.0, 11.0)
