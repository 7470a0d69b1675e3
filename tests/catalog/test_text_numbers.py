import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from spindlewise.catalog import text_numbers
from spindlewise.catalog.text_numbers import LONGEST_PIECE, PADDING, TextNumbers


def spans(pieces: list[bytes]) -> tuple[bytes, np.ndarray, np.ndarray]:
    ends = np.cumsum([len(piece) for piece in pieces], dtype=np.int64)
    return b"".join(pieces) + PADDING, ends - np.array([len(piece) for piece in pieces], np.int64), ends


PIECES = st.lists(
    st.sampled_from([b"", b"a", b"a\0", b"12345678", b"123456789", b"b" * 40]) | st.binary(max_size=20)
)


@given(PIECES, PIECES)
def test_equal_pieces_have_one_number_and_others_another_from_call_to_call(one, other) -> None:
    numbers = TextNumbers()
    given_numbers = [*numbers.number(*spans(one)), *numbers.number(*spans(other))]
    assert [numbers.texts[number] for number in given_numbers] == one + other
    assert len(set(numbers.texts)) == len(numbers.texts) == len({*one, *other})


def test_pieces_without_end_are_not_numbered() -> None:
    assert TextNumbers().number(*spans([b"a" * (LONGEST_PIECE + 1)])) is None
    assert TextNumbers().number(*spans([b"a" * LONGEST_PIECE])) is not None


@pytest.mark.parametrize("pair", [[b"abc", b"abd"], [b"a", b"a\0"]])
def test_unlike_pieces_that_fall_together_by_chance_are_no_answer(pair, monkeypatch) -> None:
    monkeypatch.setattr(text_numbers, "_MULTIPLIER", np.uint64(0))
    assert TextNumbers().number(*spans(pair)) is None
    assert TextNumbers().number(*spans([pair[0], pair[0]])).tolist() == [0, 0]
