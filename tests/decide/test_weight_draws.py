"""Draws of weights."""

import numpy as np
import pytest

from spindlewise.decide.order_weights import order_weights
from spindlewise.decide.weight_draws import (
    AnyWeights,
    AroundShares,
    HeldWeights,
    OrderedWeights,
    WeightLaw,
    concentration,
)

DRAWS = 40_000
LAWS: list[WeightLaw] = [
    HeldWeights((3.0, 1.0, 0.0)),
    AroundShares((0.5, 0.3, 0.2), 63.0),
    AnyWeights(3),
    OrderedWeights(((2,), (0, 1))),
]


def drawn(law: WeightLaw, draws: int = DRAWS) -> np.ndarray:
    return law.draw(np.random.Generator(np.random.SFC64(20240101)), draws)


@pytest.mark.parametrize("law", LAWS)
def test_every_draw_adds_up_to_one_and_none_is_negative(law: WeightLaw) -> None:
    weights = drawn(law, 1000)

    assert weights.shape == (law.criteria, 1000)
    assert (weights >= 0).all()
    assert weights.sum(axis=0) == pytest.approx(1.0)


@pytest.mark.parametrize(("word", "spread"), [("very", 0.1), ("fairly", 0.25), ("barely", 0.5)])
def test_a_share_of_a_fifth_strays_by_what_the_word_says(word, spread) -> None:
    weights = drawn(AroundShares((0.2, 0.5, 0.3), concentration(word)))[0]

    assert weights.mean() == pytest.approx(0.2, abs=4 * 0.2 * spread / DRAWS**0.5)
    # the standard deviation of a standard deviation is about sd / sqrt(2 n)
    assert weights.std() == pytest.approx(0.2 * spread, rel=4 / (2 * DRAWS) ** 0.5 * 1.5)


def test_a_number_says_what_a_word_says() -> None:
    assert concentration(0.25) == concentration("fairly")
    # a spread as large as the share itself is the widest that makes sense
    assert concentration(1.0) == 3.0
    # 4 / 0.09 - 1, to nine digits
    assert concentration(0.3) == 43.444444444


@pytest.mark.parametrize("sure", ["quite", 0.0, -0.1, 1.5, float("nan")])
def test_other_sureness_is_refused(sure) -> None:
    with pytest.raises(
        ValueError, match=r"; one of very, fairly, barely, or a relative spread above 0 and at most 1$"
    ):
        concentration(sure)


def test_a_share_of_nothing_stays_nothing_and_shares_need_not_add_up_to_one() -> None:
    weights = drawn(AroundShares((30.0, 0.0, 10.0), 15.0))

    assert (weights[1] == 0.0).all()
    assert weights[0].mean() == pytest.approx(0.75, abs=4 * (0.75 * 0.25 / 16 / DRAWS) ** 0.5)
    assert weights[0].std() == pytest.approx((0.75 * 0.25 / 16) ** 0.5, rel=0.02)


def test_a_buyer_may_be_less_sure_than_of_nothing() -> None:
    """Below a concentration of 1 the weight gathers on one criterion or the other."""
    weights = drawn(AroundShares((1.0, 1.0), 0.5))[0]

    assert weights.std() == pytest.approx((0.25 / 1.5) ** 0.5, rel=0.02)


def test_any_weights_are_uniform_on_the_simplex() -> None:
    """A weight of three exceeds 1/2 in (1 - 1/2)^2 = 1/4 of all cases."""
    weights = drawn(AnyWeights(3))

    assert (weights > 0.5).mean(axis=1) == pytest.approx(0.25, abs=4 * (0.25 * 0.75 / DRAWS) ** 0.5)


def test_ordered_weights_keep_their_order_and_have_the_centroids_as_mean() -> None:
    weights = drawn(OrderedWeights(((2,), (0,), (1,))))

    assert (weights[2] >= weights[0]).all()
    assert (weights[0] >= weights[1]).all()
    centroid = order_weights(["2", "0", "1"])
    assert weights.mean(axis=1) == pytest.approx([centroid["0"], centroid["1"], centroid["2"]], abs=4e-3)


def test_ordered_weights_are_distributed_as_sorted_uniform_ones() -> None:
    """The naive way: draw from the whole simplex, and sort."""
    ordered, naive = drawn(OrderedWeights(((0,), (1,), (2,)))), -np.sort(-drawn(AnyWeights(3)), axis=0)

    for mine, twin in zip(ordered, naive, strict=True):
        assert np.quantile(mine, [0.1, 0.5, 0.9]) == pytest.approx(
            np.quantile(twin, [0.1, 0.5, 0.9]), abs=0.01
        )


def test_criteria_that_matter_equally_share_their_places() -> None:
    weights = drawn(OrderedWeights(((0,), (1, 2))))

    centroid = order_weights(["0", ("1", "2")])
    assert (weights[0] >= weights[1:]).all()
    assert (weights[1] > weights[2]).mean() == pytest.approx(0.5, abs=4 * 0.5 / DRAWS**0.5)
    assert weights.mean(axis=1) == pytest.approx(list(centroid.values()), abs=4e-3)


def test_held_weights_are_the_shares() -> None:
    assert drawn(HeldWeights((3.0, 1.0)), 2).tolist() == [[0.75, 0.75], [0.25, 0.25]]


@pytest.mark.parametrize("shares", [(), (0.0, 0.0), (-1.0, 2.0), (float("nan"),), (float("inf"),)])
def test_shares_that_cannot_be_are_refused(shares) -> None:
    for law in (HeldWeights, lambda given: AroundShares(given, 10.0)):
        with pytest.raises(
            ValueError, match=r"^the shares are .*; each is a number, 0 or more, and at least one above 0$"
        ):
            law(shares)


@pytest.mark.parametrize("concentration", [0.0, -1.0, float("inf"), float("nan")])
def test_a_concentration_that_cannot_be_is_refused(concentration) -> None:
    with pytest.raises(ValueError, match=r"^the concentration is .*; a finite number above 0 is needed$"):
        AroundShares((1.0,), concentration)


def test_a_single_criterion_has_all_the_weight() -> None:
    assert drawn(AnyWeights(1), 3).tolist() == [[1.0, 1.0, 1.0]]


def test_no_criteria_are_refused() -> None:
    with pytest.raises(ValueError, match=r"^weights over 0 criteria asked for; at least one is needed$"):
        AnyWeights(0)


@pytest.mark.parametrize("places", [(), ((0,), (0,)), ((1,),), ((),)])
def test_places_that_miss_or_repeat_a_column_are_refused(places) -> None:
    with pytest.raises(
        ValueError, match=r"^the places are .*; each column from 0 up stands there exactly once$"
    ):
        OrderedWeights(places)
