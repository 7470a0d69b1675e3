"""The pictures of a ride: of the demo's, and of rides that leave something out."""

from dataclasses import replace

import numpy as np
import pytest

from drawn_pictures import in_order, texts
from small_rides import THREE, demo, report
from spindlewise.bench.synthetic_ride import Meter, Stretch
from spindlewise.site.ride_figures import overlay, pair_figures, parts, residual, sprints

INTERVALS = [Stretch(300, 160), *[Stretch(30, 380), Stretch(30, 150)] * 8, Stretch(200, 170)]


@pytest.fixture(scope="module")
def three():
    return demo(THREE)


def test_the_whole_ride_lays_the_meters_over_each_other(three):
    found = overlay(three, three.aligned)
    in_order(found.picture)
    assert {"pedals", "spider", "hub"} <= set(texts(found.picture))
    assert "2 sprint" in found.picture.description
    assert "1 climb" in found.picture.description
    assert [column.title for column in found.table.columns] == ["From", "pedals", "spider", "hub"]
    assert len(found.table.rows) == 40


def test_the_table_says_what_the_blocks_average_to(three):
    found = overlay(three, three.aligned)
    at = next(row for row in found.table.rows if row[0] == "0:13:00")
    minute = (three.aligned.seconds >= 780) & (three.aligned.seconds < 840)
    block = three.comparable_w[:, minute].mean(axis=1)
    assert [float(cell.removesuffix(" W")) for cell in at[1:]] == pytest.approx(block, abs=0.51)


def test_the_difference_over_time_is_from_the_reference(three):
    (found,) = residual(three, three.aligned)
    in_order(found.picture)
    assert [trace.name for trace in found.picture.shown.traces] == ["pedals", "hub"]
    means = [value for run in found.picture.shown.traces[1].runs for _, value in run]
    assert -8 < np.mean(means) < -2  # a chain takes some of it
    assert "hub less spider: between -" in found.picture.description


def test_a_ride_of_one_meter_has_no_difference():
    alone = report(Meter("pedals"))
    assert residual(alone, alone.aligned) == ()
    in_order(overlay(alone, alone.aligned).picture)


def test_meters_that_share_no_half_minute_are_told_so(three):
    gone = three.comparable_w.copy()
    gone[three.aligned.row("hub")] = np.nan
    (found,) = residual(replace(three, comparable_w=gone), three.aligned)
    assert "hub and spider share no half minute" in found.picture.description


def test_each_pair_has_its_limits_and_its_bands(three):
    for number, pair in enumerate(three.pairs, 1):
        limits, bands = pair_figures(three, three.aligned, number, pair)
        in_order(limits.picture)
        in_order(bands.picture)
        found = pair.power.without_zeros.limits
        assert f"{found.mean.value:+.1f} W" in limits.table.rows[0]
        assert len(bands.table.rows) == len(bands.picture.shown.bands)
        assert limits.picture.name == f"limits-{number}"


def test_a_pair_of_too_few_seconds_has_no_picture():
    short = report(Meter("pedals"), Meter("spider"), plan=[Stretch(15, 200)])
    assert pair_figures(short, short.aligned, 1, short.pairs[0]) == ()


def test_bands_are_left_out_where_nothing_is_claimed_of_any(three):
    pair = replace(three.pairs[0], by_power=())
    assert len(pair_figures(three, three.aligned, 1, pair)) == 1


def test_each_sprint_is_shown_second_by_second(three):
    found = sprints(three, three.aligned)
    assert [figure.picture.title for figure in found] == ["Sprint at 0:28:41", "Sprint at 0:31:01"]
    for figure in found:
        in_order(figure.picture)
        assert figure.picture.shown.dotted
        assert len(figure.table.rows) == figure.picture.shown.end_s - figure.picture.shown.start_s + 1
    assert "pedals 949 W" in found[0].picture.description


def test_of_many_sprints_the_strongest_are_shown_in_the_order_of_the_ride():
    powers = (700, 900, 760, 640, 1000, 720, 1100, 860)
    plan = [part for watts in powers for part in (Stretch(150, 160), Stretch(10, watts, 110))]
    ride = report(Meter("pedals"), Meter("spider"), plan=[*plan, Stretch(150, 160)])
    found = sprints(ride, ride.aligned)
    assert len(found) == 6
    starts = [figure.picture.shown.start_s for figure in found]
    assert starts == sorted(starts)
    assert not any("0:08:0" in figure.picture.title for figure in found)  # the weakest, 640 W


def test_parts_are_opened_by_their_kind_and_place(three):
    found = parts(three, three.aligned)
    words = [each for each, _ in found]
    assert "Climb at 0:10:20, 0:07:01 long" in words
    assert "Over-under at 0:20:10, 0:05:20 long" in words
    assert not any("Sprint" in each or "Lap" in each for each in words)
    for _, figure in found:
        in_order(figure.picture)


def test_a_close_up_of_steady_riding_does_not_begin_at_nothing():
    ride = report(Meter("pedals"), Meter("spider"), plan=[Stretch(600, 250)])
    (_, found), *_ = parts(ride, ride.aligned)
    assert found.picture.shown.low > 100
    whole = overlay(ride, ride.aligned).picture.shown
    assert whole.high > 250


def test_a_ride_without_segments_says_so():
    rolling = report(Meter("pedals"), Meter("spider"), plan=[Stretch(40, 30)])
    assert "No segment stands out" in overlay(rolling, rolling.aligned).picture.description
    assert parts(rolling, rolling.aligned) == ()
    assert sprints(rolling, rolling.aligned) == ()
