from datetime import date

import worlds
from spindlewise.answer.price_record import price_record

DAY = date(2026, 11, 20)


def test_a_newer_price_of_the_same_offer_replaces_and_is_measured_against_the_one_before() -> None:
    first = worlds.price("a", 600, line=2, date=date(2026, 1, 1))
    second = worlds.price("a", 550, line=3, date=date(2026, 2, 1))
    record = price_record([second, first], "a", DAY)
    assert [(line.row, line.state, line.before) for line in record] == [
        (first, "replaced", None),
        (second, "in force", first),
    ]


def test_another_seller_region_kind_or_tax_basis_is_another_offer() -> None:
    rows = [
        worlds.price("a", 600, line=2),
        worlds.price("a", 590, line=3, seller="Other"),
        worlds.price("a", 580, line=4, region="US"),
        worlds.price("a", 570, line=5, kind="list"),
        worlds.price("a", 560, line=6, tax="out"),
    ]
    assert {(line.state, line.before) for line in price_record(rows, "a", DAY)} == {("in force", None)}


def test_an_expired_price_is_no_price_and_later_ones_are_not_seen() -> None:
    gone = worlds.price("a", 500, line=2, kind="offer", valid_until=date(2026, 11, 19))
    holds = worlds.price("a", 510, line=3, kind="offer", seller="B", valid_until=DAY)
    later = worlds.price("a", 400, line=4, date=date(2026, 11, 21))
    record = price_record([gone, holds, later, worlds.price("b", 1, line=5)], "a", DAY)
    assert [(line.row, line.state) for line in record] == [(gone, "expired"), (holds, "in force")]


def test_two_of_one_day_go_by_their_line() -> None:
    first, second = worlds.price("a", 600, line=2), worlds.price("a", 610, line=3)
    record = price_record([second, first], "a", DAY)
    assert [line.state for line in record] == ["replaced", "in force"]
