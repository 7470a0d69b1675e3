"""Answers read again, as data."""

import json

import worlds
from spindlewise.answer.answer_log import to_log
from spindlewise.answer.ranking import rank
from spindlewise.answer.recheck import recheck
from spindlewise.render.json_recheck import recheck_json


def test_every_answer_has_its_verdict_reasons_and_reply():
    def desk(siskin):
        products = [
            worlds.product(n, {"weight_g": (worlds.weighed(w),)})
            for n, w in (("heron", 330.0), ("siskin", 300.0))
        ]
        return worlds.desk(products, [worlds.price("heron", 500), worlds.price("siskin", siskin)])

    entries = [to_log(d, rank(d, worlds.buyer())) for d in (desk(650), desk(450))]
    now = desk(450)
    found = recheck_json(now.catalog, recheck(now, entries), "2026-11-20")

    json.dumps(found, allow_nan=False)
    assert [a["verdict"] for a in found["answers"]] == ["no longer holds", "holds"]
    assert found["answers"][0]["because"] == [
        {"product": "siskin", "what": "price", "before": "650.00", "now": "450.00"}
    ]
    assert found["answers"][0]["reply"].startswith("We told you")
    assert found["answers"][1]["reply"] is None
