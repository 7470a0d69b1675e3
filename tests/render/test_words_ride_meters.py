from dataclasses import replace

import numpy as np
import pytest

from small_rides import demo, report
from spindlewise.bench.drift import Drift
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.lag import Lag
from spindlewise.bench.odd_one_out import Apart, OddOneOut
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch
from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Table
from spindlewise.render.words_ride_meters import (
    meter_blocks,
    odd_sentences,
    segment_blocks,
    three_blocks,
    time_text,
)


def text(blocks) -> str:
    return " ".join(as_text(blocks, 200).split())


def with_first(**changes):
    first, *rest = demo().recordings
    return replace(demo(), recordings=(replace(first, **changes), *rest))


def test_lag_drift_dropouts_and_held_values_of_each() -> None:
    table = next(block for block in meter_blocks(demo()) if isinstance(block, Table))
    pedals, spider, hub = table.rows
    assert pedals[2:6] == ("+0.48 ± 0.02 s", "none seen", "5 s", "none")
    assert spider[2:6] == ("reference", "", "none", "13 s")
    assert hub[2].startswith("-13.5")


def test_no_claim_of_a_lag_says_why() -> None:
    lag = Lag(None, None, 0.1, 0.1, 120.0, "too little in common")
    told = text(meter_blocks(with_first(lag=lag, drift=None)))
    assert "pedals: no lag is claimed (too little in common); it stays where its own clock puts it." in told
    assert "not known" in told


def test_drift_proved_or_a_clock_that_jumps() -> None:
    proved = Drift(500.0, 400.0, 600.0, 0.0, 1.0, (), "")
    assert "+1.8 s/h" in text(meter_blocks(with_first(drift=proved)))
    jumps = Drift(None, None, None, 0.0, None, (), "the clock jumps")
    told = text(meter_blocks(with_first(drift=jumps)))
    assert "pedals: its clock jumps within the ride." in told
    assert "not told" in told


def test_silences_that_nobody_can_tell_and_values_given_twice() -> None:
    first = demo().recordings[0]
    untold = replace(first.dropouts, untold_s=9, verdict="cannot tell")
    twice = replace(first.repeats, each_value_times=2)
    told = text(meter_blocks(with_first(dropouts=untold, repeats=twice)))
    assert "of 9 silent seconds nobody can tell whether power was lost" in told
    assert "gives each value 2 times as a rule" in told


def test_one_recording_is_read_off_between_nothing() -> None:
    told = text(meter_blocks(report(Meter("pedals"))))
    assert "read off between rows" not in told
    assert meter_blocks(replace(demo(), recordings=())) == []


def test_three_meters_and_the_odd_one_out() -> None:
    told = text(three_blocks(demo()))
    assert "Three meters, no truth" in told
    assert "By average level: hub is the odd one out." in told
    assert "The odd one out is not thereby the wrong one" in told
    assert three_blocks(report(Meter("pedals"), Meter("hub"))) == []
    assert "they can't be told apart" in text(three_blocks(replace(demo(), three=None)))


def test_four_meters_are_counted_in_words() -> None:
    meters = [Meter(name, noise_w=3) for name in ("pedals", "crank", "hub", "spider")]
    assert "Four meters, no truth" in text(three_blocks(report(*meters)))


def test_noise_too_small_to_see() -> None:
    three = demo().three
    assert three is not None
    unseen = replace(three, meters=(replace(three.meters[0], noise_unseen=True), *three.meters[1:]))
    assert "too small to see" in text(three_blocks(replace(demo(), three=unseen)))


def test_some_told_apart_and_none_at_all() -> None:
    three = demo().three
    assert three is not None
    apart = Apart("pedals", "hub", Estimate(1.0, 0.5, 1.5))
    level = Apart("pedals", "spider", Estimate(0.1, -0.5, 1.5))
    some = replace(three, by_level=OddOneOut(None, (apart, level)), by_scale=OddOneOut(None, (level,)))
    said = odd_sentences(some)
    assert said[0] == "By average level: told apart are pedals from hub, but none stands out."
    assert said[1] == "By watts per watt: they can't be told apart."


def test_segments_sprints_and_what_is_left_out() -> None:
    told = text(segment_blocks(demo()))
    assert "void: rolling out of the yard" in told
    assert "Left out: rolling out of the yard, the head units were still being started." in told
    assert "Sprints, delays against the reference" in told
    steady = report(Meter("pedals"), Meter("spider"), plan=[Stretch(200, 150), Stretch(200, 250)])
    assert "Sprints" not in text(segment_blocks(steady))
    assert segment_blocks(replace(demo(), segments=())) == []


def test_a_sprint_that_a_meter_lost_leaves_blanks() -> None:
    plan = [Stretch(300, 150), Stretch(12, 900), Stretch(300, 150)]
    meters = (Meter("pedals", dropouts=(Dropout(295.0, 30.0, "missing"),)), Meter("spider"))
    found = report(*meters, plan=plan)
    sprint = next(each for each in found.segments if each.sprint)
    assert sprint.sprint[0].delay_s is None
    assert "Sprint at" in text(segment_blocks(found))


@pytest.mark.parametrize(
    ("seconds", "shown"),
    [(0.0, "0:00:00"), (59.6, "0:01:00"), (-0.2, "0:00:00"), (-61.0, "-0:01:01"), (36000.0, "10:00:00")],
)
def test_times_of_a_ride(seconds: float, shown: str) -> None:
    assert time_text(np.float64(seconds)) == shown


def test_files_without_starts_that_fit_each_other_are_told_of() -> None:
    told = "The files state no starts that can be set against each other"
    assert told in text(meter_blocks(demo()))  # one counts from zero
    fitting = replace(demo(), aligned=replace(demo().aligned, starts_known=True))
    assert told not in text(meter_blocks(fitting))


def test_a_recording_of_another_hour_is_asked_about() -> None:
    """A head unit whose clock was never set, or another ride's file: nobody can tell which."""
    written = demo().aligned.written.copy()
    written[demo().aligned.row("hub")] = False
    apart = replace(demo(), aligned=replace(demo().aligned, written=written))
    asked = "hub: its file's clock puts it wholly before or after spider, so nothing of it is compared."
    assert asked in text(meter_blocks(apart))
    assert "wholly before or after" not in text(meter_blocks(demo()))
    assert meter_blocks(replace(demo(), aligned=None))
