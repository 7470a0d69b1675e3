"""Which seconds are compared."""

import numpy as np
import pytest

from spindlewise.bench.pairing import paired

nan = float("nan")
FIRST, SECOND = [100.0, 0.0, nan, -3.0, 90.0], [101.0, 50.0, 80.0, 10.0, nan]


def test_a_second_without_either_reading_is_not_compared() -> None:
    one, two = paired(FIRST, SECOND)
    np.testing.assert_array_equal(one, [100.0, 0.0, nan, -3.0, nan])
    np.testing.assert_array_equal(two, [101.0, 50.0, nan, 10.0, nan])


def test_without_zeros_both_figures_speak_of_the_same_seconds() -> None:
    one, two = paired(FIRST, SECOND, "without zeros")
    np.testing.assert_array_equal(one, [100.0, nan, nan, nan, nan])
    np.testing.assert_array_equal(two, [101.0, nan, nan, nan, nan])


def test_the_callers_series_stay_as_they_are() -> None:
    mine = np.array(FIRST)
    paired(mine, SECOND, "without zeros")
    np.testing.assert_array_equal(mine, FIRST)


@pytest.mark.parametrize(
    ("first", "second", "zeros", "says"),
    [
        ([1.0], [1.0, 2.0], "with zeros", "they share one clock and one length"),
        ([[1.0]], [[1.0]], "with zeros", "they share one clock and one length"),
        ([float("inf")], [1.0], "with zeros", "a missing reading is nan"),
        ([1.0], [float("-inf")], "with zeros", "a missing reading is nan"),
        ([1.0], [1.0], "no zeros", "it is one of: with zeros, without zeros"),
    ],
)
def test_what_cannot_be_paired_is_refused(first: object, second: object, zeros: object, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        paired(first, second, zeros)  # type: ignore[arg-type]


@pytest.mark.parametrize(("one", "two"), [(0.0, 50.0), (50.0, 0.0), (0.0, 0.0), (-1.0, 50.0), (50.0, -1.0)])
def test_zero_of_either_leaves_the_second_out(one: float, two: float) -> None:
    assert np.isnan(paired([one], [two], "without zeros")).all()
    assert not np.isnan(paired([one], [two])).any()


def test_the_least_power_above_zero_counts() -> None:
    assert not np.isnan(paired([0.005], [0.005], "without zeros")).any()
