"""Half a second between two recorders makes no difference where there is none."""

import numpy as np
import pytest

from spindlewise.bench.alignment import align
from spindlewise.bench.between_rows import common_shift, power_between_rows
from spindlewise.bench.recording import recording_of
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride

STEPS = ((60, 160), (45, 280), (80, 190), (30, 330), (70, 140), (12, 420), (90, 150), (25, 0), (120, 240))
PLAN = [Stretch(length_s, power_w) for length_s, power_w in STEPS]


def pair(late_s: float, **more):
    truth = ride(PLAN, 11)
    recordings = [
        record(truth, Meter("first", noise_w=2), 1),
        record(truth, Meter("second", late_s=late_s, **more), 1),
    ]
    aligned = align(recordings, "first")
    return aligned, power_between_rows(aligned, recordings)


@pytest.mark.parametrize("late_s", [0.5, -2.5, 3.4])
def test_what_is_left_below_one_second_is_taken_out(late_s):
    aligned, power = pair(late_s, noise_w=2)
    nearest = np.nanstd(aligned.power_w[0] - aligned.power_w[1])
    read_off = np.nanstd(power[0] - power[1])
    assert power.shape == aligned.power_w.shape
    assert aligned.lags[1].known
    assert 1.5 < read_off < 4.0 < nearest


def test_rows_that_fall_together_stay_as_they_were_written():
    aligned, power = pair(0.0)
    inside = np.isfinite(power).all(axis=0)
    # the lag that was found is not quite zero, and a power moves by that much of a second
    assert np.nanmedian(np.abs(power[1][inside] - aligned.power_w[1][inside])) < 1.5


def test_no_line_is_drawn_over_a_gap():
    times = np.concatenate((np.arange(100.0), np.arange(110.0, 700.0)))
    power = 200 + 60 * np.sin(times / 7)
    holes = power.copy()
    holes[40:43] = np.nan
    recordings = [recording_of("first", times, holes), recording_of("second", times + 0.5, power)]
    aligned = align(recordings, "first")
    found = power_between_rows(aligned, recordings)
    seconds = aligned.seconds
    assert np.isnan(found[:, (seconds > 100) & (seconds < 109)]).all()
    assert np.isnan(found[0, (seconds > 40) & (seconds < 42)]).all()


def test_recorders_of_another_rate_keep_their_means():
    truth = ride(PLAN, 11)
    recordings = [record(truth, Meter("first"), 1), record(truth, Meter("second", rate_hz=4), 1)]
    aligned = align(recordings, "first")
    found = power_between_rows(aligned, recordings)
    assert np.nanmean(found[1]) == pytest.approx(np.nanmean(aligned.power_w[1]), abs=0.5)
    alone = [record(truth, Meter("first", rate_hz=4), 1)]
    assert power_between_rows(align(alone, "first"), alone).shape[0] == 1


def test_a_recording_without_two_powers_gives_nothing():
    recordings = [
        recording_of("first", np.arange(60.0), np.full(60, 200.0)),
        recording_of("second", np.arange(60.0), np.where(np.arange(60) == 9, 200.0, np.nan)),
    ]
    assert np.isnan(power_between_rows(align(recordings, "first"), recordings)[1]).all()


def test_all_meters_are_averaged_alike():
    rows = np.arange(500.0)
    assert common_shift([]) == 0.0
    assert common_shift([rows, rows]) == 0.0
    assert common_shift([rows, rows + 0.5, rows + 0.48]) == 0.25
    assert common_shift([rows, rows + 0.2]) == pytest.approx(0.1)


def test_noise_shrinks_alike_for_meters_half_a_second_apart():
    flat = [Stretch(1200, 200)]
    truth = ride(flat, 3, variability=0.0)
    recordings = [
        record(truth, Meter(n, noise_w=5, late_s=s, step_w=0), 3) for n, s in (("aa", 0), ("bb", 0.5))
    ]
    aligned = align(recordings, "aa")
    found = power_between_rows(aligned, recordings)
    first, second = (float(np.nanstd(row)) for row in found)
    assert 0.7 * 5 < first < 1.02 * 5
    assert first == pytest.approx(second, rel=0.3)


def test_other_recordings_than_the_aligned_are_refused():
    truth = ride([Stretch(60, 200)], 1)
    one, two = (record(truth, Meter(name), 1) for name in ("one", "two"))
    with pytest.raises(ValueError, match="they were aligned as one"):
        power_between_rows(align([one], "one"), [two])
