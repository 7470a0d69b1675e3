"""Lin's concordance coefficient; the published figures stand in tests/references/test_lin_1989.py."""

import math

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.concordance import concordance


def test_a_ride_has_an_interval_over_blocks() -> None:
    power, noise = stepped_power(1800), autoregressive(np.random.default_rng(16), 2, 1800, 0.8, 12.0)
    found = concordance(power + noise[0], 1.05 * power + noise[1])
    assert found is not None
    assert found.interval is not None
    assert found.interval.low < found.value < found.interval.high < 1.0
    assert found.value == pytest.approx(found.precision * found.accuracy)
    assert found.scale_shift == pytest.approx(1 / 1.05, abs=0.04)
    assert found.location_shift < 0.0
    assert found.count == 1800


def test_a_ride_too_short_has_a_figure_but_no_interval() -> None:
    found = concordance([1.0, 2, 3, 4, 6], [2.0, 3, 4, 5, 6])
    assert found is not None
    assert found.interval is None


def test_three_readings_have_no_interval_of_lins() -> None:
    found = concordance([1.0, 2, 4], [2.0, 3, 4], independent=True)
    assert found is not None
    assert found.interval is None


def test_readings_on_one_line_have_no_interval() -> None:
    found = concordance([1.0, 2, 3, 4], [1.0, 2, 3, 4], independent=True)
    assert found is not None
    assert (found.value, found.interval) == (pytest.approx(1.0), None)


def test_readings_without_any_correlation() -> None:
    found = concordance([1.0, 2, 1, 2], [1.0, 1, 2, 2], independent=True)
    assert found is not None
    assert (found.value, found.interval) == (0.0, None)
    assert math.isnan(found.accuracy)


@pytest.mark.parametrize("still", [[5.0] * 30, [0.0] * 30])
def test_a_meter_that_stands_still_has_no_coefficient(still: list[float]) -> None:
    assert concordance(still, np.arange(30.0)) is None
    assert concordance(np.arange(30.0), still) is None


def test_a_difference_in_one_block_alone_leaves_no_interval() -> None:
    power = stepped_power(600)
    other = power.copy()
    other[300:303] += (1.0, -2.0, 1.0)
    found = concordance(power, other)
    assert found is not None
    assert found.interval is None
    spike, elsewhere = np.zeros(600), np.zeros(600)
    spike[300:302], elsewhere[300:302] = (5.0, 1.0), (1.0, 6.0)
    found = concordance(spike, elsewhere)
    assert found is not None
    assert found.interval is None


@pytest.mark.parametrize(("first", "ddof"), [([1.0, 2.0, 3.0], 2), ([1.0, 2.0, float("nan")], 0)])
def test_a_wrong_call_is_refused(first: list[float], ddof: int) -> None:
    with pytest.raises(ValueError, match="at least 3 and 0 or 1"):
        concordance(first, [1.0, 2.0, 3.5], ddof=ddof)


def test_gaps_are_left_out_in_pairs() -> None:
    with_gaps = concordance([1.0, 2, np.nan, 3, 9], [2.0, 3, 7, 5, np.nan], independent=True)
    without = concordance([1.0, 2, 3], [2.0, 3, 5], independent=True)
    assert with_gaps is not None
    assert without is not None
    assert with_gaps.value == pytest.approx(without.value)


def test_the_interval_over_blocks_holds_the_true_coefficient() -> None:
    """Never less often than it says; more often where, as here, every ride has the same power."""
    power = stepped_power(1200)
    one, two = (autoregressive(np.random.default_rng(s), 200, 1200, 0.7, 8.0) for s in (31, 32))
    v = power.var()
    true = 2 * v / (2 * v + 2 * 64.0)
    found = [concordance(power + a, power + b) for a, b in zip(one, two, strict=True)]
    held = [each.interval.holds(true) for each in found if each is not None and each.interval is not None]
    assert len(held) == 200
    assert sum(held) >= 186


def test_a_steady_ride_that_varies_little_has_a_coefficient() -> None:
    power = 200.0 + np.tile([0.1, -0.1, 0.3, -0.3], 10)
    assert concordance(power, power + np.tile([0.02, 0.01], 20)) is not None


def test_lins_standard_error_is_that_of_repeated_samples_with_a_shift() -> None:
    """Means apart by 0.8 standard deviations: every term of the corrected variance counts."""
    rng, rho, width = np.random.default_rng(53), 0.8, []
    z = []
    for _ in range(1500):
        one = rng.standard_normal(100)
        two = rho * one + (1 - rho**2) ** 0.5 * rng.standard_normal(100) + 0.8
        found = concordance(one, two, independent=True)
        assert found is not None
        assert found.interval is not None
        z.append(math.atanh(found.value))
        width.append((math.atanh(found.interval.high) - math.atanh(found.interval.low)) / 2 / 1.959964)
    assert np.mean(width) == pytest.approx(np.std(z), rel=0.05)
