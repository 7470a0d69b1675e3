import numpy as np
import pytest

from spindlewise.bench.drift import find_drift, robust_line
from spindlewise.bench.lag import Lag, find_lag
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride

HOUR = [Stretch(300, 150), Stretch(120, 250), Stretch(20, 0, 0), Stretch(12, 800), Stretch(448, 220)] * 4
NO_LAG = Lag(None, None, 0.0, 0.0, 120.0, "ambiguous")


def drift_of(plan, seed=1, overall=None, within_s=60.0, variability=0.06, **faults):
    truth = ride(plan, seed, variability=variability)
    a = record(truth, Meter("a", noise_w=4), seed)
    b = record(truth, Meter("b", noise_w=5, **faults), seed)
    pair = (a.times_s, a.power_w, b.times_s, b.power_w)
    return find_drift(*pair, overall or find_lag(*pair, within_s), within_s)


@pytest.mark.parametrize("ppm", [-150, 0, 120, 400])
@pytest.mark.parametrize("seed", [1, 2])
def test_the_drift_is_recovered_within_its_interval(ppm, seed):
    drift = drift_of(HOUR, seed, late_s=3.3, clock_ppm=ppm)
    assert drift.low_ppm <= ppm <= drift.high_ppm
    assert drift.ppm == pytest.approx(ppm, abs=45)
    assert drift.proved == (ppm != 0)
    assert drift.over_an_hour_s == pytest.approx(ppm * 0.0036, abs=0.16)
    assert drift.middle_lag_s == pytest.approx(3.3 + ppm * 1e-6 * 1800, abs=0.15)
    assert len(drift.windows) >= 6


def test_windows_are_searched_far_where_the_ride_has_no_lag_as_a_whole():
    assert drift_of(HOUR, overall=NO_LAG, late_s=30.0).middle_lag_s == pytest.approx(30, abs=0.2)


def test_a_long_ride_has_longer_windows_not_more():
    drift = drift_of(HOUR * 5, clock_ppm=20)
    assert len(drift.windows) <= 48
    assert drift.ppm == pytest.approx(20, abs=8)


def test_a_short_ride_gives_no_claim():
    drift = drift_of([Stretch(60, 150), Stretch(60, 250)] * 8)
    assert (drift.ppm, drift.proved, drift.over_an_hour_s) == (None, False, None)
    assert drift.because == "too few windows"


def test_a_flat_ride_and_no_ride_at_all_give_no_claim():
    assert drift_of([Stretch(3600, 200)], variability=0).because == "too few windows"
    nothing = np.empty(0)
    assert find_drift(nothing, nothing, nothing, nothing, NO_LAG).windows == ()


def test_a_clock_that_was_set_in_between_is_no_drift():
    truth = ride(HOUR, 1)
    a, b = record(truth, Meter("a", noise_w=4), 1), record(truth, Meter("b", noise_w=5), 1)
    times = np.where(b.times_s > 1900, b.times_s + 6.0, b.times_s)
    pair = (a.times_s, a.power_w, times, b.power_w)
    drift = find_drift(*pair, find_lag(*pair))
    assert drift.because == "the clock jumps"
    assert drift.ppm is None


def test_the_line_does_not_mind_a_third_of_wrong_points():
    x = np.arange(12.0)
    y = 2.0 * x - 1.0
    y[[2, 5, 9]] += [40, -30, 25]
    slope, low, high, intercept = robust_line(x, y)
    assert slope == pytest.approx(2)
    assert intercept == pytest.approx(-1)
    assert low <= 2 <= high


def test_points_at_one_x_have_no_line():
    with pytest.raises(ValueError, match="needs two"):
        robust_line(np.array([1.0, 1.0]), np.array([1.0, 2.0]))
