"""Deming regression."""

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.deming import Deming, deming


def fitted(*args: object, **options: object) -> Deming:
    found = deming(*args, **options)  # type: ignore[arg-type]
    assert found is not None
    return found


def test_swapping_the_meters_turns_the_line_over() -> None:
    rng = np.random.default_rng(17)
    truth = rng.uniform(100, 300, 60)
    one, two = truth + rng.normal(0, 5, 60), 1.1 * truth - 4 + rng.normal(0, 10, 60)
    there = fitted(one, two, error_ratio=4.0, independent=True)
    back = fitted(two, one, error_ratio=0.25, independent=True)
    assert back.scale == pytest.approx(1 / there.scale)
    assert back.offset == pytest.approx(-there.offset / there.scale)


def test_it_is_not_attenuated_as_ordinary_regression_is() -> None:
    rng = np.random.default_rng(18)
    truth = rng.normal(200, 20, 20_000)
    one, two = truth + rng.normal(0, 10, 20_000), truth + rng.normal(0, 10, 20_000)
    assert np.polyfit(one, two, 1)[0] == pytest.approx(0.8, abs=0.02)
    assert fitted(one, two, independent=True).scale == pytest.approx(1.0, abs=0.02)


def test_the_jackknife_leaves_out_one_reading_at_a_time() -> None:
    rng = np.random.default_rng(19)
    one = rng.uniform(100, 300, 25)
    two = one + rng.normal(0, 6, 25)
    left_out = [fitted(np.delete(one, i), np.delete(two, i), independent=True).scale for i in range(25)]
    error = np.sqrt(24 / 25 * ((np.array(left_out) - np.mean(left_out)) ** 2).sum())
    found = fitted(one, two, independent=True)
    assert found.scale_interval is not None
    assert found.scale_interval.high - found.scale == pytest.approx(2.0638985616280205 * error)


@pytest.mark.parametrize("second", [[5.0] * 30, [1.0, -1.0] * 15])
def test_meters_that_do_not_covary_have_no_line(second: list[float]) -> None:
    assert deming(np.repeat([1.0, 2.0, 3.0], 10), second, independent=True) is None


def test_a_ride_too_short_has_a_line_but_no_interval() -> None:
    found = fitted([1.0, 2, 3, 4], [1.0, 2, 3, 5])
    assert (found.scale_interval, found.offset_interval) == (None, None)


def test_a_line_that_hangs_on_one_block_has_no_interval() -> None:
    one, two = np.full(100, 200.0), np.full(100, 203.0)
    one[40:43], two[40:43] = (210.0, 230.0, 220.0), (214.0, 232.0, 225.0)
    found = fitted(one, two)
    assert found.scale_interval is None


@pytest.mark.parametrize(("count", "ratio"), [(2, 1.0), (5, 0.0), (5, -1.0), (5, float("inf"))])
def test_a_wrong_call_is_refused(count: int, ratio: float) -> None:
    with pytest.raises(ValueError, match="at least 3 and a ratio above 0"):
        deming(np.arange(count), np.arange(count), error_ratio=ratio)


def test_95_of_100_intervals_hold_the_true_scale_and_offset() -> None:
    power, rng = stepped_power(1800), np.random.default_rng(33)
    one, two = (autoregressive(rng, 400, 1800, 0.8, 4.0) for _ in range(2))
    found = [fitted(power + a, 1.02 * power - 3.0 + b) for a, b in zip(one, two, strict=True)]
    scales = [each.scale_interval.holds(1.02) for each in found if each.scale_interval]
    offsets = [each.offset_interval.holds(-3.0) for each in found if each.offset_interval]
    assert len(scales) == len(offsets) == 400
    assert 0.93 <= sum(scales) / 400 <= 0.97
    assert 0.93 <= sum(offsets) / 400 <= 0.97
