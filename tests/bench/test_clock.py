from datetime import UTC, datetime

import numpy as np

from spindlewise.bench.clock import clock_report, on_seconds, starts_s
from spindlewise.bench.recording import recording_of

nan = float("nan")
NOON = datetime(2025, 10, 18, 12, tzinfo=UTC)


def on(times, values, first=0, count=5):
    return on_seconds(np.array(times, dtype=float), np.array(values, dtype=float), first, count)


def test_a_row_a_second_keeps_its_values():
    np.testing.assert_array_equal(on([0, 1, 2, 3, 4], [1, 2, 3, 4, 5]), [1, 2, 3, 4, 5])


def test_several_rows_a_second_and_repeated_times_give_the_mean():
    np.testing.assert_array_equal(on([0, 0.25, 1, 1], [10, 20, 1, 3], count=2), [15, 2])


def test_gaps_stay_empty_and_missing_values_are_not_averaged():
    np.testing.assert_array_equal(on([0, 3, 3.1], [1, nan, 4]), [1, nan, nan, 4, nan])


def test_rows_outside_are_left_out():
    np.testing.assert_array_equal(on([-3, 9, 10, 11.4, 12], [9, 1, 2, 3, 9], first=9, count=3), [1, 2, 3])


def test_no_second_gets_a_value_that_nobody_recorded():
    values = on([0, 5], [1, 6], count=6)
    assert np.isfinite(values).sum() == 2


def test_the_report_of_a_clock():
    report = clock_report(np.array([0, 1, 2, 2, 4, 5, 30, 31.0]))
    assert (report.interval_s, report.repeated, report.gaps, report.pauses) == (1, 1, 1, ((5, 30),))
    slow = clock_report(np.arange(0, 600, 5.0))
    assert (slow.interval_s, slow.gaps, slow.pauses) == (5, 0, ())
    stood = clock_report(np.array([7.0, 7.0]))
    assert np.isnan(stood.interval_s)
    assert (stood.repeated, stood.pauses) == (1, ())
    assert clock_report(np.array([])).repeated == 0


def test_starts_that_the_files_know_are_used():
    one = recording_of("a", [0, 1], [1, 1], started_at=NOON)
    two = recording_of("b", [0, 1], [1, 1], started_at=NOON.replace(second=30))
    assert starts_s([two, one]) == ((30, 0), True)


def test_starts_that_cannot_be_set_against_each_other_begin_with_the_first_row():
    one = recording_of("a", [5, 6], [1, 1], started_at=NOON)
    two = recording_of("b", [2, 3], [1, 1], started_at=NOON.replace(tzinfo=None))
    three = recording_of("c", [], [])
    assert starts_s([one, two]) == ((-5, -2), False)
    assert starts_s([one, three]) == ((-5, 0), False)
