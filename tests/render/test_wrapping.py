from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.render.wrapping import wrapped

WORDS = st.lists(st.text("abcdefg0123456789.,%", min_size=1, max_size=12), max_size=40).map(" ".join)


def test_a_number_keeps_its_unit_and_a_currency_its_amount() -> None:
    for width in range(8, 60):
        lines = wrapped("It costs EUR 1,234.50 and weighs 346 g, which is 12.5 % or 3.5 mm.", width).split(
            "\n"
        )
        assert not any(line.endswith(("EUR", "346", "12.5", "3.5")) for line in lines)


def test_a_unit_that_begins_a_word_is_no_unit() -> None:
    assert wrapped("ride 3 good hours", 8) == "ride 3\ngood\nhours"


@settings(deadline=None)
@given(WORDS, st.integers(30, 90))
def test_no_word_is_lost_and_no_line_is_too_long(text: str, width: int) -> None:
    lines = wrapped(text, width, "- ", "  ")
    assert lines.split()[1:] == text.split() or not text.split()
    assert all(len(line) <= width for line in lines.split("\n"))
