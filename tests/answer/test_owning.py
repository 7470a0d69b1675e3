"""What owning a product costs over the buyer's years."""

from datetime import date
from decimal import Decimal

import worlds
from spindlewise.answer.owning import states_riding


def spare(amount, **changes):
    return {
        "date": date(2026, 1, 1),
        "region": "EU",
        "currency": "EUR",
        "amount": amount,
        "tax": "in",
        "source": "shop",
        **changes,
    }


def cells(*prices):
    return {"type": "CR2032", "count": 2, "cell_weight_g": 3.0, "spare_prices": prices or "unknown"}


def owned(product, priced=True, region="EU", currency="EUR", **riding):
    prices = [worlds.price(product.id, 500), worlds.price(product.id, 500, region="US", currency="USD")]
    desk = worlds.desk([product], prices if priced else [])
    riding = riding or {"years": 2.0, "hours_per_year": 200.0}
    return desk.ownership(worlds.buyer(region=region, currency=currency, riding=riding))[product.id]


def test_price_cells_and_service_add_up():
    service = {"what": "bearing set", "prices": (spare(39.0),)}
    heron = worlds.product(
        "heron", {"service_hours": (worlds.seen(150.0),)}, battery=cells(spare(4.0)), service=service
    )
    found = owned(heron)

    # 400 hours: six sets of cells beside the first at 60 h, two bearing sets beside the first at 150 h
    assert found.account.known_total == Decimal("500.00") + 6 * 4 + 2 * 39
    assert found.account.unknown == ()
    assert found.standings["ownership"].value == 602.0


def test_what_nobody_knows_the_price_of_is_named_and_lowers_the_low_merit_only():
    found = owned(worlds.product("heron", battery=cells(), service="unknown"))

    assert found.account.unknown == ("spare cells", "service")
    low, expected, high = found.merits["ownership"]
    assert low < expected == high
    assert "at least, not known: spare cells, service" in found.standings["ownership"].note


def test_an_unknown_battery_is_not_free():
    assert owned(worlds.product("heron", battery="unknown")).account.unknown == ("batteries",)


def test_cells_that_are_charged_add_nothing():
    charged = {
        "type": "built-in",
        "count": 2,
        "cell_weight_g": "not applicable",
        "spare_prices": "not applicable",
    }
    assert owned(worlds.product("heron", battery=charged)).account.known_total == Decimal("500.00")


def test_side_prices_prefer_the_buyers_region_and_are_taxed_and_converted():
    abroad = spare(10.0, region="US", currency="USD", tax="out", date=date(2026, 6, 1))
    heron = worlds.product("heron", battery=cells(spare(4.0), abroad))

    lines = {line.name: line for line in owned(heron, region="US", currency="USD").account.lines}
    assert lines["spare cells"].price == Decimal("10.75")
    only_abroad = worlds.product("heron", battery=cells(abroad))
    lines = {line.name: line for line in owned(only_abroad).account.lines}
    assert round(lines["spare cells"].price, 4) == Decimal("9.7727")


def test_side_prices_that_cannot_be_converted_or_taxed_or_come_later_do_not_count():
    krona = spare(40.0, currency="SEK")
    untaxed = spare(4.0, region="XX", tax="out")
    later = spare(4.0, date=date(2027, 1, 1))

    assert owned(worlds.product("heron", battery=cells(krona, untaxed, later))).account.unknown == (
        "spare cells",
    )


def test_without_a_price_there_is_no_cost_of_owning():
    found = owned(worlds.product("heron"), priced=False)

    assert found.standings["ownership"].origin == "unknown"
    assert found.merits["ownership"][0] == found.merits["ownership"][1]


def test_an_account_is_shown_to_those_who_say_how_long_or_how_much_they_ride():
    assert not states_riding(worlds.buyer())
    assert states_riding(worlds.buyer(riding={"years": 2.0}))
    assert states_riding(worlds.buyer(riding={"hours_per_year": 200.0}))


def test_a_buyer_who_says_nothing_of_years_gets_the_typical_ones_and_is_told():
    desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])
    found = desk.ownership(worlds.buyer())["heron"]

    assert found.standings["ownership"].note.startswith("over 3 years at 250 h")
