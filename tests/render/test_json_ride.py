import json
import math
from dataclasses import replace
from typing import Any

import pytest

from small_answers import desk
from small_rides import FIRST, demo, leaning, report
from spindlewise.answer.bench_ride import RideReport
from spindlewise.answer.bench_session import ride_sessions
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.synthetic_ride import Meter, Stretch
from spindlewise.render.as_json import as_json
from spindlewise.render.json_ride import SCHEMA, estimate_json, ride_json


def found(ride: RideReport) -> dict[str, Any]:
    whole: dict[str, Any] = json.loads(as_json(SCHEMA, ride_json(ride, ride_sessions(ride), ())))
    return whole


def test_every_pair_names_its_denominator_and_keeps_three_verdicts() -> None:
    whole = found(demo())
    assert whole["counts"] is True
    assert [pair["percent_of"] for pair in whole["pairs"]] == ["mean of both", "spider", "spider"]
    for pair in whole["pairs"]:
        assert [v["subject"] for v in pair["verdicts"]] == ["agreement", "data quality", "plausibility"]
        assert pair["with_zeros"]["lower_limit"]["low"] < pair["with_zeros"]["lower_limit"]["high"]
    assert whole["three_meters"]["odd_one_out"]["by_level"]["odd"] == "hub"
    assert whole["recordings"][0]["sha256"].startswith("c97ff9eb")
    assert whole["sessions"][0]["line"].startswith("2025-10-18,osmeryd-avessin")


def test_void_rides_and_short_ones_have_nulls() -> None:
    assert found(demo(FIRST))["counts_because"].startswith("the first half hour")
    short = found(report(Meter("pedals"), Meter("spider"), plan=[Stretch(15, 200)]))
    (pair,) = short["pairs"]
    assert (pair["with_zeros"], pair["deming"], pair["concordance"], pair["cadence"]) == (None,) * 4
    assert short["sessions"][0]["because"] == "there is nothing to compare it with"
    assert desk().day.year == 2026


def test_numbers_that_are_none_are_null() -> None:
    assert estimate_json(None) is None
    assert estimate_json(Estimate(math.nan, 0.0, 1.0)) is None
    wide = estimate_json(Estimate(1.0, -math.inf, 2.0))
    assert wide == {"value": 1.0, "low": None, "high": 2.0}


def test_a_flat_ride_has_no_slope() -> None:
    pair = demo().pairs[0]
    assert pair.power.with_zeros is not None
    flat = replace(
        pair, power=replace(pair.power, with_zeros=replace(pair.power.with_zeros, slope=None, ratio=None))
    )
    whole = found(replace(demo(), pairs=(flat, *demo().pairs[1:])))
    assert whole["pairs"][0]["with_zeros"]["slope"] is None
    assert whole["pairs"][0]["with_zeros"]["ratio"] is None


def test_a_difference_that_leans_is_a_slope_though_its_average_is_nothing() -> None:
    (pair,) = found(leaning())["pairs"]
    agreed = pair["without_zeros"]
    assert abs(agreed["difference_pct"]["value"]) < 0.8
    assert agreed["percent_changes_with_power"] is True
    assert agreed["slope"]["high"] < -0.1
    low, high = agreed["fitted"]
    assert low["difference_pct"] == pytest.approx(5, abs=1.5)
    assert high["difference_pct"] == pytest.approx(-5, abs=1.5)
    assert pair["verdicts"][0]["says"] == "depends on power"


def test_percent_of_no_power_is_none() -> None:
    rest = found(report(Meter("pedals"), Meter("spider"), plan=[Stretch(300, 200), Stretch(300, 0, 0)]))
    low, high = rest["pairs"][0]["with_zeros"]["fitted"]
    assert (low["power"], low["difference_pct"]) == (0.0, None)
    assert high["difference_pct"] is not None
