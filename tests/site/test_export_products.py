"""One product as the page is given it: unknown, none and not applicable stay three things."""

import worlds
from spindlewise.site.export_products import exported_product, own_budget


def exported(product):
    desk = worlds.desk([product], [worlds.price(product.id, 500)])
    return exported_product(desk, desk.catalog.products[product.id], 7)


def test_figures_carry_value_interval_origin_and_merits():
    found = exported(worlds.product("heron"))

    weight = found["figures"]["weight"]
    assert (weight["value"], weight["low"], weight["high"], weight["origin"]) == (
        330.0,
        329.0,
        331.0,
        "measured",
    )
    assert len(weight["merits"]) == 3
    assert found["reception"] == 7
    assert found["notices"] == []


def test_a_standing_notice_is_never_left_out():
    notice = {
        "date": worlds.DAY,
        "ended": "none",
        "what": "May crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    (said,) = exported(worlds.product("risky", safety_notices=(notice,)))["notices"]

    assert "May crack. Stop riding." in said


def test_what_is_absent_says_how():
    found = exported(worlds.product("bare", {"weight_g": "unknown", "running_hours": "not applicable"}))

    assert found["figures"]["weight"]["origin"] == "unknown"
    assert found["figures"]["running_time"]["origin"] == "not applicable"
    assert found["figures"]["weight"]["value"] is None


def test_the_products_own_budget_leaves_the_buyer_out():
    names = {c.name for c in own_budget(worlds.product("heron"), worlds.DAY).contributions}

    assert names == {"claimed tolerance"}
