"""Standings as merits on the catalog's fixed curves."""

import pytest

import worlds
from spindlewise.answer.merits import Yardstick
from spindlewise.answer.standing import Standing

YARDSTICK = Yardstick(worlds.criteria())


def merits(criterion, value, low=None, high=None, origin="measured", possible=()):
    standing = Standing(criterion, value, low, high, "", origin, None, "", "", possible)
    return YARDSTICK.merits(standing)


def test_a_figure_without_an_interval_has_one_merit():
    assert merits("weight", 365.0) == (0.5, 0.5, 0.5)


def test_an_interval_gives_low_and_high():
    low, expected, high = merits("weight", 365.0, 348.0, 382.0)

    assert (low, expected, high) == pytest.approx((0.4, 0.5, 0.6))


def test_an_unknown_expects_the_low_end_of_the_plausible_span():
    low, expected, high = merits("weight", None, origin="unknown")

    assert low == expected == pytest.approx((450 - 430) / 170)
    assert high == pytest.approx((450 - 290) / 170)


@pytest.mark.parametrize("origin", ["none", "not applicable"])
def test_what_cannot_be_delivered_has_the_least_merit_and_no_span(origin):
    assert merits("running_time", None, origin=origin) == (0.0, 0.0, 0.0)
    assert merits("detail", None, origin=origin) == (0.0, 0.0, 0.0)


def test_steps_by_name_and_those_that_remain_possible():
    assert merits("detail", "power only", origin="worked out") == (0.6, 0.6, 0.6)
    two = ("power only", "power and balance")
    assert merits("detail", None, origin="unknown", possible=two) == (0.6, 0.6, 0.85)
    assert merits("detail", None, origin="unknown") == (0.0, 0.0, 1.0)
