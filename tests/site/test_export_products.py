"""Exported products: the figures as they stand on the day, and what is absent with its reason."""

import math

import pytest

import worlds
from spindlewise.answer.received import ANY_RECEIVER, receive_all
from spindlewise.site.export_products import exported_product, own_budget


def exported(product):
    desk = worlds.desk([product], [worlds.price(product.id, 500)])
    return exported_product(desk, desk.catalog.products[product.id], 3)


def test_a_figure_has_text_value_interval_and_merits():
    found = exported(worlds.product("heron", {"weight_g": (worlds.weighed(330.0, 2.0),)}))
    weight = found["figures"]["weight"]
    assert (weight["text"], weight["spread"], weight["origin"]) == ("330 g", "± 2 g", "measured")
    assert (weight["low"], weight["value"], weight["high"]) == (328.0, 330.0, 332.0)
    # the test's curve falls from 1 at 280 g to 0 at 450 g
    assert weight["merits"] == pytest.approx([(450 - g) / 170 for g in (332, 330, 328)])
    assert found["reception"] == 3


def test_what_is_unknown_has_no_value_and_the_merits_of_the_plausible_span():
    found = exported(worlds.product("heron", {"weight_g": "unknown"}))
    weight = found["figures"]["weight"]
    assert weight["value"] is None
    assert weight["text"] == "unknown"
    low, expected, high = weight["merits"]
    assert low == expected < high
    assert found["needs"]["weight"] == {"absent": "unknown", "because": "nobody has stated it"}


def test_needs_see_what_was_observed_with_its_grade():
    needs = exported(worlds.product("heron"))["needs"]
    assert needs["rider_limit"] == {"value": 110.0, "low": 110.0, "high": 110.0, "grade": "claimed"}
    assert needs["ingress"] == {"code": "IPX7"}
    assert (needs["bolts"], needs["pattern"]) == ("three-bolt", "Keel")


def test_an_ingress_code_that_is_none_says_so():
    none = (worlds.seen("none", grade="claimed"),)
    assert exported(worlds.product("heron", {"ingress": none}))["needs"]["ingress"]["absent"] == "none"


def test_the_reading_lists_causes_as_python_has_them():
    product = worlds.product(
        "heron",
        {
            "reading_bias_pct": (worlds.seen(0.6, plus_minus=0.3),),
            "reading_spread_pct": (worlds.seen(1.2),),
            "temperature_pct": (worlds.seen(0.5),),
        },
    )
    reading = exported(product)["reading"]
    assert reading["causes"] == [
        ["bench bias", pytest.approx(0.3 / math.sqrt(3)), 0.6, None],
        ["bench spread", 1.2, 0.0, None],
    ]
    assert reading["temperature"] == [["temperature", pytest.approx(0.5 / math.sqrt(3)), 0.0, None]]
    assert reading["missing"] == []


def test_its_own_budget_is_the_buyers_where_nothing_of_the_buyer_adds_to_it():
    desk = worlds.desk([worlds.product("heron")], [])
    received = receive_all(desk.catalog, desk.yardstick, worlds.buyer(receivers=()), desk.day)["heron"]
    assert received.reception.receiver == ANY_RECEIVER.name
    assert own_budget(desk.catalog.products["heron"], desk.day, desk.yardstick.unmeasured) == received.budget


def test_without_a_tolerance_the_reading_says_what_is_missing():
    reading = exported(worlds.product("heron", {"tolerance_pct": "unknown"}))["reading"]
    assert reading["missing"] == ["claimed tolerance"]


def test_the_swap_has_both_stack_bases_apart():
    top = exported(worlds.product("heron"))["swap"]
    assert (top["top"], top["sole"], top["offset"]) == ([11.0, 0.2], None, [54.0, 0.2])
    sole = exported(worlds.product("heron", {"stack_mm": (worlds.stack(16.5, "axis to sole"),)}))["swap"]
    assert (sole["top"], sole["sole"]) == (None, [16.5, 0.2])


def test_a_cleat_of_unknown_spread_counts_as_exact():
    cleat = {"bolts": "two-bolt", "pattern": "Fin", "height_mm": "unknown", "plus_minus_mm": "unknown"}
    swap = exported(worlds.product("heron", cleat=cleat))["swap"]
    assert (swap["cleat"], swap["cleat_plus_minus"]) == ("unknown", 0.0)
