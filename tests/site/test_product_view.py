from datetime import date

import worlds
from spindlewise.answer.reply import reply_to
from spindlewise.site.buyer_places import buyer_places
from spindlewise.site.product_view import product_view

CELLS = {
    "date": date(2026, 1, 1),
    "region": "EU",
    "currency": "EUR",
    "amount": 9,
    "tax": "in",
    "source": "shelf",
}


def view(product, prices=(), buyer=None):
    desk = worlds.desk([product, worlds.product("siskin")], [worlds.price("siskin", 400), *prices])
    missing = dict.fromkeys(desk.catalog.settings.regions, "")
    places = buyer_places("tester", reply_to(desk, buyer or worlds.buyer()))
    return product_view(desk, product, missing, (places[product.id],))


def notice(day, ended="none"):
    return {"date": day, "ended": ended, "what": "cracks", "action": "stop", "issued_by": "maker"}


def test_notices_that_stand_lifted_ones_and_later_ones():
    found = view(
        worlds.product(
            "heron",
            safety_notices=(
                notice(date(2026, 1, 1)),
                notice(date(2025, 1, 1), date(2025, 6, 1)),
                notice(date(2027, 1, 1)),
            ),
        )
    )
    assert [n.date for n in found.notices] == [date(2026, 1, 1)]
    assert [n.date for n in found.lifted] == [date(2025, 1, 1)]


def test_prices_now_and_why_there_is_none():
    found = view(worlds.product("heron"), [worlds.price("heron", 500)])
    (eu, us, _) = found.prices_now
    assert eu[2] is not None
    assert eu[2].text == "EUR 500.00"
    assert us[2] is None
    assert us[3] == "no price in force in US on 2026-11-20"


def test_place_with_each_buyer_or_why_it_is_out():
    inside = view(worlds.product("heron"), [worlds.price("heron", 900)]).places[0]
    assert (inside.rank, inside.place) == (2, "2")
    out = view(worlds.product("heron"), [worlds.price("heron", 900)], worlds.buyer(budget=500)).places[0]
    assert out.rank is None
    assert out.because == ("it costs EUR 900.00, EUR 400.00 over the budget",)


def test_upkeep_has_prices_seen_by_the_day():
    battery = {
        "type": "AAA",
        "count": 2,
        "cell_weight_g": 11.5,
        "spare_prices": (CELLS, {**CELLS, "date": date(2027, 1, 1)}),
    }
    service = {"what": "bearings", "prices": (CELLS,)}
    found = view(worlds.product("heron", battery=battery, service=service))
    assert [(what, len(prices)) for what, prices in found.upkeep] == [
        ("one set of spare cells (AAA)", 1),
        ("bearings", 1),
    ]


def test_reports_newest_first():
    report = {
        "what": "play",
        "count": 1,
        "of_units": "unknown",
        "grade": "reported",
        "status": "open",
        "source": "forum",
    }
    reports = tuple({**report, "date": date(2026, month, 1)} for month in (2, 5, 12))
    found = view(worlds.product("heron", reliability=reports))
    assert [r.date.month for r in found.reports] == [5, 2]


def test_a_held_back_pedal_has_no_place_with_a_buyer():
    heron = worlds.product("heron", safety_notices=(notice(date(2026, 1, 1)),))
    place = view(heron, [worlds.price("heron", 300)]).places[0]
    assert (place.place, place.held_back) == ("", True)


def test_where_no_region_can_be_served_there_is_neither_price_nor_weight():
    product = worlds.product("heron")
    desk = worlds.desk([product], [])
    found = product_view(desk, product, {"EU": "no rate"}, ())
    assert found.prices_now == (("EU", desk.catalog.settings.regions["EU"].name, None, "no rate"),)
    assert found.weight is None
