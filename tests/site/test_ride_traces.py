"""Recordings made small for drawing lose no single second that stands out, and close no gap."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from spindlewise.site.ride_traces import Trace, blocks, ends, stepped, trace

nan = float("nan")


def test_a_short_ride_is_drawn_second_by_second():
    found = trace("hub", np.arange(4.0), np.array([200.0, 210.04, 190.0, 205.0]), 780)
    assert found == Trace("hub", (((0.0, 200.0), (1.0, 210.0), (2.0, 190.0), (3.0, 205.0)),))


def test_a_gap_breaks_the_line():
    found = trace("hub", np.arange(5.0), np.array([nan, 200.0, nan, nan, 210.0]), 780)
    assert found.runs == (((1.0, 200.0),), ((4.0, 210.0),))
    assert trace("hub", np.arange(3.0), np.full(3, nan), 780).runs == ()


def test_one_lost_second_of_five_hours_is_still_seen():
    watts = np.full(18_000, 200.0)
    watts[7_123] = 0.0
    watts[9_001] = 990.0
    found = trace("hub", np.arange(18_000.0), watts, 780)
    points = [point for run in found.runs for point in run]
    assert (7123.0, 0.0) in points
    assert (9001.0, 990.0) in points
    assert len(points) <= 2 * 780 + 2


@given(st.lists(st.one_of(st.floats(0, 1500), st.just(nan)), min_size=1, max_size=400), st.integers(5, 60))
def test_what_is_drawn_was_recorded_and_reaches_as_far(watts, width):
    values = np.array(watts)
    found = trace("hub", np.arange(float(len(values))), values, width)
    points = [point for run in found.runs for point in run]
    known = values[np.isfinite(values)]
    assert all(round(float(values[int(second)]), 1) == watt for second, watt in points)
    assert [second for second, _ in points] == sorted({second for second, _ in points})
    if len(known):
        assert ends([found]) == (round(float(known.min()), 1), round(float(known.max()), 1))


def test_block_means_with_half_of_a_block_known():
    row = np.array([[1.0, 3.0, nan, nan, nan, nan, 5.0, nan, nan]])
    found = blocks(np.arange(9.0), row, 3, 100)
    assert found.length_s == 3
    assert found.starts_s == (0.0, 3.0, 6.0)
    assert found.means[0][0] == 2.0
    assert np.isnan(found.means[0][1])
    assert np.isnan(found.means[0][2])


@pytest.mark.parametrize(("count", "length"), [(600, 30), (2400, 30), (18_000, 90), (18_001, 90)])
def test_longer_rides_have_longer_blocks(count, length):
    found = blocks(np.arange(float(count)), np.ones((1, count)), 30, 240)
    assert found.length_s == length
    assert len(found.starts_s) <= 240


def test_blocks_begin_at_whole_minutes_and_what_is_left_at_the_ends_is_no_block():
    """One meter began a second before the others: that second is no row of a table."""
    found = blocks(np.arange(-1.0, 200.0), np.arange(-1.0, 200.0)[None, :], 60, 100)
    assert found.starts_s == (0.0, 60.0, 120.0)
    assert found.means[0] == (29.5, 89.5, 149.5)
    assert blocks(np.arange(-40.0, 120.0), np.ones((1, 160)), 60, 100).starts_s == (-40.0, 0.0, 60.0)


def test_a_ride_shorter_than_half_a_block_is_one_block():
    assert blocks(np.arange(20.0), np.ones((1, 20)), 60, 100).starts_s == (0.0,)


def test_block_means_as_a_line_break_where_there_is_none():
    means = blocks(np.arange(9.0), np.array([[1.0, 1.0, 1.0, nan, nan, nan, 2.0, 2.0, 2.0]]), 3, 100)
    assert stepped("hub", means, 0).runs == (((1.5, 1.0),), ((7.5, 2.0),))


def test_nothing_reaches_from_nothing_to_nothing():
    assert ends([]) == (0.0, 0.0)
