"""A whole ride compared: what is known of generated rides is found, at the rate that is stated."""

import shutil

import numpy as np
import pytest

from small_rides import FIRST, RIDES, STEPS, THREE, demo, report, sheet
from spindlewise.answer.bench_ride import compared, ride_report
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride


def test_three_meters_are_told_without_a_truth():
    three = demo().three
    scales = {meter.name: meter.scale for meter in three.meters}
    truth = {"pedals": 1.002, "spider": 0.998, "hub": 1.004 * 0.974}
    middle = float(np.prod(list(truth.values()))) ** (1 / 3)
    for name, scale in truth.items():
        assert scales[name].holds(scale / middle), name
    assert (three.by_level.odd, three.by_scale.odd) == ("hub", "hub")


def test_lags_of_the_demo_are_found():
    pedals, spider, hub = (each.lag for each in demo().recordings)
    assert spider.lag_s == 0.0
    assert pedals.lag_s is not None
    assert hub.lag_s is not None
    assert pedals.lag_s - hub.lag_s == pytest.approx(14.0, abs=0.3)


def test_segments_are_found_given_and_left_out():
    kinds = [each.segment.kind for each in demo().segments]
    for kind, count in (
        ("lap", 3),
        ("climb", 1),
        ("over-under", 1),
        ("intervals", 1),
        ("sprint", 2),
        ("void", 1),
    ):
        assert kinds.count(kind) == count, kind
    (void,) = (each for each in demo().segments if each.segment.kind == "void")
    assert (void.segment.start_s, void.mean_w) == (0.0, (None, None, None))
    sprint = next(each for each in demo().segments if each.sprint)
    assert [reading.name for reading in sprint.sprint] == ["pedals", "spider", "hub"]
    assert all(abs(reading.delay_s) < 0.2 for reading in sprint.sprint)


def test_given_seconds_count_from_the_references_first_row():
    late = Meter("spider", begins_s=100.0)
    given = ({"kind": "steady", "name": "second step", "start_s": 0, "end_s": 60},)
    found = report(Meter("pedals"), late, segments=given)
    (segment,) = (each.segment for each in found.segments if not each.segment.found)
    own = found.aligned.seconds[found.aligned.written[found.aligned.row("spider")]]
    assert segment.start_s == own[0]


def test_a_void_ride_is_compared_and_counts_for_nothing():
    found = demo(FIRST)
    assert found.void is not None
    assert found.pairs[0].verdicts[1].says == "not enough"
    assert found.pairs[0].power.with_zeros is not None


def test_each_pair_once_with_the_denominator_last():
    meters = [Meter(name) for name in ("spider", "pedals", "hub", "trainer")]
    found = report(*meters, percent_of="spider")
    assert [(pair.first, pair.second) for pair in found.pairs] == [
        ("pedals", "hub"),
        ("pedals", "trainer"),
        ("pedals", "spider"),
        ("hub", "trainer"),
        ("hub", "spider"),
        ("trainer", "spider"),
    ]
    assert found.three is not None
    assert len(found.three.meters) == 4


def test_a_broken_file_is_told_and_the_others_are_compared(tmp_path):
    folder = tmp_path / "ride"
    shutil.copytree(RIDES / THREE, folder)
    (folder / "spider.csv").write_text("nothing\n", "utf-8")
    found = ride_report(demo().sheet, folder, "ride")
    assert found.unread == ("spider",)
    assert found.problems
    assert found.reference == "pedals"
    (pair,) = found.pairs
    assert (pair.first, pair.second, pair.percent_of) == ("pedals", "hub", "mean of both")


def test_without_any_recording_there_is_nothing_but_the_problems(tmp_path):
    found = ride_report(demo().sheet, tmp_path, "ride")
    assert (found.aligned, found.pairs, found.three, found.reference) == (None, (), None, "")
    assert len(found.problems) == 3
    assert found.not_noted


def test_one_recording_has_no_pair():
    found = report(Meter("pedals"))
    assert (len(found.recordings), found.pairs, found.three) == (1, (), None)


def test_what_bears_on_other_meters_is_not_held_against_a_pair():
    facts = {"hub": {"firmware": "unknown"}}
    found = report(Meter("pedals"), Meter("hub"), Meter("spider"), facts=facts, crank_mm="unknown")
    by_pair = {(pair.first, pair.second): pair.verdicts[1].because for pair in found.pairs}
    beside = by_pair["pedals", "spider"]
    assert "not noted: the cranks on the bike" in beside
    assert not any("(hub)" in why for why in beside)
    assert "not noted: the firmware (hub)" in by_pair["pedals", "hub"]


def test_two_seconds_of_lag_on_half_minutes_do_no_harm():
    """Common practice, no source: unaligned, 30/30 intervals differ by some 65 W at the edges."""
    plan = [Stretch(120, 150), *[Stretch(30, 320), Stretch(30, 120)] * 10, Stretch(120, 150)]
    (pair,) = report(Meter("pedals", noise_w=2), Meter("spider", noise_w=2, late_s=2.0), plan=plan).pairs
    assert pair.power.with_zeros.limits.sd < 8.0


def test_the_same_ride_gives_the_same_figures():
    once, again = (report(Meter("pedals", noise_w=3), Meter("hub"), Meter("spider")) for _ in range(2))
    assert once.pairs == again.pairs
    assert once.three == again.three


@pytest.mark.slow
def test_the_interval_of_the_difference_holds_the_truth_in_95_of_100_rides():
    """Lag, half seconds, dropouts and all: the whole report, not the formula alone."""
    held = 0
    rides = 200
    meters = (
        Meter("pedals", scale=1.02, noise_w=3, noise_memory=0.4, late_s=1.3, step_w=0),
        Meter("spider", noise_w=3, noise_memory=0.4, step_w=0),
    )
    plan = [*STEPS, Stretch(12, 500), Stretch(200, 180)]
    of_these = sheet(*meters)
    for seed in range(rides):
        truth = ride(plan, seed)
        found = compared(of_these, tuple(record(truth, meter, seed) for meter in meters))
        held += found.pairs[0].power.without_zeros.difference_pct.holds(2.0)
    assert 0.92 * rides <= held <= 0.98 * rides, held
