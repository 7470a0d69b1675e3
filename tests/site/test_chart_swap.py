import re
import xml.etree.ElementTree as ET

import pytest

from drawn_pictures import in_order, rows_with, texts
from spindlewise.site.chart_swap import PX_PER_MM, Layer, SwapDrawn, moved, swap_picture
from spindlewise.site.picture import drawn

BEFORE = (Layer("pedal", "pedal", 11.0), Layer("cleat", "cleat", 5.5))
AFTER = (Layer("pedal", "pedal", 13.5), Layer("cleat", "cleat", 5.0))


def shown(lower=0.0, saddle=2.0, leg=None):
    return SwapDrawn("Old", "New", BEFORE, AFTER, lower, saddle, 0.5, leg)


def test_every_height_is_written_and_said():
    picture = swap_picture(shown())
    in_order(picture)
    assert {"Before", "After", "Saddle", "11.0 mm", "5.5 mm", "13.5 mm", "5.0 mm", "+2.0 mm"} <= set(
        texts(picture)
    )
    assert "leg model" not in texts(picture)
    assert picture.description == (
        "From axis to foot: pedal 11.0 mm, cleat 5.5 mm before and pedal 13.5 mm, cleat 5.0 mm after. "
        "The saddle moves by +2.0 mm."
    )


def test_the_leg_model_and_the_crank_are_in_it_too():
    picture = swap_picture(shown(lower=-2.5, saddle=4.5, leg=4.1))
    in_order(picture)
    assert {"leg model", "+4.0 mm"} <= set(texts(picture))
    assert "stands 2.5 mm higher" in picture.description
    assert "stands 2.5 mm lower" in swap_picture(shown(lower=2.5, saddle=-0.5)).description


def heights(picture):
    found = re.findall(r'd="M[\d.,-]+h([\d.-]+)v([\d.-]+)h', drawn(picture))
    return [abs(float(v)) for h, v in found if abs(float(h)) == 90]


def test_it_is_drawn_to_scale():
    assert heights(swap_picture(shown())) == pytest.approx(
        [mm * PX_PER_MM for mm in (11.0, 5.5, 13.5, 5.0)], abs=0.02
    )


def test_both_tops_differ_by_what_the_saddle_moves():
    picture = swap_picture(shown(lower=-2.5, saddle=4.5))
    blocks = rows_with(picture, "left")
    tops = [
        max(b["top"] for b in blocks if b["left"] == left) for left in sorted({b["left"] for b in blocks})
    ]
    assert tops[1] - tops[0] == pytest.approx(4.5)


def test_a_saddle_that_goes_down_points_down():
    up, down = (swap_picture(shown(saddle=mm)) for mm in (2.0, -2.0))
    tips = [rows_with(p, "tip")[0]["tip"] for p in (up, down)]
    assert tips == ["triangle-up", "triangle-down"]
    assert moved(-2.0) == "−2.0 mm"
    ET.fromstring(drawn(down))
