import json
from typing import Any

from render.test_words_weigh import report
from small_answers import desk
from spindlewise.render.as_json import as_json
from spindlewise.render.json_weigh import SCHEMA, weigh_json


def found() -> dict[str, Any]:
    whole: dict[str, Any] = json.loads(as_json(SCHEMA, weigh_json(report(), desk().day)))
    return whole


def test_each_weighing_carries_its_uncertainty_and_where_it_comes_from() -> None:
    one = next(w for w in found()["weighed"] if w["product"] == "pellamund-orrestad")
    assert one["basis"] == {"count": "pair", "batteries": "in", "cleats": "off"}
    assert {part["type"] for part in one["components"]} == {"A", "B"}
    assert one["expanded_g"] > one["type_a_g"] > 0
    assert one["claim"]["verdict"] == "proved over"
    assert one["not_in_the_uncertainty"] == ["calibration"]


def test_cells_and_claims_that_are_not_comparable() -> None:
    (pair,) = found()["with_and_without_cells"]
    assert (pair["one_thing"], pair["expected_g"]) == (True, 23.0)
    unlike = [w["claim"] for w in found()["weighed"] if w["claim"] and w["claim"]["unlike"]]
    assert unlike
    assert all(claim["difference_g"] is None for claim in unlike)
