"""Causes and what they come to."""

from __future__ import annotations

import pytest

from spindlewise.reception.budget import Contribution, combine, largest


def cause(name: str, standard: float, bias: float = 0.0) -> Contribution:
    return Contribution(name, standard, "normal", "", bias)


def test_biases_add_with_their_signs_and_spreads_as_squares() -> None:
    bias, combined = combine([cause("a", 3, -2), cause("b", 4, 0.5), cause("c", 12)])

    assert (bias, combined) == pytest.approx((-1.5, 13))


def test_nothing_comes_to_nothing() -> None:
    assert combine([]) == (0, 0)
    assert largest([]) == ""
    assert largest([cause("a", 0)]) == ""


def test_the_largest_is_the_one_that_reaches_farthest() -> None:
    assert largest([cause("spread", 1), cause("bias", 0, -3), cause("both", 0.5, 1)]) == "bias"
    assert largest([cause("first", 1), cause("second", 0, 2)]) == "first"
