"""The ladder for a buyer, from pedals that are owned or from a product that would be bought."""

from datetime import date
from decimal import Decimal

import pytest

import worlds
from spindlewise.answer.ladder import HELD_BACK, climb
from spindlewise.answer.missing import NoAnswer
from spindlewise.answer.ranking import rank


def of(name, weight):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight),)})


WORLD = [of("heron", 310), of("siskin", 290), of("bulky", 360), worlds.plain("gull", 330)]
PRICES = [worlds.price("heron", 400), worlds.price("siskin", 900), worlds.price("bulky", 450)]


def climbed(baseline=None, products=WORLD, prices=PRICES, **buyer):
    desk = worlds.desk(products, prices)
    return climb(desk, rank(desk, worlds.buyer(**buyer)), baseline)


def test_from_owned_pedals_the_whole_price_is_for_the_grams():
    found = climbed(present_pedals="gull")

    assert (found.baseline, found.owned) == ("gull", True)
    assert [(s.product, s.status, s.step_cost_per_gram) for s in found.steps] == [
        ("gull", "baseline", None),
        ("heron", "rung", Decimal(20)),
        ("siskin", "rung", Decimal(25)),
        ("bulky", "dominated", None),
    ]


def test_from_a_product_that_would_be_bought_only_the_difference_counts():
    found = climbed("bulky")

    assert found.owned is False
    assert [(s.product, s.extra_cost) for s in found.steps][1:] == [
        ("heron", Decimal("-50.00")),
        ("siskin", Decimal("450.00")),
    ]


def test_what_a_safety_notice_holds_back_is_no_step_and_dominates_nobody():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "The spindle may crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    frail = worlds.product("frail", {"weight_g": (worlds.weighed(280),)}, safety_notices=(notice,))
    prices = [*PRICES, worlds.price("frail", 300)]
    found = climbed(None, [*WORLD, frail], prices, present_pedals="gull")

    without = climbed(present_pedals="gull")
    assert found.steps == without.steps, "a cheap and light one that nobody should ride changes no step"
    assert found.left_out == (("frail", HELD_BACK),)


def test_an_unknown_weight_stands_beside_the_ladder_with_its_reason():
    bare = worlds.product("bare", {"weight_g": "unknown"})
    found = climbed(None, [*WORLD, bare], [*PRICES, worlds.price("bare", 300)], present_pedals="gull")

    assert found.left_out == (("bare", "weight unknown: nobody has stated it"),)


@pytest.mark.parametrize(
    ("baseline", "present", "message"),
    [
        (None, "none", "the buyer states no present pedals"),
        (None, "unknown", "the buyer states no present pedals"),
        ("nobody", "none", "the catalog has no product nobody"),
        ("bare", "none", "the weight of bare is unknown: nobody has stated it"),
        ("gull", "none", "gull: no price in force in EU on 2026-11-20"),
    ],
)
def test_without_a_baseline_that_can_be_weighed_and_paid_there_is_no_ladder(baseline, present, message):
    bare = worlds.product("bare", {"weight_g": "unknown"})

    with pytest.raises(NoAnswer) as caught:
        climbed(baseline, [*WORLD, bare], PRICES, present_pedals=present)

    assert caught.value.message == message
    assert caught.value.tip
