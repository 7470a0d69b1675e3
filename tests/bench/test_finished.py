import numpy as np

from spindlewise.bench.finished import Rows, finish

nan = float("nan")


def finished(times, power, lines=None, **more):
    rows = Rows(np.array(times, dtype=float), np.array(power, dtype=float), **more)
    return finish(rows, "a", None, "a.csv", "", [], lines)


def test_the_rows_out_of_order_are_left_out_and_said_at_their_line():
    recording, problems = finished([0, 1, 900, 2, 3], [1, 2, 3, 4, 5], lines=range(2, 7))
    assert recording.power_w.tolist() == [1, 2, 4, 5]
    assert [(p.rule, p.place.line) for p in problems] == [("recording-time-backwards", 4)]


def test_a_jump_of_the_clock_is_said():
    recording, problems = finished([0, 1e9, 1e9 + 1], [1, 2, 3])
    assert recording.times_s.tolist() == [1e9, 1e9 + 1]
    assert [p.rule for p in problems] == ["recording-clock-jump"]


def test_laps_are_kept_where_their_row_is():
    recording, _ = finished([0, 1, 900, 2, 3], [1, 2, 3, 4, 5], lap_begins=[2, 3])
    assert recording.laps_s == (2,)


def test_what_no_ride_has_is_left_out():
    recording, problems = finished([0, 1], [200, 65535], left_share=np.array([0.5, 47]))
    np.testing.assert_array_equal(recording.power_w, [200, nan])
    np.testing.assert_array_equal(recording.left_share, [0.5, nan])
    assert [p.rule for p in problems] == ["recording-implausible"] * 2
    assert recording.problems == tuple(problems)


def test_no_power_that_could_be_true_is_no_recording():
    recording, problems = finished([0, 1], [65535, 65535])
    assert recording is None
    assert [p.rule for p in problems] == ["recording-implausible", "recording-no-power"]
