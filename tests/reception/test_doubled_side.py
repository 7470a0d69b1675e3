"""The error of a doubled side."""

from __future__ import annotations

import math

import pytest

from spindlewise.reception.doubled_side import doubled_error, doubled_error_pct


@pytest.mark.parametrize(("left", "error"), [(0.49, -2), (0.48, -4), (0.47, -6), (0.45, -10), (0.5, 0)])
def test_each_point_of_imbalance_costs_two_percent(left: float, error: float) -> None:
    """Common practice, no source."""
    assert doubled_error_pct(left, "left") == pytest.approx(error, abs=1e-12)
    assert doubled_error_pct(left, "right") == pytest.approx(-error, abs=1e-12)


@pytest.mark.parametrize(("left", "error"), [(0, -100), (1, 100)])
def test_a_rider_on_one_leg(left: float, error: float) -> None:
    assert doubled_error_pct(left) == error


class TestBuyersRange:
    def test_low_expected_high_and_watts(self) -> None:
        error = doubled_error((0.47, 0.49), "left", 250)

        assert (error.low_pct, error.expected_pct, error.high_pct) == pytest.approx((-6, -4, -2))
        assert (error.low_w, error.expected_w, error.high_w) == pytest.approx((-15, -10, -5))
        assert error.standard_pct == pytest.approx(2 / math.sqrt(3))
        assert (error.basis, error.sign, error.spread) == ("buyer", "reads low", "rectangular")

    def test_on_the_right_the_same_rider_reads_high(self) -> None:
        error = doubled_error((0.47, 0.49), "right")

        assert (error.low_pct, error.high_pct) == pytest.approx((2, 6))
        assert (error.sensor_side, error.sign) == ("right", "reads high")
        assert error.low_w is error.expected_w is error.high_w is None

    def test_a_side_that_is_not_known_may_stray_either_way(self) -> None:
        error = doubled_error((0.47, 0.49), "unknown")

        assert (error.low_pct, error.expected_pct, error.high_pct) == pytest.approx((-6, 0, 6))
        assert error.sign == "either way"

    def test_an_even_rider_reads_true(self) -> None:
        error = doubled_error((0.5, 0.5), "left", 300)

        assert (error.sign, error.standard_pct, error.high_w) == ("reads true", 0, 0)


def test_an_unknown_balance_takes_the_population_and_says_so() -> None:
    error = doubled_error(None, "left", 200)

    assert (error.basis, error.spread, error.sign) == ("population", "normal", "either way")
    assert error.expected_pct == error.expected_w == 0
    assert error.high_pct == -error.low_pct == pytest.approx(5.018, abs=1e-3)
    assert error.high_w == pytest.approx(10.04, abs=1e-2)
    # per watt of threshold power
    assert doubled_error(None, "left", 1).high_w == pytest.approx(error.high_w / 200)


@pytest.mark.parametrize("share", [-0.01, 1.01, 47, math.nan])
def test_a_share_outside_0_to_1_is_refused(share: float) -> None:
    with pytest.raises(ValueError, match=r"^the left share is \S+; it lies in 0 to 1 \(47 % is 0.47\)$"):
        doubled_error_pct(share)


def test_a_range_out_of_order_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^the left share runs from 0.49 to 0.47; low <= high is needed$"):
        doubled_error((0.49, 0.47))


@pytest.mark.parametrize("threshold", [0, -5, math.inf, math.nan])
def test_an_impossible_threshold_power_is_refused(threshold: float) -> None:
    with pytest.raises(
        ValueError, match=f"^the threshold power is {threshold} W; it is more than zero and finite$"
    ):
        doubled_error(None, "left", threshold)


def test_a_side_that_is_none_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^the sensor side is 'unknown'; one balance needs 'left' or 'right'$"
    ):
        doubled_error_pct(0.5, "unknown")  # type: ignore[arg-type]
    with pytest.raises(ValueError, match=r"^the sensor side is 'both'; it is 'left', 'right' or 'unknown'$"):
        doubled_error(None, "both")  # type: ignore[arg-type]
