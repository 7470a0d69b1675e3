from datetime import UTC, date, datetime

import numpy as np
import pytest

from spindlewise.bench.csv_times import times_of

nan = float("nan")


def seconds(texts, kind, day=None):
    times, start, bad = times_of(texts, kind, day)
    return times.tolist(), start, bad


def test_seconds_and_milliseconds_count_from_wherever_the_file_counts():
    assert seconds(["5", "6.25"], "seconds") == ([5, 6.25], None, [])
    assert seconds(["5000", "6250"], "milliseconds") == ([5, 6.25], None, [])


def test_what_is_no_number_is_named_by_its_row():
    times, _, bad = times_of(["1", "x", "1e3", "inf", "1_0", "", "-2"], "seconds")
    np.testing.assert_array_equal(times, [1, nan, nan, nan, nan, nan, -2])
    assert bad == [1, 2, 3, 4, 5]


def test_elapsed_clocks_may_leave_the_hours_out():
    assert seconds(["0:59", "62:03", "1:02:03.5"], "elapsed") == ([59, 3723, 3723.5], None, [])
    assert times_of(["1:60:00", "1:00:60", "1:2:3", "::"], "elapsed")[2] == [0, 1, 2, 3]


def test_the_time_of_day_goes_on_past_midnight_and_starts_with_the_day():
    assert seconds(["23:59:58", "0:00:03"], "time of day") == ([86398, 86403], None, [])
    _, start, _ = times_of(["10:00:00"], "time of day", date(2025, 10, 18))
    assert start == datetime(2025, 10, 18)  # noqa: DTZ001
    times, _, bad = times_of(["23:59:58", "x", "0:00:03", "9:00:00"], "time of day")
    np.testing.assert_array_equal(times, [86398, nan, 86403, 86400 + 9 * 3600])
    assert bad == [1]


def test_timestamps_with_a_zone_start_in_utc():
    texts = ["2025-10-18T11:30:00+02:00", "2025-10-18T09:30:01Z", "2025-10-18T09:30:02.5+00:00"]
    assert seconds(texts, "ISO timestamps") == ([0, 1, 2.5], datetime(2025, 10, 18, 9, 30, tzinfo=UTC), [])


def test_timestamps_without_a_zone_stay_without():
    times, start, bad = times_of(["2025-10-18 09:30:00", "2025-10-18T09:30:01Z", "soon"], "ISO timestamps")
    np.testing.assert_array_equal(times, [0, nan, nan])
    assert start == datetime(2025, 10, 18, 9, 30)  # noqa: DTZ001
    assert bad == [1, 2]


def test_no_timestamp_no_start():
    assert times_of(["x"], "ISO timestamps")[1:] == (None, [0])
    assert times_of(["0001-01-01T00:00:00+10:00"], "ISO timestamps")[1] is None


def test_unix_seconds_have_a_start():
    start = datetime(2025, 10, 18, 9, 30, tzinfo=UTC)
    texts = [str(int(start.timestamp()) + k) for k in (0, 1)]
    assert seconds(texts, "Unix seconds") == ([0, 1], start, [])
    times, _, bad = times_of(["-5", *texts, "9" * 12, "x"], "Unix seconds")
    np.testing.assert_array_equal(times, [nan, 0, 1, nan, nan])
    assert bad == [0, 3, 4]


@pytest.mark.parametrize("kind", ["seconds", "elapsed", "time of day", "ISO timestamps", "Unix seconds"])
def test_no_rows_are_no_times(kind):
    times, start, bad = times_of([], kind)
    assert (len(times), start, bad) == (0, None, [])
