from decimal import Decimal
from typing import Any

import pytest
from pydantic import ValidationError

from small_catalog import GOOD
from spindlewise.buyer.buyer import BalanceRange, Bike, Body, Buyer, Climb, Riding, Shoes
from spindlewise.catalog.reading import read_record
from worlds import buyer


def test_a_buyers_file_is_read_as_it_stands() -> None:
    read, _, problems = read_record(Buyer, GOOD / "buyers" / "shore-rider.yaml")
    assert problems == []
    assert read is not None
    assert read.budget_amount == Decimal(900)
    assert read.riding.balance_left_pct == BalanceRange(low=48.0, high=51.0)
    assert read.receivers[0].name == "head unit"
    assert read.present_pedals == "none"


def test_a_buyer_states_no_more_than_needed() -> None:
    least = buyer(receivers=())
    assert least.budget == "none"
    assert least.budget_amount is None
    assert (least.bike, least.shoes, least.body, least.riding) == (Bike(), Shoes(), Body(), Riding())
    assert least.bike.washers_each_side_mm == least.bike.new_washers_each_side_mm == 0.0
    assert least.shoes.sole_mm == least.shoes.new_sole_mm == "unchanged"


def test_an_exact_budget_stays_exact() -> None:
    assert buyer(budget=899.1).budget_amount == Decimal("899.1")
    assert buyer(budget=22_500_000, currency="VND").budget_amount == Decimal(22_500_000)


@pytest.mark.parametrize(
    "changes",
    [
        {"schema": "spindlewise buyer 2"},
        {"id": "Tester"},
        {"region": "eu"},
        {"currency": "EUX"},
        {"budget": -1},
        {"budget": "much"},
        {"question": ""},
        {"present_pedals": "not applicable"},
        {"riding": {"balance_left_pct": {"low": 51.0, "high": 49.0}}},
        {"riding": {"balance_left_pct": 50.0}},
        {"bike": {"crank_mm": 17.25}},
        {"bike": {"washers_each_side_mm": -1.0}},
        {"shoes": {"sole_mm": -1.0}},
        {"body": {"height_mm": 178.0}},
        {"riding": {"climb": {"length_m": 9000.0, "gradient_pct": 31.0, "power_w": 250.0}}},
    ],
)
def test_what_a_buyer_cannot_be(changes: dict[str, Any]) -> None:
    with pytest.raises(ValidationError):
        buyer(**changes)


def test_a_balance_may_be_one_figure() -> None:
    assert BalanceRange(low=49.0, high=49.0).low == 49.0
    with pytest.raises(ValidationError, match=r"low stands above high \| exchange them"):
        BalanceRange(low=50.1, high=50.0)


def test_a_climb_and_a_whole_life_of_riding() -> None:
    riding = Riding(
        years=40.0, hours_per_year=8760.0, climb=Climb(length_m=9000.0, gradient_pct=8.0, power_w=250.0)
    )
    assert riding.threshold_power_w == "not stated"
