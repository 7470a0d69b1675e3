from datetime import date

import worlds
from spindlewise.site.region_table import region_table


def table(products, prices, region="EU"):
    return region_table(worlds.desk(products, prices), region)


def test_power_pedals_are_ranked_and_plain_ones_stand_beside():
    found = table(
        [
            worlds.product("heron", worlds.TRIED),
            worlds.product("siskin", worlds.TRIED),
            worlds.plain("stone"),
            worlds.plain("slate"),
        ],
        [worlds.price("heron", 600), worlds.price("siskin", 450), worlds.price("stone", 50)],
    )
    assert [row.product.id for row in found.ranked] == ["siskin", "heron"]
    assert [row.place for row in found.ranked] == ["1", "2"]
    slate, stone = found.plain
    assert (slate.price, slate.price_missing) == (None, "no price in force in EU on 2026-11-20")
    assert stone.price is not None
    assert stone.price.text == "EUR 50.00"
    assert sum(int(share) for _, share in found.weights) == 100


def test_an_unpriced_pedal_is_left_out_with_the_reason():
    found = table([worlds.product("heron")], [])
    assert found.ranked == ()
    ((product, because),) = found.left_out
    assert (product.id, because) == ("heron", "no price in force in EU on 2026-11-20")


def test_a_pedal_with_a_notice_has_no_place_and_stands_last():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "cracks",
        "action": "stop",
        "issued_by": "maker",
    }
    found = table(
        [worlds.product("heron", safety_notices=(notice,)), worlds.product("siskin")],
        [worlds.price("heron", 200), worlds.price("siskin", 900)],
    )
    assert [(row.product.id, row.place, row.held_back) for row in found.ranked] == [
        ("siskin", "1", False),
        ("heron", "", True),
    ]


def test_an_old_price_is_said_to_be_old():
    found = table([worlds.product("heron")], [worlds.price("heron", 500, date=date(2026, 1, 1))])
    assert found.ranked[0].price.old
    dated = worlds.price("heron", 500, date=date(2026, 1, 1), kind="offer", valid_until=date(2026, 12, 1))
    assert not table([worlds.product("heron")], [dated]).ranked[0].price.old


def test_a_region_that_cannot_be_served_says_why():
    desk = worlds.desk([worlds.product("heron")], [])
    regions = {
        **desk.catalog.settings.regions,
        "CH": desk.catalog.settings.regions["EU"].model_copy(update={"currency": "CHF"}),
    }
    from dataclasses import replace

    from spindlewise.answer.desk import Desk

    catalog = replace(desk.catalog, settings=desk.catalog.settings.model_copy(update={"regions": regions}))
    found = region_table(Desk(catalog), "CH")
    assert "no rate from CHF" in found.missing
    assert found.ranked == ()
