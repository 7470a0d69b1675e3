"""A buyer as a link, with nothing of body or health in it unless asked."""

from decimal import Decimal

import worlds
from spindlewise.render.fragment import LONGEST, VERSION, fragment

PRIVATE = {
    "needs": {"rider_mass_kg": 87.5},
    "riding": {"balance_left_pct": {"low": 46.5, "high": 47.5}, "hours_per_year": 300.0},
}


def parts(buyer, with_private=False):
    version, *rest = fragment(buyer, with_private).removeprefix("#").split("&")
    assert version == VERSION
    return [tuple(part.split("=", 1)) for part in rest]


def test_region_budget_points_and_receivers_in_plain_text():
    found = dict(parts(worlds.buyer(budget=Decimal("899.90"), points={"price": 40, "weight": 12.5})))

    assert found["region"] == "EU"
    assert found["budget"] == "899.9"
    assert found["points"] == "price:40,weight:12.5"
    assert found["receiver"] == "ant-bluetooth,unlimited,cannot,can,can"


def test_body_weight_and_balance_only_when_asked():
    buyer = worlds.buyer(**PRIVATE)

    assert {"mass", "left"} & {key for key, _ in parts(buyer)} == set()
    assert dict(parts(buyer, with_private=True))["mass"] == "87.5"
    assert dict(parts(buyer, with_private=True))["left"] == "46.5-47.5"
    assert dict(parts(buyer))["ride"] == "300"


def test_an_order_becomes_points_and_needs_are_named():
    needs = {
        "shoes": {"bolts": "three-bolt", "patterns": ("Keel & Co",)},
        "reading": "both sides",
        "balance": "needed",
        "water": "IPX6",
        "states": ("current", "clearance"),
        "kind": "any",
        "weight_g_at_most": 340.0,
    }
    channels = {"total": 3, "kept": ("heart rate",)}
    receiver = {
        "name": "unit",
        "protocols": ("ANT+",),
        "channels": channels,
        "pairs_two_sensors": "unknown",
    }
    buyer = worlds.buyer(
        weights={"order": ("weight", "price")},
        needs=needs,
        receivers=(receiver,),
        present_pedals="gull",
        bike={"crank_mm": 172.5},
    )
    found = dict(parts(buyer))

    assert found["points"] == "price:25,weight:75"
    assert (found["shoes"], found["pattern"]) == ("three-bolt", "Keel%20%26%20Co")
    assert (found["reading"], found["balance"], found["water"]) == ("both", "needed", "IPX6")
    assert (found["states"], found["kind"], found["grams"]) == ("current,clearance", "any", "340")
    assert found["receiver"] == "ant,2,unknown,can,can"
    assert (found["present"], found["crank"]) == ("gull", "172.5")
    assert len(fragment(buyer)) < LONGEST
