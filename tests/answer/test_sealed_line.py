import json
import random

import pytest

from spindlewise.answer.sealed_line import sealed, unsealed

RECORD = {
    "schema": "spindlewise logged answer 2",
    "pick": "heron",
    "note": 'a "quote" and é',
    "n": [1.5, None],
}


def test_what_is_sealed_is_read_back():
    line = sealed(RECORD)
    assert json.loads(unsealed(line)) == RECORD
    assert json.loads(line) | {"seal": None} == RECORD | {"seal": None}


def test_each_single_bit_that_changes_breaks_the_seal():
    line = sealed(RECORD)
    for at in range(8 * len(line)):
        changed = bytearray(line)
        changed[at // 8] ^= 1 << at % 8
        assert unsealed(bytes(changed)) is None, at


def test_bytes_lost_doubled_or_exchanged_break_the_seal():
    line, draw = sealed(RECORD), random.Random(7)
    for _ in range(300):
        at = draw.randrange(len(line))
        assert unsealed(line[:at] + line[at + 1 :]) is None
        assert unsealed(line[:at] + line[at : at + 1] + line[at:]) is None


@pytest.mark.parametrize("line", [b"", b"{}", b'{"seal":"00"}', b'{"a":1}', b"x" * 99])
def test_what_has_no_seal_is_not_sealed(line):
    assert unsealed(line) is None


@pytest.mark.parametrize("record", [{}, {"seal": 1}, {"a": float("nan")}])
def test_what_cannot_be_sealed(record):
    with pytest.raises(ValueError, match=r"sealed|JSON"):
        sealed(record)
