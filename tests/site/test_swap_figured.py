import pytest

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.answer.reply import reply_to
from spindlewise.answer.swap import swap
from spindlewise.fit.saddle import SaddleChange
from spindlewise.render.naming import naming
from spindlewise.site.swap_figured import swap_figured


def figures(old, new, **buyer):
    asked = worlds.buyer(**buyer)
    found = swap(old, new, worlds.DAY, asked, ())
    return swap_figured(found, asked, naming(worlds.catalog([old, new], [])))


def test_every_swap_of_the_demo_that_has_figures_is_drawn(site):
    desk, drawn = Desk(site.catalog, site.day), 0
    for buyer in site.buyers.values():
        reply = reply_to(desk, buyer)
        if reply.swap is None:
            continue
        found = swap_figured(reply.swap, buyer, naming(site.catalog))
        assert bool(found) is isinstance(reply.swap.saddle, SaddleChange)
        drawn += len(found)
    assert drawn >= 8


def test_layers_and_table():
    (found,) = figures(worlds.product("heron"), worlds.product("siskin", {"stack_mm": (worlds.stack(13.0),)}))
    shown = found.picture.shown
    assert [layer.height_mm for layer in (*shown.before, *shown.after)] == [11.0, 5.5, 13.0, 5.5]
    assert found.table.rows == (
        ("Pedal", "11.0 mm", "13.0 mm", "+2.0 mm"),
        ("Cleat", "5.5 mm", "5.5 mm", "0.0 mm"),
        ("Saddle, by common practice", "", "", "+2.0 mm"),
    )
    assert "The sole stays" in found.caption


def test_soles_and_cranks_are_drawn_where_they_change():
    (found,) = figures(
        worlds.product("heron"),
        worlds.product("siskin"),
        shoes={"sole_mm": 7.0, "new_sole_mm": 5.5},
        bike={"crank_mm": 172.5, "new_crank_mm": 170.0},
    )
    assert found.picture.shown.crank_lower_mm == -2.5
    assert ("Sole", "7.0 mm", "5.5 mm", "−1.5 mm") in found.table.rows
    assert ("Axis at the bottom of the stroke", "", "", "+2.5 mm") in found.table.rows
    assert "2.5 mm higher" in found.caption


def test_stacks_on_unlike_bases_are_brought_to_the_sole():
    (found,) = figures(
        worlds.product("heron"), worlds.product("siskin", {"stack_mm": (worlds.stack(17.0, "axis to sole"),)})
    )
    assert found.picture.shown.before[0].height_mm == 16.5
    assert found.picture.shown.after[0].text == "pedal and cleat"


@pytest.mark.parametrize("stack_mm", ["unknown"])
def test_a_missing_figure_makes_no_picture(stack_mm):
    assert figures(worlds.product("heron"), worlds.product("siskin", {"stack_mm": stack_mm})) == ()
