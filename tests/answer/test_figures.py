"""The figures that are the same for every buyer."""

import math

import worlds
from spindlewise.answer.claims import weight_standing
from spindlewise.answer.figures import stack_to_top, unpriced_standings
from spindlewise.catalog.figure import Absent, Known
from spindlewise.decide.claims_record import claims_record


def standings(observations):
    heron = worlds.product("heron", observations)
    return {
        "weight": weight_standing(heron, worlds.DAY, claims_record([])),
        **unpriced_standings(heron, worlds.DAY),
    }


def test_a_weighing_stands_before_a_claim_and_keeps_its_interval():
    claim = worlds.weighed(398.0, "unknown", grade="claimed")
    found = standings({"weight_g": (claim, worlds.weighed(404.0, 1.0))})["weight"]

    assert (found.value, found.low, found.high, found.origin) == (404.0, 403.0, 405.0, "measured")


def test_a_claim_alone_is_a_claim_without_an_interval():
    found = standings({"weight_g": (worlds.weighed(398.0, "unknown", grade="claimed"),)})["weight"]

    assert (found.value, found.low, found.high, found.origin) == (398.0, None, None, "claimed")


def test_a_weight_on_another_basis_decides_nothing():
    single = worlds.seen(200.0, {"count": "one pedal", "batteries": "in", "cleats": "off"})
    unsure = worlds.seen(410.0, {"count": "pair", "batteries": "unknown", "cleats": "off"})
    found = standings({"weight_g": (single, unsure)})["weight"]

    assert found.value is None
    assert found.origin == "unknown"
    assert "wanted: pair, batteries in, cleats off" in found.source


def test_unknown_none_and_not_applicable_stay_three_things():
    found = standings(
        {
            "running_hours": "not applicable",
            "warranty_years": (worlds.seen("none", grade="claimed"),),
            "stack_mm": "unknown",
        }
    )

    assert [found[k].origin for k in ("running_time", "warranty", "stack")] == [
        "not applicable",
        "none",
        "unknown",
    ]
    assert all(found[k].value is None for k in ("running_time", "warranty", "stack"))


def test_stack_to_the_sole_becomes_stack_to_the_pedal_top_with_a_known_cleat_and_says_so():
    to_sole = worlds.stack(16.5, "axis to sole")
    heron = worlds.product("heron", {"stack_mm": (to_sole,)})
    found = stack_to_top(heron, worlds.DAY)

    assert isinstance(found, Known)
    assert found.value == 11.0
    assert found.plus_minus == math.hypot(0.2, 0.2)
    assert unpriced_standings(heron, worlds.DAY)["stack"].origin == "worked out"


def test_a_cleat_of_unknown_height_converts_nothing():
    cleat = {"bolts": "three-bolt", "pattern": "Keel", "height_mm": "unknown"}
    heron = worlds.product("heron", {"stack_mm": (worlds.stack(16.5, "axis to sole"),)}, cleat=cleat)

    assert isinstance(stack_to_top(heron, worlds.DAY), Absent)


def test_a_cleat_without_plus_minus_gives_no_interval():
    cleat = {"bolts": "three-bolt", "pattern": "Keel", "height_mm": 5.5}
    heron = worlds.product("heron", {"stack_mm": (worlds.stack(16.5, "axis to sole"),)}, cleat=cleat)
    found = unpriced_standings(heron, worlds.DAY)["stack"]

    assert (found.value, found.low) == (11.0, None)
