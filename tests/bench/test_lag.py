import numpy as np
import pytest

from spindlewise.bench.lag import find_lag
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

MIXED = [Stretch(240, 150), Stretch(120, 250), Stretch(20, 0, 0), Stretch(12, 800), Stretch(60, 130)] * 3
THIRTIES = [Stretch(30, 400), Stretch(30, 150)] * 20
STEADY = [Stretch(1800, 200)]


def lag_of(plan, seed=1, within_s=120.0, variability=0.06, first=None, **second):
    truth = ride(plan, seed, variability=variability)
    a = record(truth, Meter("a", noise_w=4, noise_memory=0.3, **(first or {})), seed)
    b = record(truth, Meter("b", **({"noise_w": 5, "noise_memory": 0.5} | second)), seed)
    return find_lag(a.times_s, a.power_w, b.times_s, b.power_w, within_s)


@pytest.mark.parametrize("plan", [MIXED, THIRTIES, STEADY], ids=["mixed", "thirties", "steady"])
@pytest.mark.parametrize("late_s", [-37.4, -2.0, 0.0, 0.3, 2.5, 14.75])
def test_the_lag_is_recovered_to_a_fifth_of_a_second(plan, late_s):
    lag = lag_of(plan, late_s=late_s, scale=1.02, loss_pct=2.5)
    assert lag.lag_s == pytest.approx(late_s, abs=0.2)
    assert abs(lag.lag_s - late_s) <= 1.5 * lag.plus_minus_s  # three standard errors
    assert lag.peak > max(0.6, lag.runner_up)


def test_two_seconds_on_thirties_are_65_w_and_no_mean_difference_until_they_are_taken_out():
    """The trap of the design: an offset of clocks looks like scatter, and not like a bias."""
    sharp = [Stretch(30.5, 400), Stretch(30, 150), *[Stretch(30, 400), Stretch(30, 150)] * 19]
    truth = ride(sharp, seed=3, variability=0, rise_s=0)
    a = record(truth, Meter("a"), 3)
    b = record(truth, Meter("b", late_s=2.0), 3)
    difference = b.power_w - a.power_w[2:]
    assert np.sqrt(np.mean(difference**2)) == pytest.approx(64.5, abs=1)
    assert abs(difference.mean()) < 0.5
    lag = find_lag(a.times_s, a.power_w, b.times_s, b.power_w, 20.0)
    assert lag.lag_s == pytest.approx(2.0, abs=0.1)


@pytest.mark.parametrize("rate_hz", [0.5, 4.0])
def test_other_rates_are_recovered_too(rate_hz):
    assert lag_of(MIXED, late_s=3.3, rate_hz=rate_hz).lag_s == pytest.approx(3.3, abs=0.2)


def test_a_doubled_side_with_a_moving_balance_is_recovered():
    assert lag_of(MIXED, late_s=1.7, side="left doubled").lag_s == pytest.approx(1.7, abs=0.2)


def test_a_flat_ride_gives_no_claim():
    lag = lag_of(STEADY, variability=0.0, late_s=2.0)
    assert (lag.lag_s, lag.plus_minus_s, lag.known) == (None, None, False)
    assert lag.because == "too little in common"


def test_a_power_that_never_moves_gives_no_claim():
    times = np.arange(600.0)
    lag = find_lag(times, np.full(600, 200.0), times, np.full(600, 200.0))
    assert lag.because == "nothing moves"
    assert np.isnan(lag.peak)
    assert find_lag(times[:1], times[:1], times, times).because == "nothing moves"
    assert find_lag(times, times * np.nan, times, times).because == "nothing moves"


def test_a_ride_that_repeats_itself_is_ambiguous_in_a_wide_range_and_not_in_a_narrow_one():
    assert lag_of(THIRTIES, variability=0.0, late_s=2.0).because == "ambiguous"
    assert lag_of(THIRTIES, variability=0.0, late_s=2.0, within_s=20).lag_s == pytest.approx(2, abs=0.2)


ONE_SPRINT = [
    Stretch(180, 150), Stretch(120, 220), Stretch(15, 0, 0), Stretch(240, 265), Stretch(40, 0, 0),
    *[Stretch(30, 390), Stretch(30, 150)] * 5, Stretch(12, 850), Stretch(300, 190),
]  # fmt: skip


@pytest.mark.parametrize("seed", range(5))
def test_one_sprint_among_intervals_does_not_hide_the_lag(seed):
    """The sprint holds most of the movement: without it the intervals repeat, with it nothing does."""
    lag = lag_of(ONE_SPRINT, seed, late_s=2.5)
    assert lag.lag_s == pytest.approx(2.5, abs=0.2)
    assert lag.runner_up < 0.5 < lag.peak


@pytest.mark.parametrize("seed", range(5))
def test_hardly_any_wobble_on_intervals_is_still_ambiguous_and_never_a_period_off(seed):
    assert lag_of(THIRTIES, seed, variability=0.005, late_s=70.0).because == "ambiguous"


def test_a_lag_beyond_the_range_is_no_lag_at_its_edge():
    slow = [Stretch(300, 150 + 40 * (k % 3)) for k in range(6)]
    truth = ride(slow, 1, variability=0, rise_s=20)
    a, b = record(truth, Meter("a"), 1), record(truth, Meter("b", late_s=8.0), 1)
    lag = find_lag(a.times_s, a.power_w, b.times_s, b.power_w, 5.0)
    assert lag.because == "at the edge"
    assert lag_of(MIXED, late_s=130.0, within_s=60).lag_s is None


def test_two_different_rides_have_nothing_in_common():
    for seed in range(5):
        a = record(ride(STEADY, seed), Meter("a", noise_w=4), 1)
        b = record(ride(STEADY, seed + 100), Meter("b", noise_w=4), 1)
        assert find_lag(a.times_s, a.power_w, b.times_s, b.power_w).because == "too little in common"


def test_a_peak_that_is_too_flat_for_a_second_is_no_claim():
    """One slow rise alone: its time is not known to the second."""
    times = np.arange(240.0)
    random = np.random.default_rng(4)
    rise = 200 + 150 / (1 + np.exp(-(times - 120) / 20))
    a, b = rise + 0.4 * random.standard_normal(240), rise + 0.4 * random.standard_normal(240)
    lag = find_lag(times, a, times, b, 4.0)
    assert lag.because == "flat"
    assert lag.lag_s is None


def test_dropouts_do_not_drown_the_rest():
    gone = tuple(Dropout(100 + 150 * k, 8) for k in range(10))
    lag = lag_of(STEADY, late_s=2.5, dropouts=gone)
    assert lag.lag_s == pytest.approx(2.5, abs=0.2)


def test_gaps_and_pauses_are_passed_over():
    lag = lag_of(MIXED, late_s=2.5, pauses=((200, 60), (700, 5)), first={"pauses": ((400, 100),)})
    assert lag.lag_s == pytest.approx(2.5, abs=0.2)


def test_the_range_may_lie_about_a_lag_that_is_known():
    truth = ride(MIXED, 1)
    a, b = record(truth, Meter("a", noise_w=3), 1), record(truth, Meter("b", noise_w=3, late_s=40.4), 1)
    lag = find_lag(a.times_s, a.power_w, b.times_s, b.power_w, 5.0, around_s=39.0)
    assert lag.lag_s == pytest.approx(40.4, abs=0.2)


@pytest.mark.parametrize(("within_s", "around_s"), [(0.5, 0), (np.nan, 0), (np.inf, 0), (10, np.nan)])
def test_a_range_that_is_none_is_refused(within_s, around_s):
    with pytest.raises(ValueError, match="one second or more"):
        find_lag(np.arange(9.0), np.arange(9.0), np.arange(9.0), np.arange(9.0), within_s, around_s)


def test_recordings_that_do_not_overlap_share_nothing():
    times = np.arange(300.0)
    power = 200 + 30 * np.sin(times)
    assert find_lag(times, power, times + 5000, power, 20.0).lag_s is None
