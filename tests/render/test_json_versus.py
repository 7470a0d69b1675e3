"""Two products side by side, as data."""

import json

import small_answers
from spindlewise.answer.versus import versus
from spindlewise.render.json_versus import versus_json


def told(buyer="club-racer"):
    found = versus(
        small_answers.desk(),
        small_answers.buyer(buyer),
        "brellowick-ferrowen-2",
        "yttervane-koldrane",
    )
    return versus_json(found)


def test_it_is_json_and_has_both_with_all_that_they_rest_on():
    found = told()

    json.dumps(found, allow_nan=False)
    first, second = found["products"]
    assert (first["product"], second["product"]) == ("brellowick-ferrowen-2", "yttervane-koldrane")
    assert second["safety_notices"]
    assert second["draws_level_outcome"] == "at no price while it is held back"
    assert first["draws_level_outcome"] == "at any price"
    assert set(first["merits"]) == set(found["criteria"])


def test_needs_that_fail_are_listed():
    found = versus_json(
        versus(
            small_answers.desk(),
            small_answers.buyer("club-racer"),
            "brellowick-ferrowen-2",
            "lommerside-lethery",
        )
    )

    assert found["products"][0]["fails"] == []
    assert "it is a plain pedal" in found["products"][1]["fails"]
