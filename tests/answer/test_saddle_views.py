from dataclasses import replace

import pytest

import worlds
from spindlewise.answer.saddle_views import saddle_views
from spindlewise.answer.swap import LegAnswer, swap
from spindlewise.fit.leg_change import LegChange

BIKE = {"crank_mm": 172.5, "saddle_height_mm": 745.0, "seat_tube_deg": 73.5}
OLD = worlds.plain("old", observations={"stack_mm": (worlds.stack(11.0),)})
NEW = worlds.product("new", {"stack_mm": (worlds.stack(14.0),)})


def swapped(**changes: object):  # type: ignore[no-untyped-def]
    return swap(OLD, NEW, worlds.DAY, worlds.buyer(bike=BIKE, **changes), ())


def test_practice_less_leg_model_is_how_far_they_are_apart() -> None:
    found = swapped(body={"height_mm": 1800.0, "foot_pitch_bottom_deg": 20.0})
    assert isinstance(found.leg.change, LegChange)
    views = saddle_views(found)
    assert views is not None
    assert views.practice_mm == pytest.approx(3.0)
    assert views.apart_mm == views.practice_mm - views.leg_mm
    assert 0 < views.apart_mm < 1


def test_without_body_data_there_is_one_view_only() -> None:
    assert saddle_views(swapped()) is None


def test_without_a_stack_there_is_none() -> None:
    unknown = worlds.product("new", {"stack_mm": "unknown"})
    found = swap(OLD, unknown, worlds.DAY, worlds.buyer(bike=BIKE), ())
    assert saddle_views(replace(found, leg=LegAnswer(None, "needs it"))) is None
