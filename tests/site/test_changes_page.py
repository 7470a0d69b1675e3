from datetime import date

import worlds
from spindlewise.site.changes_page import changes_page


def test_days_are_the_newest_first_and_carry_what_they_did():
    rows = [
        worlds.price("heron", 500, date=date(2026, 7, 1), line=2),
        worlds.price("siskin", 450, date=date(2026, 7, 1), line=3),
        worlds.price("heron", 400, date=date(2026, 10, 1), line=4),
        worlds.price("siskin", 440, date=date(2026, 10, 5), line=5),
        worlds.price(
            "siskin", 300, date=date(2026, 8, 1), line=6, seller="Old Shop", valid_until=date(2026, 8, 9)
        ),
    ]
    catalog = worlds.catalog([worlds.product("heron"), worlds.product("siskin")], rows)
    page = changes_page(catalog, {"tester": worlds.buyer()}, worlds.DAY)
    assert page.since == date(2026, 8, 22)
    assert [day.day for day in page.days] == [date(2026, 10, 5), date(2026, 10, 1)]
    (moved,) = page.moved
    assert moved.anchor == "day-2026-10-01"
    assert [(m.buyer, m.before, m.after) for m in moved.moves] == [("tester", "siskin", "heron")]


def test_nothing_changed():
    page = changes_page(worlds.catalog([worlds.product("heron")], []), {}, worlds.DAY)
    assert page.days == page.moved == ()
