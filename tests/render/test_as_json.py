import json
import math

import pytest

from spindlewise.render.as_json import Json, as_json, lined_json, number


def test_the_schema_stands_first_and_all_is_ascii() -> None:
    text = as_json("spindlewise x 1", {"name": "重量 \u202e", "n": 1.5})
    assert text.isascii()
    assert list(json.loads(text)) == ["schema", "name", "n"]
    assert text.endswith("}\n")


@pytest.mark.parametrize("value", [math.inf, -math.inf, math.nan])
def test_a_number_that_is_not_finite_is_a_bad_call(value: float) -> None:
    with pytest.raises(ValueError, match="JSON"):
        number(value)
    for written in (as_json, lined_json):
        with pytest.raises(ValueError, match="JSON"):
            written("x", {"n": value})
        with pytest.raises(ValueError, match="JSON"):
            written("x", {"n": [value]})


def test_minus_zero_and_the_last_bits_do_not_show() -> None:
    assert str(number(-0.0000000001)) == "0.0"
    assert number(63.699999999999996) == 63.7
    assert number(None) is None


@pytest.mark.parametrize(
    "content", [{}, {"order": []}, {"a": [[], {}, "x\n"], "b": {"c": [1, 2]}, "重": None}]
)
def test_a_record_a_line_says_the_same(content: dict[str, Json]) -> None:
    text = lined_json("spindlewise x 1", content)
    assert text.isascii()
    assert json.loads(text) == json.loads(as_json("spindlewise x 1", content))
    assert list(json.loads(text)) == ["schema", *content]
    records = sum(len(value) for value in content.values() if isinstance(value, list))
    assert text.count("\n") <= 2 + 2 * (1 + len(content)) + records
