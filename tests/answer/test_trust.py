"""The uncertainty of a reading, from the catalog's figures and the buyer's balance."""

import math

import pytest

import worlds
from spindlewise.answer.received import receive_all
from spindlewise.answer.trust import bench_evidence

PHONE = {"name": "phone", "protocols": ("Bluetooth",), "channels": "unlimited", "pairs_two_sensors": "can"}
DOUBLED = (worlds.link("Bluetooth", "one side doubled", "absent"),)


def budget(product, **changes):
    desk = worlds.desk([product], [])
    buyer = worlds.buyer(receivers=(PHONE,), **changes)
    return receive_all(desk.catalog, desk.yardstick, buyer, desk.day)[product.id]


def test_a_claim_that_no_bench_has_tried_counts_with_what_is_plausible_of_the_rest():
    """Tolerance 1.5 % and drift 1.2 % rectangular, spread 1.5 %: the last two at their worst."""
    found = budget(worlds.product("heron"))
    standing = found.standings["reading_uncertainty"]

    assert found.budget.expanded_pct == pytest.approx(2 * math.sqrt(1.5**2 / 3 + 1.5**2 + 1.2**2 / 3))
    assert found.budget.expanded_low_pct == pytest.approx(2 * math.sqrt(1.5**2 / 3 + 0.6**2 + 0.3**2 / 3))
    assert standing.origin == "worked out from claims"
    assert standing.note == "largest: bench spread; not measured: bench spread, temperature"
    assert standing.not_measured == ("bench spread", "temperature")


def test_a_bare_claim_never_looks_surer_than_the_same_pedal_after_a_good_day_on_the_bench():
    """A good meter of the trade: bias half the tolerance, spread 1 %, drift 0.5 % over ten degrees."""
    tried = {
        "reading_bias_pct": (worlds.seen(0.75, plus_minus=0.3),),
        "reading_spread_pct": (worlds.seen(1.0),),
        "temperature_pct": (worlds.seen(0.5),),
    }
    claim = budget(worlds.product("heron")).standings["reading_uncertainty"]
    bench = budget(worlds.product("heron", tried)).standings["reading_uncertainty"]

    assert claim.value > bench.value > claim.low
    assert (bench.origin, bench.not_measured) == ("worked out", ())


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
    assert {c.name for c in found.contributions} == {"bench bias", "bench spread", "temperature"}
    assert found.not_measured == ("temperature",)
    assert bench_evidence(worlds.product("heron"), worlds.DAY) is None


def test_temperature_counts_as_measured_where_it_is_known():
    warm = worlds.product("heron", {"temperature_pct": (worlds.seen(1.0),)})
    (cause,) = (c for c in budget(warm).budget.contributions if c.name == "temperature")

    assert (cause.kind, cause.standard_pct) == ("rectangular", pytest.approx(1 / math.sqrt(3)))


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


def test_a_wrong_crank_length_in_the_head_unit_does_not_enter_the_figure():
    """Set 172.5, ridden 170: reads 1.5 % high, but whoever rides can set it right for nothing."""
    wrong = budget(worlds.product("heron"), bike={"crank_mm": 170.0, "head_unit_crank_mm": 172.5})
    right = budget(worlds.product("heron"), bike={"crank_mm": 170.0, "head_unit_crank_mm": 170.0})

    assert wrong.budget == right.budget == budget(worlds.product("heron")).budget
