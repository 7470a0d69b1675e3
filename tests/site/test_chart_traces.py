from drawn_pictures import in_order, rows_with, texts
from spindlewise.site.chart_traces import Traces, stroke, ticks, traces_chart
from spindlewise.site.picture import Picture
from spindlewise.site.ride_traces import Trace

NAMES = ("pedals", "spider", "hub")
LINES = (
    Trace("pedals", (((0.0, 200.0), (1.0, 210.0)), ((5.0, 190.0), (6.0, 195.0)))),
    Trace("hub", (((0.0, 195.0), (6.0, 190.0)),)),
)


def picture(dotted=False, low=0.0):
    shown = Traces(NAMES, LINES, 0.0, 6.0, low, 220.0, "Power, W", 240, dotted)
    return Picture("overlay", "The whole ride", "Pedals and hub.", traces_chart, shown)


def test_each_meter_is_named_and_time_is_told_as_on_a_clock():
    in_order(picture())
    found = texts(picture())
    assert {"pedals", "hub", "0:00:00", "0:00:06", "Power, W"} <= set(found)
    assert "spider" not in found


def test_a_gap_stays_a_gap():
    runs = {row["run"] for row in rows_with(picture(), "run")}
    assert runs == {"pedals 0", "pedals 1", "hub 0"}


def test_close_up_every_second_is_a_point():
    assert rows_with(picture(), "shape") == []
    assert len(rows_with(picture(dotted=True), "shape")) == 6
    in_order(picture(dotted=True))


def test_zero_is_drawn_where_the_picture_goes_below_it():
    specification = traces_chart(picture(low=-5.0).shown)
    assert [{"w": 0}] in specification["datasets"].values()
    assert [{"w": 0}] not in traces_chart(picture().shown)["datasets"].values()


def test_a_meter_keeps_its_stroke_and_no_two_of_twelve_share_one():
    names = [f"meter-{number}" for number in range(12)]
    strokes = [stroke(names, name) for name in names]
    assert len({(ink, tuple(dash)) for ink, dash, _ in strokes}) == 12
    assert stroke(NAMES, "hub") == stroke((*NAMES, "trainer"), "hub")


def test_moments_are_few_and_round():
    for length in (15, 35, 600, 2400, 18_000, 90_000, 200_000):
        found = ticks(7.0, 7.0 + length)
        assert 2 <= len(found) <= 9, length
        assert all(7 <= at <= 7 + length for at in found)
