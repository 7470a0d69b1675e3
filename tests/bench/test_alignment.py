from datetime import UTC, datetime

import numpy as np
import pytest

from spindlewise.bench.alignment import UNALIGNED_EDGE_S, align, corrected
from spindlewise.bench.drift import Drift
from spindlewise.bench.lag import Lag
from spindlewise.bench.recording import recording_of
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride

PLAN = [Stretch(240, 150), Stretch(120, 250), Stretch(20, 0, 0), Stretch(12, 800), Stretch(208, 200)]
NOON = datetime(2025, 10, 18, 12, tzinfo=UTC)


def three(plan, **late):
    truth = ride(plan, 7)
    meters = [
        Meter("a", noise_w=3),
        Meter("b", noise_w=3, **late),
        Meter("c", noise_w=3, late_s=-1.0, loss_pct=2),
    ]
    return [record(truth, meter, 7, NOON) for meter in meters]


def test_lags_are_taken_out_and_every_row_stays_a_recorded_one():
    recordings = three(PLAN * 2, late_s=5.0)
    aligned = align(recordings, "a")
    assert aligned.starts_known
    assert aligned.names == ("a", "b", "c")
    assert [lag.lag_s for lag in aligned.lags] == pytest.approx([0, 5, -1], abs=0.1)
    assert aligned.edge_s == (1, 1, 1)
    known = np.isfinite(aligned.power_w).all(axis=0)
    assert known.sum() > 1180
    assert np.std((aligned.power_w[0] - aligned.power_w[1])[known]) < 6
    for row, recording in zip(aligned.power_w, recordings, strict=True):
        np.testing.assert_array_equal(row[np.isfinite(row)], recording.power_w)
    assert aligned.drifts[0] is None
    assert aligned.row("c") == 2


def test_a_drift_that_is_proved_is_taken_out():
    recordings = three(PLAN * 6, late_s=2.0, clock_ppm=600)
    aligned = align(recordings, "a")
    assert aligned.drifts[1].proved
    known = np.isfinite(aligned.power_w[:2]).all(axis=0)
    sharp = np.abs(aligned.power_w[0] - aligned.power_w[1])[known]
    untouched = np.abs(recordings[0].power_w[5:3590] - recordings[1].power_w[3:3588])
    assert np.sqrt(np.mean(sharp**2)) < 0.5 * np.sqrt(np.mean(untouched**2))


def test_no_lag_leaves_a_recording_where_its_clock_puts_it():
    truth = ride([Stretch(600, 200)], 1, variability=0)
    a, b = (record(truth, Meter(name, noise_w=3), 1, NOON) for name in "ab")
    aligned = align([a, b], "a")
    assert aligned.lags[1].lag_s is None
    assert aligned.edge_s == (1, UNALIGNED_EDGE_S)
    np.testing.assert_array_equal(aligned.power_w, [a.power_w, b.power_w])


def test_what_one_recorder_did_not_write_is_said():
    truth = ride(PLAN, 1)
    a, b = record(truth, Meter("a"), 1), record(truth, Meter("b", pauses=((100, 50),)), 1)
    aligned = align([a, b], "a")
    assert aligned.written[0].all()
    assert (~aligned.written[1]).sum() == 50
    assert not aligned.starts_known
    assert aligned.clocks[1].pauses == ((99, 150),)
    assert np.isnan(aligned.left_share).all()
    assert aligned.cadence_rpm.shape == aligned.altitude_m.shape == aligned.power_w.shape


def test_the_seconds_do_not_run_on_to_a_recording_of_another_day():
    times = np.arange(100.0)
    a = recording_of("a", times, times, started_at=NOON)
    b = recording_of("b", times, times, started_at=NOON.replace(month=11))
    aligned = align([a, b], "a", within_s=30)
    assert len(aligned.seconds) == 100
    assert np.isnan(aligned.power_w[1]).all()


def test_the_first_row_of_the_reference_is_second_nothing():
    a = recording_of("a", [50, 51, 52], [1, 2, 3])
    assert align([a], "a").seconds.tolist() == [0, 1, 2]


def test_names_that_do_not_fit_are_refused():
    a = recording_of("a", [0, 1], [1, 2])
    with pytest.raises(ValueError, match="a name of its own"):
        align([a, a], "a")
    with pytest.raises(ValueError, match="no recording is named 'b'"):
        align([a], "b")
    with pytest.raises(ValueError, match="has no rows"):
        align([recording_of("e", [], []), a], "e")


def test_a_drift_that_is_not_proved_is_left_in():
    lag = Lag(2.0, 0.1, 0.9, 0.1, 120.0, "")
    proved = Drift(1e5, 9e4, 1.1e5, 100.0, 3.0, (), "")
    unproved = Drift(1e5, -9e4, 1.1e5, 100.0, 3.0, (), "")
    assert corrected(np.array([213.0]), lag, proved).tolist() == pytest.approx([200.0])
    assert corrected(np.array([213.0]), lag, unproved).tolist() == [211]
    assert corrected(np.array([213.0]), Lag(None, None, 0.1, 0.1, 120.0, "flat"), None).tolist() == [213]
