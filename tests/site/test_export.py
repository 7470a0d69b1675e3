"""The export as a whole: versioned, plain JSON, nothing of any buyer, one definition of every rule."""

import json

import pytest

import worlds
from spindlewise.answer.asking import USUAL_POINTS
from spindlewise.answer.desk import Desk
from spindlewise.catalog.ingress_code import meets
from spindlewise.reception.doubled_side import doubled_error
from spindlewise.site.export import CODES, SCHEMA, weigh_export


@pytest.fixture(scope="module")
def demo(site):
    return weigh_export(Desk(site.catalog, site.day)), site


def test_it_is_versioned_json_without_nan(demo):
    found, site = demo
    assert found["schema"] == SCHEMA == "spindlewise weigh 1"
    assert found["as_of"] == site.day.isoformat()
    assert json.loads(json.dumps(found, allow_nan=False)) == found


def test_it_is_the_same_bytes_again(demo):
    found, site = demo
    assert json.dumps(weigh_export(Desk(site.catalog, site.day))) == json.dumps(found)


def test_nothing_of_a_buyer_is_in_it(demo):
    found, site = demo
    text = json.dumps(found, ensure_ascii=False)
    assert site.buyers
    for buyer in site.buyers.values():
        assert buyer.name not in text
        assert buyer.question not in text


def test_every_product_is_in_it_and_finds_its_reading_modes(demo):
    found, site = demo
    assert [p["id"] for p in found["products"]] == list(site.catalog.products)
    rows = found["reception"]["rows"]
    assert all(0 <= p["reception"] < len(rows) for p in found["products"])


def test_ingress_codes_answer_every_need_as_the_rule_does(demo):
    found, _ = demo
    assert found["ingress"]["needs"] == list(CODES)
    assert len(CODES) == len(set(CODES)) == 87
    assert found["ingress"]["answers"]
    for code, letters in found["ingress"]["answers"].items():
        for need, letter in zip(CODES, letters, strict=True):
            assert {"y": True, "n": False, "u": None}[letter] == meets(code, need)


def test_curves_carry_their_knots_and_steps_do_not(demo):
    found, site = demo
    by_name = {c["name"]: c for c in found["criteria"]}
    yardstick = Desk(site.catalog, site.day).yardstick
    assert list(by_name) == list(yardstick.titles)
    for name, curve in yardstick.curves.items():
        assert (by_name[name]["x"], by_name[name]["merit"]) == (list(curve.x), list(curve.merit))
        assert by_name[name]["plausible_merits"] == list(curve.over(*yardstick.spans[name]))
    assert "x" not in by_name["detail"]


def test_what_stands_in_for_the_unstated_is_pythons(demo):
    found, _ = demo
    assert found["usual"]["points"] == USUAL_POINTS
    population = doubled_error(None)
    assert found["doubled"]["standard"] == population.standard_pct
    assert (found["doubled"]["low"], found["doubled"]["high"]) == (population.low_pct, population.high_pct)


def test_a_real_catalog_carries_no_notice_of_invention():
    catalog = worlds.catalog([worlds.product("heron")], [])
    object.__setattr__(catalog, "settings", catalog.settings.model_copy(update={"invented": "no"}))
    assert weigh_export(Desk(catalog))["invented"] == ""
