"""Two products side by side for a buyer."""

from datetime import date
from decimal import Decimal

import pytest

import worlds
from spindlewise.answer.versus import versus
from spindlewise.decide.break_even import Outcome


def of(name, weight, spread=1.0, **changes):
    return worlds.product(name, {**worlds.TRIED, "weight_g": (worlds.weighed(weight, spread),)}, **changes)


HERON, SISKIN = of("heron", 330), of("siskin", 300)
PRICES = [worlds.price("heron", 500), worlds.price("siskin", 650)]


def compared(first="heron", second="siskin", products=(HERON, SISKIN), prices=PRICES, **buyer):
    return versus(worlds.desk(products, prices), worlds.buyer(**buyer), first, second)


def test_who_gains_where_adds_up_to_the_difference_in_score():
    found = compared()

    assert found.against.total == pytest.approx(found.first.score.expected - found.second.score.expected)
    assert found.against.parts[0].criterion == "price"
    assert not found.level


def test_swapping_the_two_turns_every_sign():
    there, back = compared(), compared("siskin", "heron")

    assert there.against.total == pytest.approx(-back.against.total)
    assert there.swap.weight.expected_g == -back.swap.weight.expected_g


def test_break_even_both_ways():
    found = compared()

    assert found.first.draws_level_at.amount > Decimal(500)
    assert found.second.draws_level_at.amount < Decimal(650)


def test_without_money_among_the_weights_there_is_no_break_even():
    assert compared(points={"weight": 1}).first.draws_level_at is None


def test_needs_that_fail_are_told_but_do_not_stop_the_comparison():
    found = compared(budget=600)

    assert [f.need for f in found.second.sifted.failures] == ["budget"]
    assert found.first.sifted.failures == ()


def test_an_unpriced_product_is_compared_with_its_price_unknown():
    found = compared(prices=[worlds.price("heron", 500)])

    assert found.second.standings["price"].origin == "unknown"
    assert found.second.score.low < found.second.score.high


def test_two_within_their_uncertainty_are_level():
    close = (of("heron", 330, 8.0), of("siskin", 331, 8.0))

    assert compared(products=close, prices=[worlds.price("heron", 500), worlds.price("siskin", 500)]).level


def test_a_safety_notice_stands_beside_the_product_and_no_price_helps_it():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "May crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    found = compared(products=(HERON, of("siskin", 300, safety_notices=(notice,))))

    assert found.second.notices
    assert found.second.draws_level_at.outcome is Outcome.HELD_BACK
    assert found.second.disclosure.commission == "none"


def test_one_product_twice_is_refused():
    with pytest.raises(ValueError, match="named twice"):
        compared("heron", "heron")
