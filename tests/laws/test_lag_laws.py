"""Laws of the lag: moving a recording moves it, swapping two flips its sign, scale says nothing of time."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.bench.clock import on_seconds
from spindlewise.bench.lag import find_lag
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride

seeds = st.integers(0, 30)
PLAN = [Stretch(150, 150), Stretch(90, 250), Stretch(20, 0, 0), Stretch(100, 190)]


def pair(seed, late_s=0.0):
    truth = ride(PLAN * 2, seed)
    a = record(truth, Meter("a", noise_w=3, noise_memory=0.3), seed)
    b = record(truth, Meter("b", noise_w=4, noise_memory=0.3, late_s=late_s), seed)
    return a.times_s, a.power_w, b.times_s, b.power_w


@settings(deadline=None, max_examples=40)
@given(seeds, st.floats(-25, 25))
def test_the_lag_is_recovered_to_a_fifth_of_a_second(seed, late_s):
    lag = find_lag(*pair(seed, late_s), 60)
    assert lag.lag_s is not None
    assert abs(lag.lag_s - late_s) < 0.2


@settings(deadline=None, max_examples=40)
@given(seeds, st.integers(-40, 40), st.floats(-0.5, 0.5))
def test_moving_a_recording_moves_its_lag(seed, whole, part):
    ta, a, tb, b = pair(seed)
    before = find_lag(ta, a, tb, b, 60).lag_s
    exactly = find_lag(ta, a, tb + whole, b, 60).lag_s
    nearly = find_lag(ta, a, tb + whole + part, b, 60).lag_s
    assert abs(exactly - before - whole) < 0.02
    assert abs(nearly - before - whole - part) < 0.15


@settings(deadline=None, max_examples=40)
@given(seeds, st.floats(-25, 25))
def test_swapping_the_two_flips_the_sign(seed, late_s):
    ta, a, tb, b = pair(seed, late_s)
    there, back = find_lag(ta, a, tb, b, 60), find_lag(tb, b, ta, a, 60)
    assert abs(there.lag_s + back.lag_s) < 1e-6
    assert abs(there.peak - back.peak) < 1e-9
    assert abs(there.plus_minus_s - back.plus_minus_s) < 1e-6


@settings(deadline=None, max_examples=25)
@given(seeds, st.floats(0.5, 2.0), st.floats(-20, 100))
def test_scale_and_offset_say_nothing_of_time(seed, scale, offset_w):
    ta, a, tb, b = pair(seed, 3.3)
    assert abs(find_lag(ta, a, tb, b).lag_s - find_lag(ta, a, tb, scale * b + offset_w).lag_s) < 1e-6


@settings(deadline=None, max_examples=25)
@given(seeds)
def test_independent_noise_is_never_a_claim(seed):
    random = np.random.default_rng(seed)
    times = np.arange(900.0)
    a, b = (200 + 10 * random.standard_normal(900) for _ in range(2))
    assert find_lag(times, a, times, b).lag_s is None


@settings(deadline=None, max_examples=60)
@given(st.lists(st.tuples(st.floats(0, 50), st.floats(0, 500)), max_size=60))
def test_the_common_clock_invents_nothing(rows):
    rows = sorted(rows)
    times, values = (np.array([row[k] for row in rows], dtype=float) for k in (0, 1))
    laid = on_seconds(times, values, 0, 52)
    filled = np.isfinite(laid)
    assert set(np.flatnonzero(filled).tolist()) == {int(np.floor(t + 0.5)) for t in times.tolist()}
    if len(rows):
        assert values.min() - 1e-9 <= np.nanmin(laid)
        assert np.nanmax(laid) <= values.max() + 1e-9
    total = sum(laid[s] * np.sum(np.floor(times + 0.5) == s) for s in np.flatnonzero(filled).tolist())
    assert abs(total - values.sum()) < 1e-6
