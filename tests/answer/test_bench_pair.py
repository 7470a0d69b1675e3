"""Two meters of one ride, of which the truth is known."""

import numpy as np
import pytest

from bench.sheets import meter_data, sheet_data
from small_rides import demo, report
from spindlewise.answer.bench_pair import LOSS_PCT, PairSeries, chain_between, pair_report
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.bench.synthetic_ride import Meter, Stretch


def pair_of(found, first, second):
    return next(pair for pair in found.pairs if (pair.first, pair.second) == (first, second))


def says(pair):
    return [verdict.says for verdict in pair.verdicts]


def test_the_demos_scales_lie_in_their_intervals():
    beside = pair_of(demo(), "pedals", "spider")
    assert beside.power.with_zeros.difference_pct.holds(100 * (1.002 / 0.998 - 1))
    behind = pair_of(demo(), "hub", "spider")
    assert behind.power.with_zeros.difference_pct.holds(100 * (1.004 * 0.974 / 0.998 - 1))
    assert behind.deming.scale_interval.holds(0.998 / (1.004 * 0.974))
    assert beside.percent_of == behind.percent_of == "spider"
    assert pair_of(demo(), "pedals", "hub").percent_of == "mean of both"


def test_a_loss_behind_the_chain_is_seen_from_either_side():
    across = pair_of(demo(), "pedals", "hub")
    assert across.chain
    assert across.loss.verdict == "agrees"
    assert across.loss.seen.holds(100 * (1 - 1.004 * 0.974 / 1.002))
    swapped = pair_of(demo(), "hub", "spider")
    assert swapped.loss.seen.value == pytest.approx(100 * (1 - 0.974 * 1.004 / 0.998), abs=0.2)
    assert says(across) == ["differ", "usable", "plausible"]


def test_no_loss_is_judged_without_a_chain_or_a_tolerance():
    meters = (Meter("pedals"), Meter("hub", loss_pct=2.5))
    assert pair_of(demo(), "pedals", "spider").loss_because == "no chain stands between them"
    unknown = report(*meters, facts={"hub": {"tolerance_pct": "unknown"}}).pairs[0]
    assert (unknown.loss, unknown.loss_because) == (None, "the tolerance of hub is not stated")
    assert unknown.verdicts[0].says == "cannot tell"
    none = report(*meters, facts={"hub": {"tolerance_pct": 0}, "pedals": {"tolerance_pct": 0}}).pairs[0]
    assert none.loss is not None
    assert none.verdicts[0].because == ("a tolerance is not stated",)


def test_equal_averages_across_a_chain_are_no_proof():
    found = report(Meter("pedals"), Meter("hub", loss_pct=2.5, scale=1 / 0.975))
    (pair,) = found.pairs
    assert pair.loss.equal_averages
    assert pair.verdicts[2].says == "cannot tell" or pair.loss.verdict == "does not agree"


def test_a_caller_may_narrow_the_loss():
    truth = report(Meter("pedals"), Meter("hub", loss_pct=8.0))
    assert truth.pairs[0].verdicts[2].says == "implausible"
    assert LOSS_PCT[0] < LOSS_PCT[1]


def test_a_meter_high_at_low_power_and_low_at_high_depends_on_power():
    plan = [Stretch(300, 120), Stretch(300, 300)] * 2
    found = report(Meter("pedals", scale=0.9, offset_w=21.0), Meter("spider"), plan=plan)
    (pair,) = found.pairs
    assert abs(pair.power.with_zeros.difference_pct.value) < 1.5
    assert pair.verdicts[0].says == "depends on power"
    low, high = pair.by_power[0], pair.by_power[-1]
    assert low.difference_pct.value > 4
    assert high.difference_pct.value < -2


def test_with_and_without_zeros_are_two_figures():
    plan = [Stretch(200, 200), Stretch(100, 0, 0)] * 3
    (pair,) = report(Meter("pedals", scale=1.05), Meter("spider"), plan=plan).pairs
    both, pedalling = pair.power.with_zeros, pair.power.without_zeros
    assert both.count > pedalling.count + 250
    assert both.mean_difference.value < 0.75 * pedalling.mean_difference.value
    assert both.difference_pct.value == pytest.approx(pedalling.difference_pct.value, abs=0.4)


def test_cadence_is_compared_apart_from_power():
    (pair,) = report(Meter("pedals", scale=1.1), Meter("spider")).pairs
    assert pair.cadence.mean_difference.value == pytest.approx(0.0, abs=0.1)
    assert {band.low for band in pair.by_cadence} == {80.0, 90.0}


def series(first, second, cadence=None):
    nothing = np.full(len(first), np.nan)
    turning = nothing if cadence is None else cadence
    return PairSeries(first, second, turning, nothing, turning, len(first), True)


def compared(first, second, **more):
    one, two = RideSheet.model_validate(sheet_data(meter_data(), meter_data("hub", what="hub"))).meters
    return pair_report(
        one, two, series(first, second, **more), percent_of="hub", three=None, missing=(), void=None
    )


def test_of_nineteen_seconds_nothing_is_said():
    found = compared(np.full(19, 200.0), np.full(19, 195.0))
    assert found.power.with_zeros is None
    assert says(found) == ["cannot tell", "not enough", "cannot tell"]
    assert (found.by_power, found.best, found.concordance, found.cadence) == ((), (), None, None)
    assert found.loss_because == "there is no power to compare"


def test_a_ride_without_power_has_no_loss_and_no_percent():
    found = compared(np.zeros(100), np.zeros(100))
    assert found.power.with_zeros.difference_pct is None
    assert found.loss_because == "there is no power to compare"
    assert found.by_cadence == ()


def test_without_cadence_there_are_no_cadence_bands():
    power = 200 + 20 * np.sin(np.arange(400) / 9)
    assert compared(power, 0.97 * power).by_cadence == ()
    turning = np.full(400, 85.0)
    assert [band.low for band in compared(power, 0.97 * power, cadence=turning).by_cadence] == [80.0]


def test_without_any_doubt_there_is_no_loss_to_judge():
    power = np.full(400, 200.0)
    facts = {"tolerance_pct": 0}
    one, two = RideSheet.model_validate(
        sheet_data(meter_data(**facts), meter_data("hub", what="hub", **facts))
    ).meters
    found = pair_report(
        one, two, series(power, power), percent_of="hub", three=None, missing=(), void=None, loss_pct=(2, 2)
    )
    assert found.loss_because == "no tolerance above zero is stated"


def test_a_chain_stands_between_pedals_and_hub_only():
    kinds = {
        kind: RideSheet.model_validate(sheet_data(meter_data(what=kind))).meters[0]
        for kind in ("pedals", "crank", "spider", "hub", "trainer")
    }
    assert chain_between(kinds["pedals"], kinds["trainer"])
    assert chain_between(kinds["hub"], kinds["crank"])
    assert not chain_between(kinds["spider"], kinds["pedals"])
    assert not chain_between(kinds["hub"], kinds["trainer"])
