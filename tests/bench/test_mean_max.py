"""The mean-maximal power curve."""

import numpy as np
import pytest

from spindlewise.bench.mean_max import mean_maximal, mean_maximal_of_two


def naive(power: np.ndarray, duration: int) -> float | None:
    windows = [power[i : i + duration] for i in range(len(power) - duration + 1)]
    averages = [window.mean() for window in windows if not np.isnan(window).any()]
    return max(averages) if averages else None


@pytest.mark.parametrize("with_gaps", [False, True])
def test_every_duration_is_that_of_the_naive_twin(with_gaps: bool) -> None:
    power = np.random.default_rng(65).uniform(0, 900, 400)
    if with_gaps:
        power[[50, 51, 200, 399]] = np.nan
    for best in mean_maximal(power, range(1, 402)):
        expected = naive(power, best.duration_s)
        assert best.best_w == (None if expected is None else pytest.approx(expected, rel=1e-12))


def test_the_first_of_equal_efforts_is_told() -> None:
    (best,) = mean_maximal([100.0, 300.0, 100.0, 300.0], (1,))
    assert (best.best_w, best.start_s) == (300.0, 1)


def test_a_gap_is_neither_filled_nor_skipped() -> None:
    two, four = mean_maximal([500.0, np.nan, 500.0, 100.0], (2, 4))
    assert (two.best_w, two.start_s) == (300.0, 2)
    assert (four.best_w, four.start_s) == (None, None)


def test_negative_power_counts_as_it_is() -> None:
    (best,) = mean_maximal([-5.0, -3.0], (1,))
    assert best.best_w == -3.0


def test_two_meters_side_by_side() -> None:
    power = np.full(600, 150.0)
    power[100:130] = 800.0
    one, five, long = mean_maximal_of_two(0.95 * power, power, second="hub", durations_s=(1, 5, 600))
    assert [each.difference.pct for each in (one, five, long)] == pytest.approx([-5.0] * 3)
    assert five.difference.percent_of == "hub"
    assert (five.first_w, five.second_w) == pytest.approx((760.0, 800.0))
    assert all(each.same_effort for each in (one, five, long))


def test_two_best_efforts_may_be_two_efforts() -> None:
    one, two = np.full(300, 100.0), np.full(300, 100.0)
    one[20:30], two[200:210] = 500.0, 510.0
    (best,) = mean_maximal_of_two(one, two, second="hub", durations_s=(10,))
    assert not best.same_effort


def test_a_second_that_either_lacks_counts_for_neither() -> None:
    one, two = np.full(60, 200.0), np.full(60, 200.0)
    one[10], two[10] = 900.0, np.nan
    found = mean_maximal_of_two(one, two, second="hub", durations_s=(1, 49, 50))
    assert [(each.duration_s, each.first_w) for each in found] == [(1, 200.0), (49, 200.0)]


@pytest.mark.parametrize(("one", "two"), [(0.0, 100.0), (100.0, 0.0)])
def test_no_percentage_of_no_power(one: float, two: float) -> None:
    assert mean_maximal_of_two([one] * 5, [two] * 5, second="hub", durations_s=(1,)) == ()


@pytest.mark.parametrize(("power", "durations"), [([1.0], (0,)), ([[1.0]], (1,))])
def test_a_wrong_call_is_refused(power: list[float], durations: tuple[int, ...]) -> None:
    with pytest.raises(ValueError, match="1 s or more"):
        mean_maximal(power, durations)


def test_two_meters_share_a_clock() -> None:
    with pytest.raises(ValueError, match="one clock and one length"):
        mean_maximal_of_two([1.0], [1.0, 2.0], second="hub")
