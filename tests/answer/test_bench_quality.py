"""What each recording is worth: the demo's faults, which are known, are found."""

import numpy as np

from small_rides import demo, report
from spindlewise.answer.bench_quality import recording_qualities
from spindlewise.bench.synthetic_ride import Dropout, Meter


def test_the_demos_dropouts_and_held_values_are_found_to_the_second():
    pedals, spider, hub = demo().recordings
    assert [(s.start_s, s.length_s) for s in hub.dropouts.of_kind("dropout")] == [(310.0, 6), (900.0, 9)]
    assert (pedals.dropouts.dropout_s, spider.dropouts.dropout_s) == (5, 0)
    assert spider.repeats.stuck_s == 13
    assert (hub.blanked_s, spider.blanked_s) == (15, 13)
    assert len(hub.sha256) == 64


def test_what_is_lost_or_held_is_compared_with_nothing():
    found = demo()
    seconds, power = found.aligned.seconds, found.comparable_w
    hub, spider = found.aligned.row("hub"), found.aligned.row("spider")
    assert np.isnan(power[hub, (seconds >= 309) & (seconds < 317)]).all()
    assert np.isnan(power[spider, (seconds >= 558) & (seconds < 573)]).all()
    assert np.isnan(power[:, (seconds >= 0) & (seconds < 30)]).all()
    coasting = (seconds >= 605) & (seconds < 615)
    assert (power[:, coasting] == 0).all()


def test_a_dropout_at_the_very_beginning_spoils_no_other_second():
    found = report(Meter("pedals", dropouts=(Dropout(1.0, 6.0),)), Meter("spider"))
    assert np.isfinite(found.comparable_w[0, 8:-1]).all()
    assert np.isnan(found.comparable_w[0, :7]).all()


def test_of_one_recording_nothing_is_told_by_others():
    found = report(Meter("pedals"))
    (quality,) = recording_qualities(found.aligned, _recordings(found))
    assert quality.dropouts.dropout_s == 0
    assert quality.drift is None


def _recordings(found):
    from small_rides import STEPS
    from spindlewise.bench.synthetic_ride import record, ride

    return (record(ride(STEPS, 5), Meter("pedals"), 5),)
