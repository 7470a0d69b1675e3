"""Repeatability; the published figures stand in tests/references/test_bland_altman_1986.py."""

import pytest

from spindlewise.bench.repeatability import corrected_sd, repeatability


def test_the_mean_of_the_repeats_counts_as_error_of_the_meter() -> None:
    assert repeatability([10.0, 10.0], [12.0, 12.0]).sd == 2.0


def test_the_coefficient_follows_the_multiplier() -> None:
    assert repeatability([10.0], [12.0], multiplier=1.96).coefficient == pytest.approx(3.92)


@pytest.mark.parametrize(
    ("once", "again"), [([], []), ([1.0], [1.0, 2.0]), ([[1.0]], [[1.0]]), ([float("nan")], [1.0])]
)
def test_rows_hold_two_readings(once: list[float], again: list[float]) -> None:
    with pytest.raises(ValueError, match="two finite readings of one thing"):
        repeatability(once, again)


def test_one_row_has_no_spread() -> None:
    with pytest.raises(ValueError, match="at least two"):
        corrected_sd(([1.0], [1.0]), ([2.0], [2.0]))


def test_two_rows_have_a_spread() -> None:
    """Averages 1, 2 and 1, 4: differences 0 and -2, a variance of 2; repeats 2 apart, once, by the first."""
    found = corrected_sd(([0.0, 2.0], [2.0, 2.0]), ([1.0, 4.0], [1.0, 4.0]))
    assert found == pytest.approx((2.0 + 2.0 / 4.0) ** 0.5)


@pytest.mark.parametrize("wrong", [float("inf"), float("nan")])
def test_both_readings_are_finite(wrong: float) -> None:
    with pytest.raises(ValueError, match="two finite readings"):
        repeatability([1.0], [wrong])
