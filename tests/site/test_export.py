"""What the page for weighing oneself is given: all figures, nothing of a buyer."""

import json

import small_answers
from spindlewise.answer.asking import USUAL_POINTS
from spindlewise.catalog.ingress_code import meets
from spindlewise.site.export import CODES, SCHEMA, weigh_export


def exported():
    return weigh_export(small_answers.desk())


def test_it_is_json_with_a_version_and_the_day():
    found = exported()

    assert json.loads(json.dumps(found, allow_nan=False)) == json.loads(json.dumps(found))
    assert (found["schema"], found["as_of"]) == (SCHEMA, "2026-11-20")
    assert found["usual"]["points"] == dict(USUAL_POINTS)


def test_curves_are_those_of_the_catalog():
    curves = small_answers.desk().yardstick.curves
    knots = {c["name"]: c for c in exported()["criteria"] if c["name"] in curves}

    assert set(knots) == set(curves)


def test_every_product_stands_there_once_with_its_reception():
    found = exported()
    catalog = small_answers.desk().catalog

    assert [p["id"] for p in found["products"]] == list(catalog.products)
    rows = found["reception"]["rows"]
    assert all(0 <= p["reception"] < len(rows) for p in found["products"])
    assert all(0 <= i < len(found["reception"]["outcomes"]) for row in rows for i in row)


def test_codes_are_valid_needs():
    assert all(meets(code, code) is not False for code in CODES)
