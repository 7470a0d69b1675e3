import json

import pytest

from small_answers import desk, reply
from spindlewise.render.as_json import as_json
from spindlewise.render.json_reply import SCHEMA, reply_json


@pytest.mark.parametrize("name", ["club-racer", "phone-only", "nothing-for-it"])
def test_a_reply_is_whole_finite_and_the_same_each_time(name: str) -> None:
    first, second = (as_json(SCHEMA, reply_json(desk().catalog, reply(name))) for _ in range(2))
    assert first == second
    assert "NaN" not in first
    assert json.loads(first)["schema"] == SCHEMA


def test_each_part_of_the_reply_has_its_key() -> None:
    found = reply_json(desk().catalog, reply())
    keys = {"question", "near_misses", "reading", "swap", "ladder", "weight_ranges", "smallest_change"}
    keys |= {"unknowns", "disclosures", "safety_notices", "cautions", "invented", "pick_stays_first_up_to"}
    assert set(found) >= keys
    assert sum(found["smallest_change"]["shares"].values()) == pytest.approx(1, abs=1e-5)  # type: ignore[index,call-overload,union-attr,arg-type]


def test_a_doubled_side_comes_with_its_error() -> None:
    from dataclasses import replace

    found = reply("phone-only")
    mono = next(p for p in found.ranking.placed if p.product == "tarnquell-liskar-mono")
    reading = reply_json(desk().catalog, replace(found, pick=mono))["reading"]
    doubled = reading[0]["doubled_side"]  # type: ignore[index,call-overload]
    assert doubled["low_pct"] < doubled["high_pct"]  # type: ignore[index,call-overload,operator]


def test_without_a_pick_what_hangs_on_it_is_null() -> None:
    found = reply_json(desk().catalog, reply("nothing-for-it"))
    assert found["pick"] is found["swap"] is found["smallest_change"] is None
    assert found["reading"] == []
    assert found["nothing_because"]
