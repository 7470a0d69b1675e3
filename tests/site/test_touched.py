from datetime import date

import worlds
from spindlewise.site.touched import touched

SINCE = date(2026, 8, 1)


def test_a_price_touches_its_product_in_its_region_when_it_is_seen_and_when_it_has_run_out():
    row = worlds.price("heron", 500, date=date(2026, 9, 1), kind="offer", valid_until=date(2026, 9, 14))
    catalog = worlds.catalog([worlds.product("heron")], [row, worlds.price("gone", 1, date=date(2026, 9, 3))])
    found = touched(catalog, SINCE, worlds.DAY)
    assert list(found) == [date(2026, 9, 1), date(2026, 9, 15)]
    for each in found.values():
        assert each.in_region("EU") == {"heron"}
        assert each.in_region("US") == frozenset()
        assert not each.everything


def test_a_weighing_and_a_rate_reach_everything_and_other_dates_their_product():
    catalog = worlds.catalog(
        [
            worlds.product("heron", {"weight_g": (worlds.weighed(300, date=date(2026, 9, 1)),)}),
            worlds.product("siskin", {"stack_mm": (worlds.stack(9.0, date=date(2026, 9, 2)),)}),
        ],
        [],
    )
    found = touched(catalog, SINCE, worlds.DAY)
    assert found[date(2026, 9, 1)].everything
    assert not found[date(2026, 9, 2)].everything
    assert found[date(2026, 9, 2)].in_region("JP") == {"siskin"}
    assert touched(catalog, date(2025, 12, 31), date(2026, 1, 1))[date(2026, 1, 1)].everything
