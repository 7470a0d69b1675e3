"""Which products stand on the ladder, which do not and why."""

from __future__ import annotations

from decimal import Decimal

import pytest

from spindlewise.cost.ladder import LadderStep, ladder
from spindlewise.cost.quadrants import Interval, Offer

OWNED = Offer("owned", Decimal(0), 320.0, 319.0, 321.0)


def offer(product: str, price: int, weight_g: float, plus_minus_g: float = 1.0) -> Offer:
    return Offer(product, Decimal(price), weight_g, weight_g - plus_minus_g, weight_g + plus_minus_g)


def by_name(steps: tuple[LadderStep, ...]) -> dict[str, LadderStep]:
    return {step.product: step for step in steps}


def test_the_baseline_alone_is_a_ladder_of_one() -> None:
    (only,) = ladder(OWNED, [])
    assert (only.product, only.status, only.quadrant) == ("owned", "baseline", None)
    assert (only.saving_g, only.extra_cost) == (Interval(0.0, 0.0, 0.0), 0)


def test_each_rung_carries_the_price_from_the_baseline_and_from_the_step_below() -> None:
    steps = ladder(OWNED, [offer("lightest", 160, 280.0), offer("light", 60, 300.0)])
    assert [s.product for s in steps] == ["owned", "light", "lightest"]
    top = steps[2]
    assert (top.status, top.quadrant) == ("rung", "lighter and dearer")
    assert (top.cost_per_gram, top.step_cost_per_gram, top.step_from) == (4, 5, "light")
    assert (top.saving_g, top.step_saving_g) == (Interval(38.0, 40.0, 42.0), Interval(18.0, 20.0, 22.0))
    assert top.cost_per_gram_range == (Decimal(160) / 42, Decimal(160) / 38)


def test_whoever_is_dearer_and_heavier_names_all_that_dominate_it() -> None:
    found = by_name(
        ladder(OWNED, [offer("light", 60, 300), offer("other", 70, 299), offer("stout", 80, 305)])
    )
    assert (found["stout"].status, found["stout"].dominated_by) == ("dominated", ("light", "other"))
    assert found["stout"].cost_per_gram == per(80, 15)
    assert found["stout"].step_cost_per_gram is None
    assert found["stout"].step_from is found["stout"].step_saving_g is None


def test_a_gram_that_is_surely_saved_is_a_rung_and_half_a_gram_too() -> None:
    owned = Offer("owned", Decimal(0), 320.0, 320.0, 320.0)
    for grams in (1.0, 0.5):
        _, step = ladder(owned, [offer("light", 60, 320.0 - grams, 0.1)])
        assert (step.status, step.step_cost_per_gram) == ("rung", Decimal(60) / Decimal(str(grams)))


def per(money: int, grams: int) -> Decimal:
    return Decimal(money) / Decimal(grams)


def test_a_gram_that_is_dearer_than_the_next_is_extendedly_dominated_by_its_neighbours() -> None:
    steps = ladder(OWNED, [offer("light", 100, 310), offer("stout", 180, 306), offer("lightest", 200, 290)])
    found = by_name(steps)
    assert [s.product for s in steps] == ["owned", "lightest", "light", "stout"]
    assert found["light"].status == found["stout"].status == "extendedly dominated"
    assert found["light"].dominated_by == found["stout"].dominated_by == ("owned", "lightest")
    assert found["lightest"].step_from == "owned"


def test_equal_step_prices_stay_on_the_ladder() -> None:
    steps = ladder(OWNED, [offer("light", 30, 310), offer("lightest", 60, 300)])
    assert [s.step_cost_per_gram for s in steps] == [None, 3, 3]


def test_of_two_alike_the_later_by_id_is_dominated() -> None:
    found = by_name(ladder(OWNED, [offer("other", 60, 300), offer("light", 60, 300)]))
    assert found["light"].status == "rung"
    assert (found["other"].status, found["other"].dominated_by) == ("dominated", ("light",))


def test_a_lighter_and_cheaper_product_takes_the_baselines_place_at_the_foot() -> None:
    bought = offer("owned", 100, 320)
    steps = ladder(bought, [offer("light", 80, 300), offer("other", 90, 295), offer("lightest", 140, 290)])
    assert [(s.product, s.status) for s in steps] == [
        ("owned", "baseline"),
        ("light", "lighter and not dearer"),
        ("other", "rung"),
        ("lightest", "rung"),
    ]
    assert steps[0].dominated_by == ("light", "other")
    assert [s.cost_per_gram for s in steps] == [None, None, None, per(40, 30)]
    assert [s.step_cost_per_gram for s in steps] == [None, None, 2, 10]
    assert steps[1].extra_cost == -20


def test_heavier_and_cheaper_lies_below_the_foot_and_heavier_and_dearer_is_dominated() -> None:
    bought = offer("owned", 100, 320)
    steps = ladder(bought, [offer("stout", 60, 340), offer("dull", 110, 330), offer("worse", 70, 350)])
    found = by_name(steps)
    assert (found["stout"].status, found["stout"].saved_per_gram) == ("heavier and cheaper", 2)
    assert (found["dull"].status, found["dull"].dominated_by) == ("dominated", ("owned",))
    assert (found["worse"].status, found["worse"].dominated_by) == ("dominated", ("stout",))


def test_a_saving_within_the_weighings_error_takes_no_part_and_dominates_nobody() -> None:
    found = by_name(ladder(OWNED, [offer("vague", 10, 300, 40.0), offer("light", 60, 301)]))
    assert found["vague"].status == "no reliable saving"
    assert (found["vague"].cost_per_gram, found["vague"].dominated_by) == (None, ())
    assert found["light"].status == "rung"


def test_the_order_in_which_offers_come_changes_nothing() -> None:
    offers = [offer("a", 60, 300), offer("b", 60, 300), offer("c", 90, 299), offer("d", 200, 250)]
    assert ladder(OWNED, offers) == ladder(OWNED, offers[::-1])


def test_a_product_given_twice_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^the ladder has the product owned twice; give each product, baseline too, once$"
    ):
        ladder(OWNED, [offer("owned", 10, 300)])


def test_dearer_and_dearer_grams_are_rungs_however_few_they_are() -> None:
    # 3, 10, 20 and 60 a gram, for 20, 10, 5 and 1 of them
    prices = [("light", 60, 300), ("lighter", 160, 290), ("lightest", 260, 285), ("racing", 320, 284)]
    steps = ladder(OWNED, [offer(product, price, weight, 0.1) for product, price, weight in prices])
    assert [(s.status, s.step_cost_per_gram) for s in steps[1:]] == [
        ("rung", 3),
        ("rung", 10),
        ("rung", 20),
        ("rung", 60),
    ]


def test_two_dear_grams_on_the_way_to_twenty_cheap_ones_are_no_rung() -> None:
    owned = Offer("owned", Decimal(0), 320.0, 320.0, 320.0)
    found = by_name(ladder(owned, [offer("light", 30, 318, 0.1), offer("lightest", 130, 298, 0.1)]))
    assert found["light"].status == "extendedly dominated"
    assert found["lightest"].step_from == "owned"
