"""What nearly made it, and the one need it fails."""

from datetime import date

import worlds
from spindlewise.answer.near_misses import near_misses
from spindlewise.answer.ranking import rank


def of(name, weight, **changes):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight),)}, **changes)


def missed(products, prices, **buyer):
    desk = worlds.desk(products, prices)
    return near_misses(rank(desk, worlds.buyer(**buyer)))


def test_a_better_one_just_over_budget_is_named_with_by_how_much():
    found = missed(
        [of("heron", 400), of("siskin", 290)],
        [worlds.price("heron", 500), worlds.price("siskin", 510)],
        budget=505,
    )

    assert [(m.product, m.failure.because) for m in found] == [
        ("siskin", "it costs EUR 510.00, EUR 5.00 over the budget")
    ]


def test_one_that_would_not_have_led_is_no_near_miss():
    found = missed(
        [of("heron", 290), of("siskin", 400)],
        [worlds.price("heron", 500), worlds.price("siskin", 510)],
        budget=505,
    )

    assert found == ()


def test_two_failed_needs_or_the_wrong_kind_are_no_near_miss():
    two_bolt = {"bolts": "two-bolt", "pattern": "Keel", "height_mm": 5.5}
    found = missed(
        [of("heron", 400), of("siskin", 290, cleat=two_bolt), worlds.plain("gull", 220)],
        [worlds.price("heron", 500), worlds.price("siskin", 900), worlds.price("gull", 100)],
        budget=505,
        needs={"shoes": {"bolts": "three-bolt"}},
    )

    assert found == ()


def test_where_nothing_fits_the_nearest_are_named_best_first():
    found = missed(
        [of(name, weight) for name, weight in (("a1", 400), ("b2", 300), ("c3", 350), ("d4", 290))],
        [worlds.price(name, 600) for name in ("a1", "b2", "c3", "d4")],
        budget=100,
    )

    assert [m.product for m in found] == ["d4", "b2", "c3"]


def test_a_product_under_a_safety_notice_is_never_nearly_right():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "May crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    found = missed(
        [of("heron", 400), of("siskin", 290, safety_notices=(notice,))],
        [worlds.price("heron", 500), worlds.price("siskin", 510)],
        budget=505,
    )

    assert found == ()


def test_what_was_barred_fails_the_need_that_is_no_longer_known():
    desk = worlds.desk(
        [of("heron", 400), of("siskin", 290)], [worlds.price("heron", 500), worlds.price("siskin", 500)]
    )
    found = near_misses(rank(desk, worlds.buyer(), barred=frozenset({"siskin"})))

    assert [(m.product, m.failure.need) for m in found] == [("siskin", "rider weight")]
