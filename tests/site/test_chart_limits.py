import numpy as np
import pytest

from drawn_pictures import in_order, texts
from spindlewise.bench.limits import limits_of_agreement
from spindlewise.bench.proportional_bias import proportional_bias
from spindlewise.site.chart_limits import limits_chart, limits_shown
from spindlewise.site.picture import Picture


def shown(seconds=2000, seed=1, spikes=()):
    random = np.random.default_rng(seed)
    power = random.uniform(100, 400, seconds)
    one = power + 5.0 + random.normal(0, 4, seconds)
    two = power + random.normal(0, 4, seconds)
    for at, watts in spikes:
        one[at] += watts
    two[10] = np.nan
    return limits_shown(("pedals", "hub"), one, two, limits_of_agreement(one - two))


def picture(found):
    return Picture("limits-1", "pedals less hub", "Said.", limits_chart, found)


def test_every_compared_second_is_in_one_disc():
    found = shown(spikes=[(100, 300.0), (200, -300.0)])
    assert sum(cell.count for cell in found.cells) == 1999
    assert sum(cell.count for cell in found.cells if cell.beyond) == 2
    assert len(found.cells) < 1200
    in_order(picture(found))


def test_mean_and_limits_are_named_with_their_watts():
    found = shown()
    named = [text for text in texts(picture(found)) if "limit" in text or "mean " in text]
    assert named[0].startswith("upper limit +")
    assert named[1].startswith("mean +5")
    assert named[2].startswith("lower limit −")
    assert found.lower[0] == pytest.approx(5 - 1.96 * 32**0.5, abs=1.0)


def test_a_long_ride_takes_no_more_room():
    assert len(shown(18_000).cells) < 1.6 * len(shown(3_000).cells)


def test_what_lies_beyond_is_drawn_at_the_edge():
    found = shown(spikes=[(100, 300.0)])
    (far,) = (cell for cell in found.cells if cell.beyond)
    assert found.differences[0] < far.difference_w < found.differences[1]


def test_two_that_read_the_same_can_be_drawn():
    one = np.full(100, 200.0)
    found = limits_shown(("pedals", "hub"), one, one, limits_of_agreement(np.zeros(100)))
    assert [(cell.count, cell.beyond) for cell in found.cells] == [(100, False)]
    in_order(picture(found))


def test_a_difference_that_changes_with_power_has_its_line():
    power = np.random.default_rng(3).uniform(100, 400, 2000)
    one, two = 0.9 * power + 25.0 + np.random.default_rng(4).normal(0, 3, 2000), power
    slope = proportional_bias(one, two)
    found = limits_shown(("pedals", "hub"), one, two, limits_of_agreement(one - two), slope)
    (low_w, high_by), (high_w, low_by) = found.slope
    assert 100 < low_w < 130 < 370 < high_w < 400
    assert high_by > 8
    assert low_by < -8
    in_order(picture(found))
    ends = [{"x": low_w, "y": high_by}, {"x": high_w, "y": low_by}]
    assert ends in limits_chart(found)["datasets"].values()
    level = proportional_bias(power + 5.0 * power / 200 + np.random.default_rng(5).normal(0, 3, 2000), power)
    assert limits_shown(("pedals", "hub"), one, two, limits_of_agreement(one - two), level).slope == ()
