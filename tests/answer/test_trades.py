"""What a weight trades, in words of money."""

from decimal import Decimal

import pytest

import worlds
from spindlewise.answer.trades import rounded_part, trades
from spindlewise.answer.weighing import weigh


def traded(currency="EUR", **buyer):
    desk = worlds.desk([], [])
    asker = worlds.buyer(currency=currency, **buyer)
    return {t.criterion: t for t in trades(desk, asker, weigh(asker.weights))}


def test_so_many_grams_weigh_as_much_as_so_much_money():
    found = traded(points={"ownership": 1, "weight": 1})["weight"]

    # 10 g are 10/170 of half the score; ownership loses half the score over 1,300 EUR
    assert (found.amount, found.unit) == (10.0, "u")
    assert found.money == Decimal("76.47")


def test_money_is_in_the_buyers_own_currency():
    assert traded("USD", points={"ownership": 1, "weight": 1})["weight"].money == Decimal("84.12")


def test_money_itself_comes_in_the_buyers_currency_and_in_a_round_amount():
    euro, yen = (traded(money, points={"price": 1, "weight": 1})["price"] for money in ("EUR", "JPY"))
    # a tenth of 300 to 1,100 EUR, at 160 JPY each
    assert (euro.amount, euro.unit) == (50.0, "EUR")
    assert (yen.amount, yen.unit) == (10_000.0, "JPY")
    assert yen.points / yen.amount == pytest.approx(euro.points / euro.amount / 160)


def test_what_weighs_more_than_all_prices_gives_the_span_of_prices():
    much = traded("USD", points={"price": 1, "detail": 9})["detail"]
    assert much.beyond is not None
    assert [round(end) for end in much.beyond] == [330, 1210]
    assert traded(points={"price": 9, "detail": 1})["detail"].beyond is None


def test_a_warranty_is_traded_by_the_year():
    desk = worlds.desk([], [])
    desk.yardstick.units["warranty"] = "years"
    asker = worlds.buyer(points={"price": 1, "warranty": 1})
    found = {t.criterion: t for t in trades(desk, asker, weigh(asker.weights))}["warranty"]
    assert (found.amount, found.unit) == (1.0, "years")
    assert found.points == pytest.approx(100 / 2 / 5)


def test_twice_the_weight_trades_twice_the_money():
    once = traded(points={"price": 2, "weight": 1})["weight"].money
    twice = traded(points={"price": 2, "weight": 2})["weight"].money

    assert twice == pytest.approx(2 * once, abs=Decimal("0.01"))


def test_names_are_traded_from_plain_power_to_the_best():
    found = traded(points={"price": 1, "detail": 1})["detail"]

    assert (found.better, found.worse, found.amount) == (
        "power, balance and stroke metrics",
        "power only",
        None,
    )
    assert found.points == pytest.approx(20.0)


def test_without_money_among_the_weights_there_are_points_only():
    found = traded(points={"weight": 1})["weight"]

    assert found.money is None
    assert found.points == pytest.approx(100 * 10 / 170)


def test_money_itself_is_not_traded_against_money():
    assert traded(points={"price": 1, "weight": 1})["price"].money is None


@pytest.mark.parametrize(("size", "part"), [(14.0, 10.0), (0.65, 0.5), (80.0, 50.0), (0.2, 0.2), (700, 500)])
def test_a_round_part(size, part):
    assert rounded_part(size) == pytest.approx(part)
