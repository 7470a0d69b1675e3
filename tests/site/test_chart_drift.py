import pytest

from drawn_pictures import in_order, marks, rows_with
from spindlewise.site.chart_drift import DriftShown, SessionShown, drift_chart
from spindlewise.site.picture import Picture


def picture(*sessions, slope=-0.3):
    shown = DriftShown(tuple(SessionShown(km, pct, 0.5, f"at {km:.0f} km") for km, pct in sessions), slope)
    return Picture("drift-heron", "Drift of the Heron", "Said.", drift_chart, shown)


def test_the_line_runs_through_the_middle_of_all_sessions():
    found = picture((0, 0.2), (1000, 0.0), (9000, -2.5))
    in_order(found)
    assert [mark for mark in marks(found) if "axis" not in mark] == ["at 0 km", "at 1000 km", "at 9000 km"]
    first, last = (row for row in rows_with(found, "km", "at") if "low" not in row)
    assert (first["km"], last["km"]) == (0, 9000)
    assert last["at"] - first["at"] == pytest.approx(-2.7)
    middle_km, middle = 10_000 / 3, -2.3 / 3
    assert first["at"] == pytest.approx(middle + 0.3 * middle_km / 1000)


def test_sessions_at_one_place_can_be_drawn():
    in_order(picture((500, 0.0), (500, 0.0), (500, 0.0)))
