"""The field: who fails what but money, worked out once for all who are alike."""

from datetime import date
from decimal import Decimal

import pytest

import worlds
from spindlewise.answer.field import field_for
from spindlewise.answer.market import NoMarket

NOTICE = {
    "date": date(2026, 5, 1),
    "ended": "none",
    "what": "The axle may crack.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def desk():
    products = [
        worlds.product("heron"),
        worlds.plain("gull", 220),
        worlds.product("risky", safety_notices=(NOTICE,)),
    ]
    return worlds.desk(products, [worlds.price("heron", 500), worlds.price("risky", "610.50")])


def test_products_stand_by_id_with_their_failures_prices_and_notices():
    found = field_for(desk(), worlds.buyer())

    assert found.names == ("gull", "heron", "risky")
    assert found.fails == (1, 0, 0)
    assert found.sifted[0].failures[0].need == "kind"
    assert found.amounts == (None, Decimal(500), Decimal("610.50"))
    assert found.held_back.tolist() == [False, False, True]


@pytest.mark.parametrize(
    ("budget", "too_dear"),
    [
        (None, (True, False, False)),
        (Decimal("610.50"), (True, False, False)),
        (Decimal("610.49"), (True, False, True)),
        (Decimal(499), (True, True, True)),
    ],
)
def test_money_keeps_out_what_has_no_price_or_one_over_the_budget(budget, too_dear):
    assert field_for(desk(), worlds.buyer()).too_dear(budget) == too_dear


def test_buyers_of_any_budget_and_weights_meet_one_field():
    at = desk()
    found = field_for(at, worlds.buyer(budget=500))

    assert field_for(at, worlds.buyer(budget=900, points={"weight": 1})) is found
    assert field_for(at, worlds.buyer(needs={"kind": "any"})) is not found
    assert field_for(at, worlds.buyer(), with_promised=True) is not found


def test_buyers_of_two_regions_share_what_does_not_depend_on_money():
    at = desk()
    here, there = field_for(at, worlds.buyer()), field_for(at, worlds.buyer(region="US", currency="USD"))

    assert here is not there
    assert here.sifted is there.sifted
    with pytest.raises(NoMarket, match="knows no region XX"):
        field_for(at, worlds.buyer(region="XX"))
