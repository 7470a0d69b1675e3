"""The odd one out."""

import numpy as np
import pytest

from spindlewise.bench.estimate import Estimate
from spindlewise.bench.odd_one_out import OddOneOut, interval_of_draws, odd_one_out


def asked(values: list[float], sd: float = 1.0) -> OddOneOut:
    figures = np.array(values)
    draws = figures + sd * np.random.default_rng(44).standard_normal((3000, len(values)))
    names = [chr(65 + i) for i in range(len(values))]
    return odd_one_out(names, figures, draws, lambda v, d: interval_of_draws(v, d, 200, 0.95))


@pytest.mark.parametrize(
    ("values", "odd"),
    [
        ([0.0, 0.5, 9.0], "C"),
        ([9.0, 0.5, 0.0], "A"),
        ([0.0, -9.0, 0.3], "B"),
        ([0.0, 0.5, 1.0], None),  # none told apart
        ([0.0, 2.0, 4.0], None),  # the outer two told apart, the middle one from neither
        ([0.0, 10.0, 20.0], None),  # all told apart, at equal distances
        ([0.0, 5.0, 40.0], "C"),  # all told apart, one much farther off
        ([-40.0, 0.0, 5.0], "A"),
        ([0.0, 0.5, 9.0, 0.2], "C"),
        ([0.0, 0.5, 9.0, 9.5], None),  # two against two
        ([0.0, 5.0, 3.0, 40.0], "D"),
    ],
)
def test_who_is_the_odd_one_out(values: list[float], odd: str | None) -> None:
    assert asked(values).odd == odd


def test_every_pair_is_told() -> None:
    found = asked([0.0, 0.5, 9.0])
    assert [(pair.first, pair.second, pair.told_apart) for pair in found.pairs] == [
        ("A", "B", False),
        ("A", "C", True),
        ("B", "C", True),
    ]
    assert found.pairs[1].difference.value == -9.0
    assert found.any_told_apart
    assert not asked([0.0, 0.1, 0.2]).any_told_apart


def test_meters_that_err_together_are_told_apart_though_their_intervals_overlap() -> None:
    """What moves all three alike cancels in their differences."""
    shared = 5.0 * np.random.default_rng(45).standard_normal((3000, 1))
    figures = np.array([0.0, 0.0, 1.0])
    draws = figures + shared + 0.05 * np.random.default_rng(46).standard_normal((3000, 3))
    assert odd_one_out("ABC", figures, draws, lambda v, d: interval_of_draws(v, d, 200, 0.95)).odd == "C"


def test_the_interval_of_draws_is_a_little_wider_than_their_percentiles() -> None:
    draws = np.random.default_rng(47).standard_normal(20_000)
    plain, few, widened = (
        interval_of_draws(0.0, draws, 10**9, 0.95),
        interval_of_draws(0.0, draws, 12, 0.95),
        interval_of_draws(0.0, draws, 10**9, 0.95, widening=1.1),
    )
    assert (plain.low, plain.high) == pytest.approx((-1.96, 1.96), abs=0.05)
    assert few.high == pytest.approx(2.228138852 * (12 / 10) ** 0.5, abs=0.1)  # t of 10 degrees of freedom
    assert widened.high == pytest.approx(1.1 * 1.96, abs=0.06)


@pytest.mark.parametrize(
    ("names", "values", "draws"),
    [
        ("AB", np.zeros(2), np.zeros((9, 2))),
        ("ABC", np.zeros(2), np.zeros((9, 3))),
        ("ABC", np.zeros(3), np.zeros(3)),
        ("ABC", np.zeros(3), np.zeros((9, 2))),
    ],
)
def test_what_does_not_match_is_refused(names: str, values: np.ndarray, draws: np.ndarray) -> None:
    with pytest.raises(ValueError, match="one column a meter"):
        odd_one_out(names, values, draws, lambda v, _: Estimate(v, v, v))
