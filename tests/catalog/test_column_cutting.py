"""The cutting of plain lines, against the strict reader's own field rules and line splitting."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from spindlewise.catalog.column_cutting import (
    MOST_WHOLE,
    QUOTED_COMMA,
    field_ends,
    line_starts,
    plain_amounts,
    unquoted,
    visible,
)
from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_text import Row
from spindlewise.catalog.text_numbers import PADDING


def test_lines_and_fields_end_where_they_do() -> None:
    line = b"a,,b,c,d,e,f,g,h,ij\n"
    assert line_starts(line * 2).tolist() == [0, 20, 40]
    ends = field_ends(np.frombuffer(line * 2, np.uint8))
    assert ends is not None
    assert ends[0].tolist() == [1, 2, 4, 6, 8, 10, 12, 14, 16, 19]
    assert (ends[1] - ends[0] == 20).all()


@pytest.mark.parametrize("lines", [b"a,b\n", b"1,2,3,4,5,6,7,8,9,10,11\n1,2,3,4,5,6,7,8,9\n", b"\n" * 10])
def test_lines_with_too_few_fields_or_too_many_are_not_cut(lines: bytes) -> None:
    assert field_ends(np.frombuffer(lines, np.uint8)) is None


@pytest.mark.parametrize("letter", ["\t", "\x00", "\x1f", "\x7f", "\x85", "\u200b", "\u2028"])
def test_what_cannot_be_seen_is_found(letter: str) -> None:
    assert visible("Löwe, ø\n".encode(), 1)
    assert visible(b"plain\n", 1)
    assert not visible(f"a{letter}b\n".encode(), 1)
    assert not visible(f"ö{letter}b\n".encode(), 1)
    assert not visible(b"\xff\n", 1)


def test_quotes_are_taken_away_and_commas_in_them_kept_apart() -> None:
    assert unquoted(b'a,"b, ""c""",d\ne,f,g\n') == f'a,b{QUOTED_COMMA} "c",d\ne,f,g\n'.encode()
    assert unquoted(b'a,b"c,d\n') is None


def strictly(text: str) -> str | None:
    found = FieldReader(Row("", 1, (text,), text), ("amount",), []).decimal("amount")
    return None if found is None else f"{found:f}"


@given(
    st.from_regex(r"[0-9]{1,16}(\.[0-9]{0,4})?", fullmatch=True)
    | st.text(st.sampled_from("0123.-+e, "), max_size=6).filter(lambda text: "," not in text)
)
def test_an_amount_is_what_the_strict_reader_says_or_nothing(text: str) -> None:
    letters = np.frombuffer(b"x," + text.encode() + b",y" + PADDING, np.uint8)
    found = plain_amounts(letters, np.array([2]), np.array([2 + len(text)]))
    wanted = strictly(text)
    if found is None:
        assert wanted is None or int(wanted.replace(".", "")) >= MOST_WHOLE
    else:
        assert wanted is not None
        whole, decimals = found
        assert (int(whole[0]), int(decimals[0])) == (
            int(wanted.replace(".", "")),
            len(wanted.partition(".")[2]),
        )
