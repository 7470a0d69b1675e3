import numpy as np
import pytest

from spindlewise.bench.segments import counted, find_segments, given_segment, inside, lap_segments
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride

OVER_UNDER = [Stretch(60, 290), Stretch(60, 240)] * 4
THIRTIES = [Stretch(30, 390), Stretch(30, 150)] * 6
PLAN = [
    Stretch(300, 150), Stretch(10, 0, 0), Stretch(240, 200), Stretch(60, 140), *OVER_UNDER, Stretch(120, 130),
    Stretch(15, 0, 0), Stretch(400, 260, 75, 80), Stretch(40, 0, 0), Stretch(120, 140), Stretch(12, 850, 110),
    Stretch(90, 120), *THIRTIES, Stretch(120, 120),
]  # fmt: skip


def segments_of(plan, seed=3):
    recording = record(ride(plan, seed), Meter("a", noise_w=4), seed)
    return find_segments(recording.times_s + 1000, recording.power_w, recording.altitude_m)


def test_a_ride_is_cut_as_it_was_planned():
    found = segments_of(PLAN)
    assert {segment.kind for segment in found} == {"steady", "over-under", "climb", "sprint", "intervals"}

    def edges(kind):
        return [(s.start_s - 1000, s.end_s - 1000) for s in found if s.kind == kind]

    assert np.array(edges("over-under")) == pytest.approx(np.array([[610, 1090]]), abs=10)
    assert np.array(edges("climb")) == pytest.approx(np.array([[1225, 1625]]), abs=5)
    assert np.array(edges("sprint")) == pytest.approx(np.array([[1785, 1797]]), abs=4)
    assert np.array(edges("intervals")) == pytest.approx(np.array([[1887, 2247]]), abs=30)
    assert (0, 300) in [(round(a, -1), round(b, -1)) for a, b in edges("steady")]
    assert all(segment.found for segment in found)
    assert list(found) == sorted(found, key=lambda s: (s.start_s, s.end_s, s.kind))


def test_rolling_and_coasting_are_not_steady():
    assert segments_of([Stretch(600, 30), Stretch(600, 0, 0)]) == ()


def test_without_altitude_no_climb_is_found():
    recording = record(ride(PLAN, 3), Meter("a"), 3)
    assert not any(s.kind == "climb" for s in find_segments(recording.times_s, recording.power_w))


def test_levels_that_alternate_too_little_or_too_seldom_are_no_pattern():
    assert not any(s.kind in ("over-under", "intervals") for s in segments_of(OVER_UNDER[:4]))
    stairs = [Stretch(120, power) for power in (150, 200, 250, 300, 250, 200, 150)]
    assert {s.kind for s in segments_of(stairs)} == {"steady"}


def test_given_segments_need_their_length_and_their_reason():
    assert given_segment("climb", 0, 60, "the wall").name == "the wall"
    with pytest.raises(ValueError, match="end after it begins"):
        given_segment("climb", 60, 60)
    with pytest.raises(ValueError, match="say because of what"):
        given_segment("bedding-in", 0, 60)


def test_laps_cover_the_ride_and_presses_outside_it_none():
    laps = lap_segments([100, 50, 100, -3, 400], 0, 200)
    assert [(lap.start_s, lap.end_s) for lap in laps] == [(0, 50), (50, 100), (100, 200)]
    assert lap_segments([], 0, 200) == ()


def test_bedding_in_and_void_seconds_are_kept_and_not_counted():
    seconds = np.arange(10.0)
    given = [
        given_segment("bedding-in", 0, 2, because="new cleats"),
        given_segment("void", 7, 9, because="stood at a light"),
        given_segment("steady", 2, 7),
    ]
    assert np.flatnonzero(counted(seconds, given)).tolist() == [2, 3, 4, 5, 6, 9]
    assert np.flatnonzero(inside(seconds, given[2])).tolist() == [2, 3, 4, 5, 6]
    assert given[0].length_s == 2
