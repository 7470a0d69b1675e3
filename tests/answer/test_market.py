"""A market serves all buyers of one region and currency on one day."""

import pytest

import worlds
from spindlewise.answer.paid import Unpriced


def test_an_unpriced_product_has_the_merits_of_the_plausible_span():
    desk = worlds.desk([worlds.product("heron")], [])
    market = desk.market("EU", "EUR")

    assert isinstance(market.prices["heron"], Unpriced)
    assert market.standings["heron"]["price"].source == "no price in force in EU on 2026-11-20"
    low, expected, high = market.merits["heron"]["price"]
    assert low == expected < high


def test_the_curves_currency_is_reached_with_a_dated_rate():
    desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 550, region="US", currency="USD")])
    dollar = desk.market("US", "USD")

    # 550 USD are 500 EUR at 1.10; the curve gives 0.625 there
    assert round(dollar.merits["heron"]["price"][1], 9) == 0.625
    assert dollar.held_back == frozenset()


def test_the_merits_of_many_prices_are_those_of_each() -> None:
    prices = {"heron": 399.99, "siskin": 400, "wren": 733.33, "auk": 1850, "knot": 9999}
    desk = worlds.desk(
        [worlds.product(name) for name in prices], [worlds.price(name, cost) for name, cost in prices.items()]
    )
    market = desk.market("EU", "EUR")
    for name, cost in prices.items():
        merit = desk.yardstick.curves["price"].of(float(cost))
        assert market.merits[name]["price"] == pytest.approx((merit, merit, merit), abs=1e-12)
