from datetime import date

import worlds
from spindlewise.site.history_pictures import history_pictures


def test_a_picture_for_each_region_in_which_a_price_moved():
    rows = [
        worlds.price("heron", 500, date=date(2026, 1, 5)),
        worlds.price("heron", 480, line=3),
        worlds.price("heron", 500, line=4, region="US", currency="USD"),
        worlds.price("siskin", 300, line=5, region="JP", currency="JPY"),
    ]
    catalog = worlds.catalog([worlds.product("heron"), worlds.product("siskin")], rows)
    found = history_pictures(catalog, "heron", worlds.DAY)
    assert list(found) == ["EU"]
    assert found["EU"].name == "prices-eu"
    assert "Invented Works Heron" in found["EU"].description
