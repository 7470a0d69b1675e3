import json
import math

import pytest

from spindlewise.render.as_json import as_json, number


def test_the_schema_stands_first_and_all_is_ascii() -> None:
    text = as_json("spindlewise x 1", {"name": "重量 \u202e", "n": 1.5})
    assert text.isascii()
    assert list(json.loads(text)) == ["schema", "name", "n"]
    assert text.endswith("}\n")


@pytest.mark.parametrize("value", [math.inf, -math.inf, math.nan])
def test_a_number_that_is_not_finite_is_a_bad_call(value: float) -> None:
    with pytest.raises(ValueError, match="JSON"):
        number(value)
    with pytest.raises(ValueError, match="JSON"):
        as_json("x", {"n": value})


def test_minus_zero_and_the_last_bits_do_not_show() -> None:
    assert str(number(-0.0000000001)) == "0.0"
    assert number(63.699999999999996) == 63.7
    assert number(None) is None
