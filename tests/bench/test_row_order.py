import numpy as np
import pytest

from spindlewise.bench.row_order import row_order

nan = float("nan")


def kept(times):
    return np.flatnonzero(row_order(np.array(times, dtype=float)).kept).tolist()


def test_rows_in_order_all_stay_repeated_times_too():
    assert kept([0, 1, 1, 2]) == [0, 1, 2, 3]


def test_a_clock_set_back_loses_only_the_seconds_it_was_set_back():
    order = row_order(np.array([0.0, 1, 2, 3, 4, 5, 6, 7, 3, 4, 5, 6, 7, 8, 9, 10]))
    assert order.kept.sum() == 12
    assert order.out_of_order == 4


def test_one_wild_time_loses_one_row():
    assert kept([0, 1, 5000, 2, 3]) == [0, 1, 3, 4]
    assert kept([7, 0, 1, 2]) == [1, 2, 3]


def test_rows_without_a_time_go():
    order = row_order(np.array([nan, 0, nan, 1]))
    assert order.kept.tolist() == [False, True, False, True]
    assert order.without_time == 2


def test_a_clock_that_learns_the_date_late_keeps_the_longer_part():
    order = row_order(np.array([0.0, 1, 2, 1e9, 1e9 + 1, 1e9 + 2, 1e9 + 3]))
    assert order.kept.tolist() == [False] * 3 + [True] * 4
    assert (order.beyond_a_jump, order.out_of_order) == (3, 0)


@pytest.mark.parametrize("times", [[], [nan]])
def test_no_times_no_rows(times):
    assert kept(times) == []
