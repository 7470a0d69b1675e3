import numpy as np

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.steady_seconds import MOST_MOVED_W, steady_power_w
from spindlewise.bench.three_meters import three_meters


def test_leaps_zeros_and_gaps_are_left_out_of_all_meters():
    power = np.array([[200.0, 200, 200, 600, 600, 600, 0, 200, 200, 200, 200], [200.0] * 9 + [np.nan, 200]])
    kept = np.isfinite(steady_power_w(power))
    assert (kept[0] == kept[1]).all()
    assert np.flatnonzero(kept[0]).tolist() == [1, 4]


def test_nothing_is_kept_of_two_seconds():
    assert np.isnan(steady_power_w(np.full((3, 2), 200.0))).all()


def test_a_tenth_of_a_second_at_the_sprints_makes_no_noise():
    """Without this a clock that is a tenth of a second off looks noisier than it is."""
    power = stepped_power(2400)
    power[1000:1010] = 900.0
    noise = autoregressive(np.random.default_rng(8), 3, 2400, 0.3, 3.0)
    meters = power + noise
    meters[2, 1:] += 0.3 * np.diff(power)
    all_seconds = three_meters(meters, ("a", "b", "late"))
    steady = three_meters(steady_power_w(meters), ("a", "b", "late"))
    assert all_seconds is not None
    assert steady is not None
    assert all_seconds.meters[2].noise_w.value > 5.0
    assert steady.meters[2].noise_w.holds(3.0)
    assert MOST_MOVED_W < 0.1 * 900
