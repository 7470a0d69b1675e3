"""Means drawn towards their common mean."""

import pytest

from spindlewise.decide.james_stein import james_stein


def test_exact_means_stay_as_they_are() -> None:
    assert james_stein([1.0, 2.0, 3.0, 6.0], 0.0).tolist() == [1.0, 2.0, 3.0, 6.0]


def test_means_that_differ_by_no_more_than_chance_become_one() -> None:
    assert james_stein([1.0, 2.0, 3.0, 6.0], 100.0).tolist() == [3.0] * 4


def test_equal_means_stay_equal() -> None:
    assert james_stein([2.0] * 5, 1.0).tolist() == [2.0] * 5


@pytest.mark.parametrize(("y", "variance"), [([1, 2, 3], 1.0), ([[1, 2], [3, 4]], 1.0), ([1, 2, 3, 4], -1.0)])
def test_too_few_means_or_a_variance_that_cannot_be_are_refused(y, variance) -> None:
    with pytest.raises(ValueError, match="at least 4 means"):
        james_stein(y, variance)


def test_what_is_needed_is_said_in_whole_words() -> None:
    with pytest.raises(
        ValueError, match=r"at least 4 means in a row and a variance of 0 or more are needed$"
    ):
        james_stein([1, 2, 3], 1.0)
