"""Exported markets: prices in minor units, in each region's own money, and what is bought again."""

from datetime import date

import pytest

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.answer.paid import Paid
from spindlewise.catalog.money import RateTable
from spindlewise.site.export_markets import exported_markets

CELLS = {
    "type": "AAA",
    "count": 4,
    "cell_weight_g": 11.5,
    "spare_prices": (
        {
            "date": date(2026, 5, 1),
            "region": "EU",
            "currency": "EUR",
            "amount": 4.8,
            "tax": "in",
            "source": "seen",
        },
    ),
}


def markets(products, prices):
    desk = worlds.desk(products, prices)
    return desk, {m["code"]: m for m in exported_markets(desk)}


def test_prices_are_whole_minor_units_of_each_regions_money():
    prices = [
        worlds.price("heron", "499.90"),
        worlds.price("heron", "500.00", region="US", currency="USD", tax="out"),
        worlds.price("heron", 80_000, region="JP", currency="JPY"),
    ]
    _, found = markets([worlds.product("heron")], prices)
    assert {code: m["prices"]["heron"]["minor_units"] for code, m in found.items()} == {
        "EU": 49_990,
        "US": 53_750,
        "JP": 80_000,
    }
    assert {code: m["digits"] for code, m in found.items()} == {"EU": 2, "US": 2, "JP": 0}


def test_a_minor_unit_is_worth_what_python_says():
    desk, found = markets([worlds.product("heron")], [worlds.price("heron", 500)])
    for code, market in found.items():
        factor = desk.market(code, market["currency"]).factor
        assert market["factor"] == pytest.approx(float(factor))
        assert market["per_minor_unit"] == pytest.approx(float(factor) / 10 ** market["digits"])


def test_merits_are_those_of_the_market():
    desk, found = markets([worlds.product("heron")], [worlds.price("heron", 600)])
    assert found["EU"]["prices"]["heron"]["merits"] == [0.5, 0.5, 0.5]
    assert isinstance(desk.market("EU", "EUR").prices["heron"], Paid)


def test_no_price_says_why_and_has_the_merits_of_the_unknown():
    _, found = markets([worlds.product("heron")], [])
    price = found["EU"]["prices"]["heron"]
    assert "minor_units" not in price
    assert price["because"] == "no price in force in EU on 2026-11-20"
    assert price["merits"][0] == price["merits"][1] < price["merits"][2]


@pytest.mark.parametrize(
    ("changes", "short"),
    [
        ({}, "street"),
        ({"kind": "offer", "valid_until": date(2026, 11, 30)}, "offer until 2026-11-30"),
        ({"date": date(2026, 1, 3)}, "street, old: 2026-01-03"),
    ],
)
def test_an_old_price_and_an_offer_are_called_so(changes, short):
    _, found = markets([worlds.product("heron")], [worlds.price("heron", 500, **changes)])
    assert found["EU"]["prices"]["heron"]["short"] == short


def test_upkeep_is_listed_in_the_regions_money():
    product = worlds.product("heron", battery=CELLS)
    _, found = markets([product, worlds.plain("slab")], [worlds.price("heron", 500)])
    assert found["EU"]["upkeep"] == {
        "heron": [{"name": "spare cells", "price": "4.8", "every_hours": "60.0"}]
    }
    assert found["JP"]["upkeep"]["heron"][0]["price"] == "768.0"


def test_upkeep_that_nobody_knows_has_no_price():
    _, found = markets([worlds.product("heron", battery="unknown")], [])
    assert found["EU"]["upkeep"]["heron"] == [{"name": "batteries", "price": None, "every_hours": None}]


def test_a_region_that_cannot_be_served_says_why():
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    object.__setattr__(catalog, "rates", RateTable([]))
    found = {m["code"]: m for m in exported_markets(Desk(catalog))}
    assert found["JP"]["missing"] == "no rate from JPY to EUR on or before 2026-11-20"
    assert "prices" not in found["JP"]
    assert "prices" in found["EU"]
