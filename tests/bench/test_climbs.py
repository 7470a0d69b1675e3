import numpy as np

from spindlewise.bench.climbs import find_climbs


def road(*parts):
    """Parts are seconds and metres gained."""
    return 200 + np.concatenate([[0.0], np.cumsum(np.concatenate([np.full(s, m / s) for s, m in parts]))])


def test_a_climb_is_found_from_foot_to_top():
    assert find_climbs(road((200, 0), (400, 80), (200, -30))) == ((200, 601),)


def test_a_short_break_is_ridden_through_and_a_long_one_parts_two_climbs():
    assert len(find_climbs(road((100, 0), (300, 60), (80, 0), (300, 60), (200, 0)))) == 1
    assert len(find_climbs(road((100, 0), (300, 60), (400, 0), (300, 60), (200, 0)))) == 2


def test_a_bump_and_a_false_flat_are_none():
    assert find_climbs(road((100, 0), (120, 20), (300, 0))) == ()
    assert find_climbs(road((3600, 60))) == ()


def test_missing_altitudes_are_bridged_and_none_at_all_no_climb():
    altitude = road((200, 0), (400, 80), (200, -30))
    altitude[250:260] = np.nan
    altitude[::2] = np.nan
    assert [round(edge, -1) for edge in find_climbs(altitude)[0]] == [200, 600]
    assert find_climbs(np.full(300, np.nan)) == ()
    assert find_climbs(np.arange(60.0)) == ()


def test_a_ride_that_only_climbs():
    assert find_climbs(road((400, 80))) == ((0, 401),)


def test_a_fall_parts_two_climbs_however_short_it_is():
    assert find_climbs(road((100, 40), (59, -90), (100, 45))) == ((0, 101), (159, 260))


def test_up_and_down_within_a_minute_is_none():
    assert find_climbs(road((20, 20), (20, -50), (20, 40))) == ()
