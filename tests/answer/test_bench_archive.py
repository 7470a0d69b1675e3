from small_rides import FIRST, demo, report
from spindlewise.answer.bench_archive import ride_line
from spindlewise.bench.synthetic_ride import Meter, Stretch


def test_of_a_ride_its_pairs_and_sessions_are_kept() -> None:
    line = ride_line(demo())
    assert (line.ride, line.void, len(line.pairs), len(line.sessions)) == (
        "2025-10-18-three-meters",
        None,
        3,
        1,
    )
    across = line.pairs[0]
    assert (across.first, across.second, across.percent_of) == ("pedals", "hub", "mean of both")
    assert (across.agreement, across.quality, across.plausibility) == ("differ", "usable", "plausible")
    assert across.difference_pct is not None


def test_a_void_ride_keeps_its_reason() -> None:
    line = ride_line(demo(FIRST))
    assert line.void == "the first half hour after fitting; the maker asks for a zero offset after it"


def test_where_nothing_is_compared_there_is_no_difference() -> None:
    line = ride_line(report(Meter("pedals"), Meter("spider"), plan=[Stretch(15, 200)]))
    assert line.pairs[0].difference_pct is None
