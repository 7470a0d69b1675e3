"""Two recordings on shared seconds, and what moves in them."""

import numpy as np
import pytest

from spindlewise.bench.movements import (
    movements,
    on_shared_seconds,
    overlaid,
    without_lone_standstill,
)


def test_rows_on_whole_seconds_stay_as_they_are_and_a_gap_stays_a_gap():
    times = np.array([0.0, 1, 2, 3, 9, 10])
    power = np.array([100.0, 110, 120, 130, 190, 200])
    found = on_shared_seconds(times, power, np.arange(11.0), np.arange(11.0))
    known = np.isfinite(found.first_w)
    assert found.first_w[known].tolist() == power.tolist()
    assert found.second_w[10:21].tolist() == list(range(11))  # ten seconds before the first row too
    assert (found.later_s, found.rows_s) == (0.0, 1)


def test_rows_up_to_five_seconds_apart_are_joined():
    times = np.array([0.0, 5, 10])
    found = on_shared_seconds(times, times * 10, np.arange(11.0), np.arange(11.0))
    assert found.first_w[10:21].tolist() == [10.0 * t for t in range(11)]
    assert found.rows_s == 5


def test_each_recording_keeps_its_own_part_of_the_second():
    power = np.random.default_rng(3).uniform(100, 300, 60)
    found = on_shared_seconds(np.arange(60.0) + 0.2, power, np.arange(60.0) + 7.9, power)
    assert found.later_s == pytest.approx(-0.3)
    known = found.second_w[np.isfinite(found.second_w)]
    np.testing.assert_allclose(known, power[60 - len(known) :])
    assert len(known) >= 59  # the first may lie a rounding before its row


def test_four_rows_a_second_become_their_mean_at_its_own_time():
    times = np.arange(0.0, 30.0, 0.25)
    found = on_shared_seconds(times, times * 100, np.arange(30.0), np.arange(30.0))
    assert found.later_s == pytest.approx(0.125)
    assert found.first_w[15] == pytest.approx(100 * (5 - 0.125))
    assert found.rows_s == 1


def test_without_rows_there_are_no_seconds():
    none = on_shared_seconds(np.empty(0), np.empty(0), np.arange(9.0), np.arange(9.0))
    assert len(none.first_w) == len(none.second_w) == 0
    one = on_shared_seconds(np.arange(9.0), np.full(9, np.nan), np.arange(9.0), np.arange(9.0))
    assert len(one.first_w) == 0


def test_a_movement_is_that_of_the_mean_of_three_seconds():
    power = np.random.default_rng(4).uniform(100, 300, 20)
    means = np.convolve(power, np.ones(3) / 3, "valid")
    np.testing.assert_allclose(movements(power), 3 * np.diff(means))


@pytest.mark.parametrize("written_on", [0.0, 207.0])
def test_a_dropout_is_left_out_of_both_whatever_is_written_instead(written_on):
    power = 200.0 + np.arange(40.0)
    lost = power.copy()
    lost[10:18] = written_on
    for one, two in ((power, lost), (lost, power)):
        kept = [np.flatnonzero(np.isnan(part)).tolist() for part in without_lone_standstill(one, two)]
        assert kept[0] == kept[1] == list(range(10, 19))


def test_coasting_that_both_read_is_kept_and_so_is_a_second_at_its_edge():
    power = 200.0 + np.arange(40.0)
    power[10:18] = 0.0
    later = np.roll(power, 1)
    for part in without_lone_standstill(power, later):
        assert np.isfinite(part).all()


@pytest.mark.parametrize("lag", [-3, 0, 2])
def test_what_is_overlaid_is_a_lag_apart(lag):
    first, second = overlaid(np.arange(10.0), np.arange(10.0), lag)
    assert set(second - first) == {lag}
    assert len(first) == 10 - abs(lag)
