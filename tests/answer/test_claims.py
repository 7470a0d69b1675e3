"""Predicted weights: what a claim is worth by the catalog's own record."""

import pytest

import worlds
from spindlewise.answer.claims import weight_record, weight_standing

STRAYS = {"Calm": (0.0, 0.002), "Bold": (0.03, 0.034), "Mild": (0.01, 0.012), "Even": (0.02, 0.016)}


def both(name, maker, claim, weight):
    claimed = worlds.weighed(claim, "unknown", grade="claimed")
    return worlds.product(name, {"weight_g": (claimed, worlds.weighed(weight))}, maker=maker)


def claimed_only(name, maker, claim):
    return worlds.product(
        name, {"weight_g": (worlds.weighed(claim, "unknown", grade="claimed"),)}, maker=maker
    )


def record(makers):
    products = [
        both(f"{maker.lower()}-{i}", maker, 400.0, 400.0 * (1 + stray))
        for maker in makers
        for i, stray in enumerate(STRAYS[maker])
    ]
    return weight_record(worlds.catalog(products, []), worlds.DAY)


def test_a_claim_without_a_weighing_is_corrected_by_its_makers_record():
    found = weight_standing(claimed_only("new", "Bold", 400.0), worlds.DAY, record(STRAYS))

    assert found.origin == "predicted"
    assert 410 < found.value < 413
    assert found.low < found.value < found.high
    assert found.note.startswith("claimed 400 g, predicted 413 g ± ")
    assert "the 2 weighed of Bold are 3.2 % heavier than claimed in the mean" in found.note


def test_a_maker_outside_the_record_takes_the_mean_of_all_and_a_wider_interval():
    known = weight_standing(claimed_only("new", "Bold", 400.0), worlds.DAY, record(STRAYS))
    stranger = weight_standing(claimed_only("new", "Nobody", 400.0), worlds.DAY, record(STRAYS))

    assert stranger.value == pytest.approx(406.2, abs=0.1)
    assert stranger.high - stranger.low > known.high - known.low
    assert "the record of all makers counts, since none of this maker's was weighed" in stranger.note


def test_too_short_a_record_predicts_nothing_and_leaves_the_claim_a_claim():
    found = weight_standing(claimed_only("new", "Bold", 400.0), worlds.DAY, record(["Bold", "Calm"]))

    assert (found.origin, found.value, found.low) == ("claimed", 400.0, None)


def test_a_weighing_is_never_replaced_by_a_prediction():
    found = weight_standing(both("new", "Bold", 400.0, 404.0), worlds.DAY, record(STRAYS))

    assert (found.origin, found.value) == ("measured", 404.0)


def test_with_few_makers_the_pooled_record_is_used_and_said():
    products = [
        both(f"{maker.lower()}-{i}-{j}", maker, 400.0, 400.0 * (1 + stray))
        for maker in ("Bold", "Calm")
        for i, stray in enumerate(STRAYS[maker])
        for j in range(3)
    ]
    pooled = weight_record(worlds.catalog(products, []), worlds.DAY)
    found = weight_standing(claimed_only("new", "Bold", 400.0), worlds.DAY, pooled)

    assert found.origin == "predicted"
    assert "the record of all makers counts, since too few makers were weighed" in found.note


def test_the_record_does_not_see_the_future():
    early = weight_record(
        worlds.catalog([both("ab", "Bold", 400.0, 412.0)], []), worlds.DAY.replace(year=2025)
    )

    assert early.pairs == 0
