import pytest

from spindlewise.catalog.yaml_source import LARGEST_BYTES, decode


@pytest.mark.parametrize(
    "raw",
    ["a: ü\nb: x\n", "a: ü\nb: x\n".encode(), "\ufeffa: ü\r\nb: x\r\n", "\ufeffa: ü\r\nb: x\r\n".encode()],
)
def test_byte_order_mark_and_crlf_are_accepted(raw: str | bytes) -> None:
    assert decode(raw, "a") == ("a: ü\nb: x\n", [])


def test_the_largest_file_passes_and_one_byte_more_does_not() -> None:
    assert decode(b"a" * LARGEST_BYTES, "a")[1] == []
    for raw in (b"a" * (LARGEST_BYTES + 1), "ü" * (LARGEST_BYTES // 2 + 1)):
        _, problems = decode(raw, "a")
        assert [(p.rule, p.message) for p in problems] == [
            ("file-too-large", "the file is larger than 1024 KiB")
        ]


@pytest.mark.parametrize(
    ("raw", "line", "column", "message"),
    [
        ("a: \ud800".encode("utf-8", "surrogatepass"), 1, 4, "the byte 0xED is not UTF-8"),
        (b"\xef\xbb\xbfa: \xff", 1, 4, "the byte 0xFF is not UTF-8"),
        (b"a\r\nb: \xc3", 2, 4, "the byte 0xC3 is not UTF-8"),
        ("a: \ud800", 1, 4, "a character that cannot be seen (U+D800)"),
        ("a: \u2066x", 1, 4, "a character that turns the direction of text round (U+2066)"),
        ("a\n\x07", 2, 1, "a character that cannot be seen (U+0007)"),
        ("a\rb", 1, 2, "a line break that editors count differently (U+000D)"),
        ("a: \uffff", 1, 4, "a character that cannot be seen (U+FFFF)"),
        ("a:\n \tb", 2, 2, "a tab stands in the indentation"),
    ],
)
def test_what_is_wrong_with_a_character_and_where(
    raw: str | bytes, line: int, column: int, message: str
) -> None:
    _, [problem] = decode(raw, "a")
    assert problem.place is not None
    assert (problem.place.line, problem.place.column, problem.message) == (line, column, message)


def test_a_tab_between_words_is_not_indentation() -> None:
    assert decode("a:\tb\tc\n", "a")[1] == []


def test_a_file_of_nothing_but_controls_gives_a_bounded_list() -> None:
    assert len(decode("\x00" * 100_000 + "\n\t" * 10_000, "a")[1]) == 40


def test_text_marks_without_controls_pass() -> None:
    assert decode("a: 踏板 Ω µ ± − “x” 🚲 \u00a0\n", "a")[1] == []
