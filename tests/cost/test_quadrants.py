"""Four quadrants, one of which has a price per gram, one money saved per gram, and two neither."""

from __future__ import annotations

from decimal import Decimal, localcontext

import pytest

from spindlewise.cost.quadrants import Interval, Offer, compare, exact_g, per_gram, saving_g

OWNED = Offer("owned", Decimal(200), 320.0, 318.0, 322.0)


def offer(price: str, weight_g: float, plus_minus_g: float = 1.0) -> Offer:
    return Offer("light", Decimal(price), weight_g, weight_g - plus_minus_g, weight_g + plus_minus_g)


def test_lighter_and_dearer_has_a_price_per_gram_and_its_range() -> None:
    found = compare(OWNED, offer("260", 300.0))
    assert found.quadrant == "lighter and dearer"
    assert found.saving_g == Interval(17.0, 20.0, 23.0)
    assert found.extra_cost == 60
    assert found.cost_per_gram == 3
    assert found.cost_per_gram_range == (
        per_gram(Decimal(60), Decimal(23)),
        per_gram(Decimal(60), Decimal(17)),
    )
    assert found.saved_per_gram is None


@pytest.mark.parametrize("price", ["200", "140"])
def test_lighter_and_not_dearer_has_no_price_per_gram(price: str) -> None:
    found = compare(OWNED, offer(price, 300.0))
    assert found.quadrant == "lighter and not dearer"
    assert (found.saving_g, found.extra_cost) == (Interval(17.0, 20.0, 23.0), Decimal(price) - 200)
    assert (found.cost_per_gram, found.cost_per_gram_range, found.saved_per_gram) == (None, None, None)


def test_heavier_and_cheaper_saves_money_for_each_gram_added() -> None:
    found = compare(OWNED, offer("140", 350.0))
    assert found.quadrant == "heavier and cheaper"
    assert (found.saving_g, found.extra_cost) == (Interval(-33.0, -30.0, -27.0), -60)
    assert found.saved_per_gram == 2
    assert found.saved_per_gram_range == (
        per_gram(Decimal(60), Decimal(33)),
        per_gram(Decimal(60), Decimal(27)),
    )
    assert found.cost_per_gram is None


@pytest.mark.parametrize("price", ["200", "260"])
def test_heavier_and_not_cheaper_has_neither(price: str) -> None:
    found = compare(OWNED, offer(price, 350.0))
    assert found.quadrant == "heavier and not cheaper"
    assert (found.saving_g, found.extra_cost) == (Interval(-33.0, -30.0, -27.0), Decimal(price) - 200)
    assert (found.cost_per_gram, found.saved_per_gram) == (None, None)


@pytest.mark.parametrize(
    ("weight_g", "plus_minus_g"), [(317.0, 1.0), (320.0, 0.0), (323.0, 1.0), (310.0, 30.0)]
)
def test_a_saving_whose_interval_holds_or_touches_zero_has_no_price(
    weight_g: float, plus_minus_g: float
) -> None:
    found = compare(OWNED, offer("260", weight_g, plus_minus_g))
    assert found.quadrant == "no reliable saving"
    assert found.saving_g.expected == 320.0 - weight_g
    assert (found.cost_per_gram, found.saved_per_gram, found.extra_cost) == (None, None, 60)


def test_small_things_are_compared_too() -> None:
    # washers: one comes with the crank, one of titanium is half a gram lighter and costs 50 hundredths
    steel = Offer("steel", Decimal(0), 0.8, 0.79, 0.81)
    found = compare(steel, Offer("titanium", Decimal("0.50"), 0.3, 0.29, 0.31))
    assert (found.quadrant, found.cost_per_gram) == ("lighter and dearer", 1)


def test_the_interval_meets_opposite_ends() -> None:
    lopsided = Offer("lightest", Decimal(1), 300.0, 290.0, 301.5)
    assert saving_g(OWNED, lopsided) == Interval(16.5, 20.0, 32.0)


def test_weights_are_the_decimal_numbers_they_are_written_as() -> None:
    assert 310.4 - 298.3 != 12.1
    assert exact_g(310.4) - exact_g(298.3) == Decimal("12.1")


def test_prices_per_gram_do_not_depend_on_the_threads_decimal_context() -> None:
    with localcontext() as context:
        context.prec = 3
        assert str(per_gram(Decimal(1), Decimal(3))) == "0." + "3" * 28


@pytest.mark.parametrize("price", ["-0.01", "NaN", "Infinity"])
def test_a_price_that_is_none_is_refused(price: str) -> None:
    with pytest.raises(ValueError, match=r"^light has the price \S+; a price is zero or more$"):
        offer(price, 300.0)


@pytest.mark.parametrize(
    "weights", [(300.0, 301.0, 302.0), (300.0, 290.0, 299.0), (0.0, 0.0, 0.0), (300.0, 290.0, float("nan"))]
)
def test_weights_out_of_order_or_not_numbers_are_refused(weights: tuple[float, float, float]) -> None:
    with pytest.raises(
        ValueError,
        match=r"g \(low, expected, high\); these must be finite, more than zero and in rising order$",
    ):
        Offer("light", Decimal(1), *weights)
