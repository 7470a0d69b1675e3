from drawn_pictures import in_order, marks, rows_with
from spindlewise.bench.bands import Band
from spindlewise.bench.estimate import Estimate
from spindlewise.site.chart_bands import bands_chart, bands_shown
from spindlewise.site.picture import Picture

WATTS = Estimate(1.0, 0.5, 1.5)


def band(low, pct):
    return Band(low, low + 50, 120, "hub", WATTS, Estimate(pct, pct - 0.5, pct + 0.5), 3.0)


def picture(allowed=1.7):
    bands = (band(100, 5.0), band(150, 0.0), Band(200, 250, 12, "hub", None, None, None), band(250, -5.0))
    shown = bands_shown(("pedals", "hub"), bands, allowed)
    return Picture("bands-1", "By power", "Said.", bands_chart, shown)


def test_high_at_low_power_and_low_at_high_power_can_be_seen():
    """The trap: 5 % high at low power and 5 % low at high power averages to nothing."""
    in_order(picture())
    assert [mark for mark in marks(picture()) if "axis" not in mark] == [
        "100 to 150 W: +5.0 %, between +4.5 % and +5.5 %",
        "150 to 200 W: 0.0 %, between -0.5 % and +0.5 %",
        "250 to 300 W: -5.0 %, between -5.5 % and -4.5 %",
    ]


def test_a_band_of_which_nothing_is_claimed_is_left_out():
    assert [row["from"] for row in rows_with(picture(), "from")] == [100, 150, 250]


def test_the_tolerances_are_shaded_where_they_are_stated():
    def shaded(found):
        return [row for row in rows_with(found, "low", "high") if "from" not in row]

    assert shaded(picture()) == [{"low": -1.7, "high": 1.7}]
    assert shaded(picture(0.0)) == []
    in_order(picture(0.0))
