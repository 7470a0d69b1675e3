"""The uncertainty of a reading, from the catalog's figures and the buyer's balance."""

import math

import pytest

import worlds
from spindlewise.answer.received import receive_all
from spindlewise.answer.trust import bench_evidence, crank_error, ridden_crank_mm

PHONE = {"name": "phone", "protocols": ("Bluetooth",), "channels": "unlimited", "pairs_two_sensors": "can"}
DOUBLED = (worlds.link("Bluetooth", "one side doubled", "absent"),)


def budget(product, **changes):
    desk = worlds.desk([product], [])
    buyer = worlds.buyer(receivers=(PHONE,), **changes)
    return receive_all(desk.catalog, desk.yardstick, buyer, desk.day)[product.id]


def test_a_claimed_tolerance_is_a_rectangle_twice_its_standard_uncertainty():
    found = budget(worlds.product("heron"))

    assert found.budget.expanded_pct == pytest.approx(2 * 1.5 / math.sqrt(3))
    assert found.standings["reading_uncertainty"].note == "largest: claimed tolerance"


def test_a_doubled_side_takes_the_buyers_own_balance():
    riding = {"balance_left_pct": {"low": 47.0, "high": 47.0}, "threshold_power_w": 250.0}
    left = budget(worlds.product("heron", links=DOUBLED, sides="left"), riding=riding)
    right = budget(worlds.product("heron", links=DOUBLED, sides="right"), riding=riding)

    assert left.budget.bias_pct == pytest.approx(-6.0)
    assert right.budget.bias_pct == pytest.approx(6.0)


def test_an_unknown_balance_takes_the_populations():
    found = budget(worlds.product("heron", links=DOUBLED, sides="left")).budget

    assert found.bias_pct == 0
    assert [c.note for c in found.contributions if c.name == "doubled side"] == [
        "a population's balance, not the buyer's"
    ]


def test_bench_evidence_stands_in_place_of_the_claim():
    heron = worlds.product(
        "heron",
        {
            "reading_bias_pct": (worlds.seen(-1.0, plus_minus=0.3),),
            "reading_spread_pct": (worlds.seen(0.5),),
        },
    )
    found = budget(heron).budget

    assert bench_evidence(heron, worlds.DAY).bias_pct == -1.0
    assert {c.name for c in found.contributions} == {"bench bias", "bench spread"}
    assert bench_evidence(worlds.product("heron"), worlds.DAY) is None


def test_temperature_counts_where_it_is_known():
    warm = worlds.product("heron", {"temperature_pct": (worlds.seen(1.0),)})

    assert "temperature" in {c.name for c in budget(warm).budget.contributions}


def test_an_unknown_tolerance_leaves_the_figure_unknown_and_names_it():
    found = budget(worlds.product("heron", {"tolerance_pct": "unknown"})).standings["reading_uncertainty"]

    assert (found.value, found.origin, found.source) == (None, "unknown", "unknown: claimed tolerance")


def test_one_side_only_is_no_total_power():
    two = worlds.product("heron", links=(worlds.link("Bluetooth", "two channels", "absent"),))
    alone = {**PHONE, "pairs_two_sensors": "cannot"}
    desk = worlds.desk([two], [])
    found = receive_all(desk.catalog, desk.yardstick, worlds.buyer(receivers=(alone,)), desk.day)["heron"]

    assert found.standings["reading_uncertainty"].origin == "none"
    assert found.standings["reading_uncertainty"].source == "one side is not a total power"


def test_a_wrong_crank_length_in_the_head_unit_scales_power():
    bike = {"crank_mm": 175.0, "new_crank_mm": 172.5, "head_unit_crank_mm": 170.0}
    buyer = worlds.buyer(bike=bike, riding={"threshold_power_w": 300.0})

    assert ridden_crank_mm(buyer.bike) == 172.5
    assert crank_error(buyer).error_pct == pytest.approx(-1.449, abs=1e-3)
    assert crank_error(buyer).error_w == pytest.approx(-4.348, abs=1e-3)
    assert crank_error(worlds.buyer(bike={"crank_mm": 172.5})) is None
    assert crank_error(worlds.buyer()) is None
    assert crank_error(worlds.buyer(bike=bike)).error_w is None
