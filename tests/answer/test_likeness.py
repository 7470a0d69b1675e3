"""Buyers alike in a respect share its number at one desk; the others do not."""

import pytest

import worlds
from spindlewise.answer.likeness import Likeness

RECEIVER = {
    "name": "wrist unit",
    "protocols": ("ANT+",),
    "channels": "unlimited",
    "pairs_two_sensors": "cannot",
    "shows_balance": "can",
    "shows_stroke_metrics": "cannot",
}


@pytest.mark.parametrize(
    ("stated", "differs_in"),
    [
        ({"budget": 900}, ()),
        ({"points": {"weight": 3}}, ()),
        ({"receivers": (RECEIVER,)}, ("reception",)),
        ({"riding": {"threshold_power_w": 250.0}}, ("reception",)),
        # a crank length set wrongly moves no place
        ({"bike": {"crank_mm": 170.0, "head_unit_crank_mm": 172.5}}, ()),
        ({"needs": {"reading": "both sides"}}, ("needs",)),
        ({"riding": {"years": 5.0}}, ("riding",)),
        ({"region": "US", "currency": "USD"}, ("riding",)),
    ],
)
def test_what_makes_buyers_unlike(stated, differs_in):
    desk = worlds.desk([], [])
    one, other = desk.likeness(worlds.buyer()), desk.likeness(worlds.buyer(**stated))

    assert tuple(n for n in Likeness.__slots__ if getattr(one, n) != getattr(other, n)) == differs_in
    assert desk.likeness(worlds.buyer()) == one
