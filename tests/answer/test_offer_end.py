"""An offer that runs out: its last day, and what is known to hold afterwards."""

from datetime import date
from decimal import Decimal

import worlds
from spindlewise.answer.offer_end import offer_end
from spindlewise.answer.paid import Paid, Unpriced

STREET = worlds.price("heron", 560)
OFFER = worlds.price("heron", 500, kind="offer", valid_until=date(2026, 11, 25), line=3)


def ended(*rows, region="EU", currency="EUR"):
    desk = worlds.desk([worlds.product("heron")], rows)
    buyer = worlds.buyer(region=region, currency=currency)
    paid = desk.market(region, currency).prices["heron"]
    assert isinstance(paid, Paid)
    return offer_end(desk, buyer, "heron", paid)


def test_the_street_price_seen_before_holds_again():
    found = ended(STREET, OFFER)
    assert (found.last_day, found.days_left) == (date(2026, 11, 25), 5)
    assert isinstance(found.after, Paid)
    assert (found.after.amount, found.after.row.kind) == (Decimal("560.00"), "street")


def test_a_price_without_a_last_day_has_no_end():
    assert ended(STREET) is None


def test_where_nothing_else_is_known_that_is_said():
    found = ended(OFFER)
    assert isinstance(found.after, Unpriced)
    assert found.after.because == "no price is known that holds"


def test_another_offer_may_follow_and_what_is_dated_later_is_not_seen():
    second = worlds.price(
        "heron", 520, kind="offer", valid_until=date(2026, 12, 24), seller="Mole End", line=4
    )
    later = worlds.price("heron", 450, date=date(2026, 11, 26), line=5)
    found = ended(STREET, OFFER, second, later)
    assert found.after.amount == Decimal("520.00")


def test_the_last_day_itself_is_still_a_day_of_the_offer():
    today = worlds.price("heron", 500, kind="offer", valid_until=worlds.DAY, line=3)
    assert ended(STREET, today).days_left == 0


def test_prices_are_those_of_the_buyers_region_in_the_buyers_currency():
    yen = worlds.price(
        "heron", 80_000, region="JP", currency="JPY", kind="offer", valid_until=date(2026, 11, 25), line=6
    )
    euro = worlds.price("heron", 600, region="JP", line=7)
    found = ended(STREET, yen, euro, region="JP", currency="JPY")
    assert (found.after.amount, found.after.currency) == (Decimal(96_000), "JPY")
