from datetime import date

import worlds
from spindlewise.site.price_rows import region_prices


def history(*prices):
    return region_prices(worlds.catalog([worlds.product("heron")], prices), "heron", worlds.DAY)


def test_newest_first_with_standing_and_fall():
    (eu,) = history(
        worlds.price("heron", 600, date=date(2026, 1, 1), line=2),
        worlds.price("heron", 540, date=date(2026, 6, 1), line=3),
    )
    now, before = eu.lines
    assert (now.price, now.state) == ("EUR 540.00", "in force")
    assert now.fall == "EUR 60.00 less (10.0 %) than the EUR 600.00 seen on 2026-01-01"
    assert (before.state, before.fall) == ("replaced", "")


def test_an_expired_offer_is_no_price():
    (eu,) = history(worlds.price("heron", 400, kind="offer", valid_until=date(2026, 10, 2)))
    assert (eu.lines[0].state, eu.lines[0].until) == ("expired", "2026-10-02")


def test_a_lower_price_of_another_seller_is_no_fall():
    (eu,) = history(
        worlds.price("heron", 600, date=date(2026, 1, 1), line=2),
        worlds.price("heron", 500, date=date(2026, 6, 1), line=3, seller="Elsewhere"),
    )
    assert [line.fall for line in eu.lines] == ["", ""]
    assert [line.state for line in eu.lines] == ["in force", "in force"]


def test_regions_stand_apart_and_in_the_catalogs_order():
    found = history(
        worlds.price("heron", 650, region="US", currency="USD", tax="out"), worlds.price("heron", 600, line=3)
    )
    assert [region.code for region in found] == ["EU", "US"]


def test_no_price_no_region():
    assert history(worlds.price("heron", 600, date=date(2027, 1, 1))) == ()
