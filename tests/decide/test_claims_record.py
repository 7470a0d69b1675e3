"""What a claim is worth, from the record of claims and measurements."""

import math
import random

import numpy as np
import pytest

from spindlewise.decide.claims_record import (
    LEAST_PAIRS,
    ClaimPair,
    NoPrediction,
    Prediction,
    claims_record,
)


def pairs_of(maker: str, *strays_pct: float, u: float = 0.0) -> list[ClaimPair]:
    return [ClaimPair(maker, 200.0, 200.0 * (1 + stray / 100), u) for stray in strays_pct]


FOUR_MAKERS = [
    *pairs_of("Aldermoor", 5.0, 6.0, 5.5, 6.5),
    *pairs_of("Brackwell", 0.0, 1.0, 0.5),
    *pairs_of("Corvane", -0.5, 0.5),
    *pairs_of("Dunmere", 2.0),
]


def prediction(pairs, maker, claimed=200.0) -> Prediction:
    found = claims_record(pairs).predict(maker, claimed)
    assert isinstance(found, Prediction)
    return found


def test_a_maker_with_a_long_record_is_taken_by_it_nearly_whole() -> None:
    found = prediction(FOUR_MAKERS, "Aldermoor")

    assert found.fallback is None
    assert found.own_stray_pct == pytest.approx(5.75)
    assert found.own_weight > 0.95
    assert found.pooled_stray_pct < found.stray_pct < found.own_stray_pct
    assert (found.maker_n, found.pooled_n) == (4, 10)


def test_the_arithmetic_can_be_followed() -> None:
    found = prediction(FOUR_MAKERS, "Dunmere", 320.0)

    stray = found.own_weight * found.own_stray_pct + (1 - found.own_weight) * found.pooled_stray_pct
    assert (found.maker, found.claimed) == ("Dunmere", 320.0)
    assert found.stray_pct == pytest.approx(stray)
    assert found.predicted == pytest.approx(320.0 * (1 + found.stray_pct / 100))


def test_the_estimates_are_those_of_the_one_way_random_model() -> None:
    """Worked out anew from the definitions (Searle, Casella and McCulloch 1992, balanced case)."""
    strays = np.array([[1.0, 3.0, 2.0], [6.0, 4.0, 5.0], [0.0, 1.0, -1.0], [9.0, 8.0, 10.0]])
    pairs = [pair for i, row in enumerate(strays) for pair in pairs_of(f"maker {i}", *row)]

    record = claims_record(pairs)

    within = strays.var(axis=1, ddof=1).mean()
    between = strays.mean(axis=1).var(ddof=1) - within / 3
    assert record.within == pytest.approx(within / 1e4)
    assert record.between == pytest.approx(between / 1e4)
    assert record.mean_stray == pytest.approx(strays.mean() / 100)
    assert record.mean_variance == pytest.approx((between + within / 3) / 4 / 1e4)
    b = (within / 3) / (within / 3 + between)
    found = record.predict("maker 0", 100.0)
    assert isinstance(found, Prediction)
    assert found.own_weight == pytest.approx(1 - b)
    variance = (
        within
        + (1 - b) * within / 3
        + b * b * record.mean_variance * 1e4
        + 2 * (b * (2.0 - strays.mean())) ** 2
    )
    assert found.plus_minus == pytest.approx(2 * math.sqrt(variance))


def test_the_fewer_measurements_the_less_weight_and_the_wider() -> None:
    few, many = prediction(FOUR_MAKERS, "Dunmere"), prediction(FOUR_MAKERS, "Aldermoor")

    assert few.own_weight < many.own_weight
    assert few.plus_minus > many.plus_minus


def test_a_maker_without_a_record_gets_the_mean_of_all_and_the_widest_spread() -> None:
    found = prediction(FOUR_MAKERS, "Eastholm")

    assert found.fallback == "maker not in the record"
    assert (found.maker_n, found.own_weight, found.own_stray_pct) == (0, 0.0, None)
    assert found.stray_pct == found.pooled_stray_pct
    assert found.plus_minus > prediction(FOUR_MAKERS, "Dunmere").plus_minus


def test_three_makers_are_pooled_and_it_says_so() -> None:
    pairs = [pair for pair in FOUR_MAKERS if pair.maker != "Dunmere"]
    strays = np.array([pair.stray for pair in pairs])

    found = prediction(pairs, "Aldermoor")

    assert found.fallback == "too few makers"
    assert found.own_weight == 0.0
    assert found.own_stray_pct == pytest.approx(5.75)
    assert found.stray_pct == pytest.approx(100 * strays.mean())
    assert found.plus_minus == pytest.approx(2 * 200 * strays.std(ddof=1) * math.sqrt(1 + 1 / 9))


def test_makers_measured_once_each_are_pooled_and_it_says_so() -> None:
    pairs = [pair for i in range(LEAST_PAIRS) for pair in pairs_of(f"maker {i}", float(i))]

    assert prediction(pairs, "maker 3").fallback == "no maker measured twice"
    assert prediction(pairs, "maker 99").fallback == "no maker measured twice"


@pytest.mark.parametrize("n", [0, 1, LEAST_PAIRS - 1])
def test_a_short_record_predicts_nothing(n) -> None:
    found = claims_record(pairs_of("Aldermoor", *range(n))).predict("Aldermoor", 300.0)

    assert found == NoPrediction("Aldermoor", 300.0, n, LEAST_PAIRS)


def test_a_record_of_nothing_one_or_two_claims_nothing_that_it_does_not_know() -> None:
    empty = claims_record([])
    assert (empty.own, empty.pairs, empty.mean_stray) == ({}, 0, 0.0)
    assert (empty.within, empty.mean_variance, empty.between) == (0.0, 0.0, None)
    # one weighing to 1 %: all that is known of the scatter is that of the scale
    one = claims_record(pairs_of("Aldermoor", 2.0, u=0.01))
    assert (one.within, one.mean_variance) == (pytest.approx(1e-4), pytest.approx(1e-4))
    # two, 2 % apart: a variance of 2, of the mean 1
    two = claims_record(pairs_of("Aldermoor", 2.0, 4.0))
    assert (two.within, two.mean_variance) == (pytest.approx(2e-4), pytest.approx(1e-4))


def test_four_makers_are_enough_but_not_with_one_measurement_each() -> None:
    record = claims_record(pair for i in range(4) for pair in pairs_of(f"maker {i}", float(i)))
    assert record.pooled_because == "no maker measured twice"


def test_makers_who_differ_by_chance_only_are_all_taken_alike() -> None:
    pairs = [pair for i in range(4) for pair in pairs_of(f"maker {i}", 1.0 + i / 100, 3.0 + i / 100)]

    record = claims_record(pairs)
    assert record.between == 0.0
    assert record.mean_variance == pytest.approx(record.within / len(pairs))
    found = prediction(pairs, "maker 3")

    assert found.own_weight == 0.0
    assert found.stray_pct == pytest.approx(found.pooled_stray_pct)
    assert found.fallback is None


def test_makers_true_to_the_last_digit_are_taken_at_their_word() -> None:
    pairs = [pair for i in range(4) for pair in pairs_of(f"maker {i}", 0.0, 0.0)]

    found = prediction(pairs, "maker 3")

    assert (found.predicted, found.plus_minus) == (200.0, 0.0)
    # and so is a newcomer, of whom nothing else can be said
    newcomer = prediction(pairs, "Eastholm")
    assert (newcomer.predicted, newcomer.plus_minus) == (200.0, 0.0)


def test_makers_each_constant_but_different_keep_their_own_mean() -> None:
    pairs = [ClaimPair(f"maker {i}", 4.0, 4.0 + i) for i in range(4) for _ in range(2)]

    found = prediction(pairs, "maker 2", 4.0)

    assert (found.predicted, found.own_weight, found.plus_minus) == (6.0, 1.0, 0.0)


def test_the_spread_is_never_less_than_the_measurements_own_uncertainty() -> None:
    pairs = [pair for i in range(4) for pair in pairs_of(f"maker {i}", 1.0, 1.0, u=0.01)]
    pooled = pairs_of("Aldermoor", *[1.0] * 8, u=0.01)

    assert prediction(pairs, "maker 0").plus_minus >= 2 * 200 * 0.01
    assert prediction(pooled, "Aldermoor").plus_minus == pytest.approx(2 * 200 * 0.01 * math.sqrt(1 + 1 / 8))


def test_the_order_of_the_record_changes_no_bit() -> None:
    shuffled = list(FOUR_MAKERS)
    random.Random(20240101).shuffle(shuffled)

    assert claims_record(shuffled) == claims_record(FOUR_MAKERS)


@pytest.mark.parametrize(("makers", "between"), [(6, 0.03), (12, 0.01), (5, 0.0)])
def test_a_further_item_lies_within_the_plus_minus_about_19_times_of_20(makers, between) -> None:
    """Simulated makers with 1 to 5 measured items each, whose true habits are known."""
    rng = np.random.default_rng(20240101)
    hits = total = 0
    for _ in range(400):
        habits = 0.02 + between * rng.standard_normal(makers)
        pairs = [
            ClaimPair(f"maker {i:02}", 1.0, 1.0 + habit + 0.015 * float(rng.standard_normal()))
            for i, habit in enumerate(habits)
            for _ in range(2 + i % 4)
        ]
        record = claims_record(pairs)
        for i, habit in enumerate(habits):
            found = record.predict(f"maker {i:02}", 1.0)
            assert isinstance(found, Prediction)
            further = 1.0 + habit + 0.015 * rng.standard_normal()
            hits += abs(further - found.predicted) <= found.plus_minus
            total += 1
    assert 0.93 <= hits / total <= 0.975


def test_shrinking_lies_nearer_the_truth_than_the_makers_own_means() -> None:
    rng = np.random.default_rng(20240101)
    own, shrunk = 0.0, 0.0
    for _ in range(300):
        habits = 0.02 + 0.01 * rng.standard_normal(8)
        pairs = [
            ClaimPair(f"maker {i}", 1.0, 1.0 + habit + 0.02 * float(rng.standard_normal()))
            for i, habit in enumerate(habits)
            for _ in range(3)
        ]
        record = claims_record(pairs)
        for i, habit in enumerate(habits):
            found = record.predict(f"maker {i}", 1.0)
            assert isinstance(found, Prediction)
            own += (found.own_stray_pct / 100 - habit) ** 2
            shrunk += (found.stray_pct / 100 - habit) ** 2
    assert shrunk < 0.85 * own


@pytest.mark.parametrize(
    ("claimed", "measured"), [(0, 1), (1, 0), (-1, 1), (math.inf, 1), (1, math.nan), (1, math.inf)]
)
def test_figures_that_cannot_be_are_refused(claimed, measured) -> None:
    with pytest.raises(ValueError, match=r"^claimed \S+, measured \S+; both are above 0 and finite$"):
        ClaimPair("Aldermoor", claimed, measured)


@pytest.mark.parametrize("u", [-0.1, 1.0, math.nan])
def test_an_uncertainty_that_cannot_be_is_refused(u) -> None:
    with pytest.raises(ValueError, match=r"^a relative uncertainty of \S+; it is 0 or more and below 1$"):
        ClaimPair("Aldermoor", 1.0, 1.0, u)


@pytest.mark.parametrize("claimed", [0.0, -1.0, math.nan, math.inf])
def test_a_claim_that_cannot_be_is_refused(claimed) -> None:
    with pytest.raises(ValueError, match=r"^the claim is \S+; a finite figure above 0 is needed$"):
        claims_record(FOUR_MAKERS).predict("Aldermoor", claimed)
