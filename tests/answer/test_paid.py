"""What a buyer pays: the least price in force, tax in, in the buyer's own currency."""

from datetime import date
from decimal import Decimal

import worlds
from spindlewise.answer.paid import Paid, Unpriced, as_paid, paid_for
from spindlewise.catalog.price_log import prices_in_force


def pays(*rows, region="EU", currency="EUR", day=worlds.DAY):
    catalog = worlds.catalog([worlds.product("heron")], rows)
    return paid_for("heron", prices_in_force(rows, region, day), catalog, region, currency, day)


def test_the_least_of_the_prices_in_force():
    found = pays(
        worlds.price("heron", 649, kind="list", seller="Maker"),
        worlds.price("heron", 599),
        worlds.price("heron", 579, seller="Lock Cycles"),
    )

    assert isinstance(found, Paid)
    assert (found.amount, found.row.seller, found.age_days) == (Decimal("579.00"), "Lock Cycles", 50)


def test_an_expired_offer_is_not_a_price():
    ended = worlds.price("heron", 499, kind="offer", valid_until=date(2026, 11, 19))

    assert pays(ended, worlds.price("heron", 599)).amount == Decimal("599.00")
    assert pays(ended) == Unpriced("no price in force in EU on 2026-11-20")


def test_an_offer_holds_through_its_last_day():
    last = worlds.price("heron", 499, kind="offer", valid_until=worlds.DAY)

    assert pays(last).amount == Decimal("499.00")


def test_what_is_dated_later_is_not_seen():
    later = worlds.price("heron", 399, date=date(2026, 11, 21))

    assert pays(later, worlds.price("heron", 599)).amount == Decimal("599.00")
    assert pays(later, worlds.price("heron", 599), day=date(2026, 11, 21)).amount == Decimal("399.00")


def test_a_newer_price_of_the_same_offer_replaces_the_older_even_if_dearer():
    rows = worlds.price("heron", 499, date=date(2026, 9, 1)), worlds.price("heron", 549)

    assert pays(*rows).amount == Decimal("549.00")


def test_tax_is_added_with_the_regions_dated_rate_and_said():
    row = worlds.price("heron", 600, region="US", currency="USD", tax="out")
    found = pays(row, region="US", currency="USD")

    assert found.amount == Decimal("645.00")
    assert found.conversion == ("tax of 7.5 % added",)


def test_a_price_abroad_is_converted_with_a_dated_rate_and_rounded_once_to_the_minor_unit():
    found = pays(worlds.price("heron", "333.33", currency="USD"))

    assert found.amount == Decimal("303.03")
    assert found.conversion == ("1 EUR = 1.1 USD (2026-01-01)",)
    yen = pays(worlds.price("heron", "100.10"), currency="JPY")
    assert yen.amount == Decimal("16016")


def test_without_a_rate_or_a_tax_rate_on_or_before_the_day_there_is_no_price():
    catalog = worlds.catalog([], [])
    early = date(2025, 6, 1)
    dollar = worlds.price("heron", 500, currency="USD", date=early)
    untaxed = worlds.price("heron", 500, tax="out", date=date(2024, 1, 1))

    assert as_paid(dollar, catalog, "EUR", early) == Unpriced(
        "no rate from USD to EUR dated on or before 2025-06-01"
    )
    assert as_paid(untaxed, catalog, "EUR", date(2024, 6, 1)) == Unpriced(
        "no tax rate for EU dated on or before 2024-06-01"
    )
    assert pays(dollar, day=early) == Unpriced("no rate from USD to EUR dated on or before 2025-06-01")
