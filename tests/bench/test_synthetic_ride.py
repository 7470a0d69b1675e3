"""The generator gives back what was asked of it, so that what is recovered from it can be believed."""

import numpy as np
import pytest

from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

STEADY = ride([Stretch(1200, 200)], seed=1)
COASTS = ride([Stretch(60, 200), Stretch(30, 0, 0), Stretch(60, 200)], seed=2, variability=0)


def mean_of(**faults):
    return float(np.nanmean(record(STEADY, Meter("m", step_w=0, **faults), 1).power_w))


def test_same_seed_same_ride_and_the_order_of_meters_does_not_matter():
    first = record(STEADY, Meter("a", noise_w=5), 3)
    record(STEADY, Meter("b", noise_w=5), 3)
    again = record(ride([Stretch(1200, 200)], seed=1), Meter("a", noise_w=5), 3)
    np.testing.assert_array_equal(first.power_w, again.power_w)
    assert not np.array_equal(first.power_w, record(STEADY, Meter("a", noise_w=5), 4).power_w)
    assert not np.array_equal(first.power_w, record(STEADY, Meter("b", noise_w=5), 3).power_w)


def test_scale_offset_and_loss_are_those_asked_for():
    truth = mean_of()
    assert mean_of(scale=1.02) == pytest.approx(1.02 * truth)
    assert mean_of(offset_w=4) == pytest.approx(truth + 4)
    assert mean_of(loss_pct=2.5) == pytest.approx(0.975 * truth)
    assert mean_of(scale=1.02, loss_pct=2.5, offset_w=-3) == pytest.approx(1.02 * 0.975 * truth - 3)


def test_a_doubled_side_reads_twice_its_share():
    steady = ride([Stretch(600, 200)], seed=1, share_wander=0, left_share=0.47)
    both, left, right = (
        record(steady, Meter("m", side=side, step_w=0), 1).power_w
        for side in ("both", "left doubled", "right doubled")
    )
    np.testing.assert_allclose(left / both, 0.94)
    np.testing.assert_allclose(right / both, 1.06)


def test_the_balance_wanders_about_its_middle():
    moving = ride([Stretch(3600, 200)], seed=4, left_share=0.48, share_wander=0.01)
    assert np.std(moving.left_share) == pytest.approx(0.01, rel=0.5)
    told = record(moving, Meter("m", tells_balance=True), 1).left_share
    assert np.nanmean(told) == pytest.approx(0.48, abs=0.01)
    assert np.isnan(record(moving, Meter("m"), 1).left_share).all()


def test_the_noise_has_the_spread_and_the_memory_asked_for():
    long = ride([Stretch(20_000, 200)], seed=5, variability=0)
    for rate in (1.0, 4.0):
        noise = record(long, Meter("m", noise_w=6, noise_memory=0.5, step_w=0, rate_hz=rate), 1).power_w - 200
        assert np.std(noise) == pytest.approx(6, rel=0.05)
        second = int(rate)
        assert np.corrcoef(noise[:-second], noise[second:])[0, 1] == pytest.approx(0.5, abs=0.05)


def test_a_late_clock_stamps_late_and_a_fast_clock_gains():
    step = ride([Stretch(3000, 100), Stretch(1000, 300)], seed=1, variability=0, rise_s=0)

    def passes(**faults):
        row = record(step, Meter("m", step_w=0, **faults), 1)
        return np.interp(200, row.power_w[2990:3020], row.times_s[2990:3020])

    assert passes() == pytest.approx(3000)
    assert passes(late_s=2.0) == pytest.approx(3002)
    assert passes(clock_ppm=1000) == pytest.approx(3003, abs=0.01)


def test_nothing_is_read_while_the_rider_coasts():
    row = record(COASTS, Meter("m", offset_w=10, noise_w=5), 1)
    assert (row.power_w[61:89] == 0).all()
    assert (row.cadence_rpm[61:89] == 0).all()
    assert row.power_w[95] > 150


@pytest.mark.parametrize(("how", "value"), [("zero", 0), ("missing", np.nan), ("held", 200)])
def test_a_dropout_is_recorded_as_asked(how, value):
    row = record(COASTS, Meter("m", tells_balance=True, dropouts=(Dropout(20, 5, how),)), 1)
    np.testing.assert_array_equal(row.power_w[20:25], [value] * 5)
    assert np.isnan(row.left_share[20:25]).all()
    assert row.power_w[19] == row.power_w[25] == 200


def test_a_dropout_from_the_first_row_on_has_nothing_to_hold():
    row = record(COASTS, Meter("m", dropouts=(Dropout(0, 5, "held"),)), 1)
    assert (row.power_w[:5] == 0).all()


def test_a_pause_has_no_rows_and_a_late_beginning_none_before():
    row = record(COASTS, Meter("m", begins_s=10, pauses=((20, 30),)), 1)
    assert row.times_s.tolist() == [*range(10, 20), *range(50, 150)]


def test_rates_and_steps_are_those_asked_for():
    quick = record(STEADY, Meter("m", rate_hz=4, step_w=5), 1)
    np.testing.assert_allclose(np.diff(quick.times_s), 0.25)
    assert (quick.power_w % 5 == 0).all()
    slow = record(STEADY, Meter("m", rate_hz=0.5), 1)
    np.testing.assert_allclose(np.diff(slow.times_s), 2)


def test_a_climb_gains_its_metres():
    climb = ride([Stretch(100, 200), Stretch(300, 250, climb_m=60)], seed=1)
    assert climb.altitude_m[-1] - climb.altitude_m[0] == pytest.approx(60)


def test_laps_are_pressed_by_the_meters_own_clock():
    assert record(COASTS, Meter("m", late_s=2, laps_s=(60,)), 1).laps_s == (62,)


def test_a_plan_without_seconds_and_a_rate_of_nothing_are_refused():
    with pytest.raises(ValueError, match="no seconds"):
        ride([], seed=1)
    with pytest.raises(ValueError, match="more than zero"):
        record(STEADY, Meter("m", rate_hz=0), 1)
