"""How sure a reply is, as data."""

import json

import small_answers
import worlds
from spindlewise.answer.reply import reply_to
from spindlewise.render.json_sureness import stability_json, sureness_json


def test_a_reply_as_data_is_json_with_all_its_parts():
    found = sureness_json(small_answers.reply())

    json.dumps(found, allow_nan=False)
    assert set(found) == {
        "stability",
        "second_opinions",
        "trades",
        "doubts",
        "promised",
        "crank_setting",
        "climb",
    }
    assert sum(p["first"] for p in found["stability"]["products"]) == 1.0


def test_a_product_that_is_never_first_has_no_central_weights():
    products = [
        worlds.product(name, {"weight_g": (worlds.weighed(weight),)})
        for name, weight in (("heron", 290.0), ("siskin", 440.0))
    ]
    desk = worlds.desk(products, [worlds.price("heron", 300), worlds.price("siskin", 900)])
    reply = reply_to(desk, worlds.buyer())
    heron, siskin = stability_json(reply.outlook.stability)["products"]

    assert siskin["central_weights"] is None
    assert len(heron["central_weights"]) == 3
    assert heron["beats"] == {"siskin": 1.0}


def test_no_candidates_pairs_a_climb_and_a_crank():
    climb = {"climb": {"length_m": 10_000.0, "gradient_pct": 8.0, "power_w": 250.0}}
    pairs = (
        {"more": "price", "than": "weight", "times": 2.0},
        {"more": "weight", "than": "stack", "times": 3.0},
        {"more": "price", "than": "stack", "times": 1.0},
    )
    desk = worlds.desk([worlds.product("heron"), worlds.plain("gull")], [worlds.price("heron", 500)])
    asker = worlds.buyer(
        weights={"pairs": pairs},
        riding=climb,
        needs={"rider_mass_kg": 72.0},
        bike={"bike_mass_kg": 8.0, "crank_mm": 172.5, "new_crank_mm": 170.0},
        present_pedals="gull",
    )
    found = sureness_json(reply_to(desk, asker))

    assert found["doubts"]["contradiction"]["times"] > 0
    assert found["climb"]["per_gram_s"] > 0
    assert found["crank_setting"]["stated"] is False
    empty = sureness_json(reply_to(desk, worlds.buyer(budget=10)))
    assert empty["stability"] is None
    assert empty["doubts"]["nobody_left"] == [{"need": "budget", "would_bring_back": ["heron"]}]
    assert empty["climb"] == {"because": "needs the present pedals"}
