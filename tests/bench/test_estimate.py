"""A figure with the interval that holds it."""

import pytest

from spindlewise.bench.estimate import Estimate, around, t_quantile


def test_an_interval_holds_its_ends() -> None:
    assert [around(2.0, 0.5).holds(figure) for figure in (1.4, 1.5, 2.0, 2.5, 2.6)] == [
        False,
        True,
        True,
        True,
        False,
    ]


def test_an_interval_has_its_low_end_first() -> None:
    with pytest.raises(ValueError, match=r"from 2\.0 to 1\.0; its low end comes first"):
        Estimate(1.5, 2.0, 1.0)


def test_a_change_of_sign_swaps_the_ends() -> None:
    assert Estimate(2.0, 1.0, 4.0).times(-2.0) == Estimate(-4.0, -8.0, -2.0)


def test_endless_degrees_of_freedom_are_the_normal_distribution() -> None:
    assert t_quantile(0.95, float("inf")) == pytest.approx(1.959963984540054, abs=1e-9)


@pytest.mark.parametrize(("level", "degrees"), [(0.0, 3.0), (1.0, 3.0), (95.0, 3.0), (0.95, 0.0)])
def test_a_level_is_a_share(level: float, degrees: float) -> None:
    with pytest.raises(ValueError, match="the level lies between 0 and 1"):
        t_quantile(level, degrees)


def test_an_interval_may_be_a_point() -> None:
    assert Estimate(2.0, 2.0, 2.0).holds(2.0)


def test_a_level_may_be_small() -> None:
    assert t_quantile(0.005, float("inf")) == pytest.approx(0.0062666, abs=1e-6)
