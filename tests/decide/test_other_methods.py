"""Two other methods of ranking."""

import numpy as np
import pytest

from spindlewise.decide.other_methods import min_max_sum, topsis

FIGURES = [[600.0, 310.0, 40.0], [900.0, 250.0, 60.0], [750.0, 290.0, 100.0]]
WEIGHTS = [0.5, 0.3, 0.2]
DIRECTIONS = ["less", "less", "more"]


@pytest.mark.parametrize("method", [topsis, min_max_sum])
def test_a_column_on_which_all_are_alike_makes_no_difference(method) -> None:
    with_constant = np.column_stack((FIGURES, [7.0] * 3, [0.0] * 3))

    found = method(with_constant, [0.25, 0.15, 0.1, 0.3, 0.2], [*DIRECTIONS, "more", "less"])

    without = method(FIGURES, WEIGHTS, DIRECTIONS)
    assert found.argsort().tolist() == without.argsort().tolist()


def test_min_max_gives_a_constant_column_nothing() -> None:
    assert min_max_sum([[5.0], [5.0]], [1.0], ["more"]).tolist() == [0.0, 0.0]


def test_topsis_calls_products_alike_in_everything_half_way() -> None:
    assert topsis([[5.0, 0.0], [5.0, 0.0]], [0.5, 0.5], ["more", "less"]).tolist() == [0.5, 0.5]


def test_topsis_gives_the_ideal_one_and_its_opposite_nothing() -> None:
    assert topsis([[1.0, 9.0], [2.0, 3.0]], [0.5, 0.5], ["less", "more"]).tolist() == [1.0, 0.0]


@pytest.mark.parametrize("method", [topsis, min_max_sum])
def test_only_the_ratios_of_weights_count(method) -> None:
    doubled = method(FIGURES, [2 * weight for weight in WEIGHTS], DIRECTIONS)

    assert doubled == pytest.approx(method(FIGURES, WEIGHTS, DIRECTIONS))


@pytest.mark.parametrize("method", [topsis, min_max_sum])
@pytest.mark.parametrize(
    ("figures", "weights", "directions", "message"),
    [
        ([1.0, 2.0], [1.0], ["more"], "one weight and direction a criterion"),
        ([[1.0, 2.0]], [1.0], ["more"], "one weight and direction a criterion"),
        ([[1.0, 2.0]], [1.0, 1.0], ["more"], "one weight and direction a criterion"),
        ([[1.0, np.nan]], [1.0, 1.0], ["more", "less"], "every figure is finite"),
        ([[1.0, 2.0]], [1.0, -1.0], ["more", "less"], "weights are 0 or more"),
        ([[1.0, 2.0]], [0.0, 0.0], ["more", "less"], "weights are 0 or more"),
        ([[1.0, 2.0]], [1.0, 1.0], ["more", "mixed"], "directions mixed"),
    ],
)
def test_what_does_not_fit_is_refused(method, figures, weights, directions, message) -> None:
    with pytest.raises(ValueError, match=message):
        method(figures, weights, directions)


@pytest.mark.parametrize("method", [topsis, min_max_sum])
def test_endless_weights_are_refused_in_whole_words(method) -> None:
    with pytest.raises(ValueError, match=r"^every figure is finite; weights are 0 or more and not all 0$"):
        method([[1.0, 2.0]], [np.inf, 1.0], ["more", "less"])
    with pytest.raises(
        ValueError,
        match=r"directions given; .products, criteria. and one weight and direction a criterion are needed$",
    ):
        method([[1.0, 2.0]], [1.0], ["more"])
    with pytest.raises(ValueError, match="directions mixed, up; each is less or more"):
        method([[1.0, 2.0]], [1.0, 1.0], ["up", "mixed"])


@pytest.mark.parametrize("method", [topsis, min_max_sum])
def test_no_products_have_no_scores(method) -> None:
    assert method(np.empty((0, 2)), [0.5, 0.5], ["more", "less"]).tolist() == []


@pytest.mark.parametrize("method", [topsis, min_max_sum])
def test_prices_in_small_coin_kept_as_short_whole_numbers_do_not_run_over(method) -> None:
    # 32 bits hold a price in yen, but not its square, which lengths are made of
    prices = [[48_000, 306], [112_000, 250], [90_000, 290]]

    short = method(np.array(prices, dtype=np.int32), [0.6, 0.4], ["less", "less"])

    assert short.tolist() == method(np.array(prices, dtype=float), [0.6, 0.4], ["less", "less"]).tolist()
