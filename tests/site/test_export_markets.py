"""Prices in minor units for each region, with the factor to the curves' currency."""

import worlds
from spindlewise.site.export_markets import exported_markets


def test_prices_in_minor_units_and_what_has_none_says_why():
    desk = worlds.desk([worlds.product("heron"), worlds.product("siskin")], [worlds.price("heron", 499.5)])
    markets = {m["code"]: m for m in exported_markets(desk)}

    assert markets["EU"]["prices"]["heron"]["minor_units"] == 49950
    assert markets["EU"]["prices"]["siskin"]["because"] == "no price in force in EU on 2026-11-20"
    assert (markets["JP"]["digits"], markets["EU"]["digits"]) == (0, 2)
    assert markets["EU"]["per_minor_unit"] == 0.01
