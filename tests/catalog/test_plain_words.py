from datetime import date
from typing import Any

import pytest

from spindlewise.catalog.plain_words import Fault, allowed_words, described, mismatch, single


def _fault(kind: str, value: Any, **facts: Any) -> Fault:
    return Fault((), (), kind, "Input should be something", value, facts)


WORDS = _fault("literal_error", "x", expected="'unknown', 'none' or 'not applicable'")


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("heavy", "text 'heavy'"),
        ("", "empty text"),
        ("\x1b", "text '\\x1b'"),
        (5, "the number 5"),
        (5.5, "the number 5.5"),
        (date(2024, 1, 2), "the day 2024-01-02"),
        ((), "an empty list"),
        ((1, 2), "a list of 2"),
        ({}, "keys with values"),
    ],
)
def test_what_stands_in_the_file(value: object, words: str) -> None:
    assert described(value) == words


def test_allowed_words_are_read_from_pydantics_sentence() -> None:
    assert allowed_words(WORDS) == ("unknown", "none", "not applicable")
    assert allowed_words(_fault("literal_error", "x", expected="1, 2 or 'it, or so'")) == (
        "1",
        "2",
        "it, or so",
    )
    assert allowed_words(_fault("missing", "x")) == ()


def test_a_number_or_words() -> None:
    assert mismatch([_fault("float_type", "heavy"), WORDS], "") == (
        "wrong-kind",
        "found text 'heavy'",
        "expected one of: unknown, none, not applicable".replace("expected", "expected a number, or"),
    )


def test_many_words_are_cut() -> None:
    many = _fault("literal_error", "x", expected=", ".join(f"'word {n}'" for n in range(40)))
    assert mismatch([many], "")[2].endswith("word 14, …")


@pytest.mark.parametrize(
    ("fault", "words"),
    [
        (_fault("greater_than", 0, gt=0), ("out-of-range", "found the number 0", "expected more than 0")),
        (
            _fault("greater_than_equal", -1, ge=0),
            ("out-of-range", "found the number -1", "expected at least 0"),
        ),
        (_fault("less_than", 9, lt=9), ("out-of-range", "found the number 9", "expected less than 9")),
        (_fault("less_than_equal", 9, le=5.0), ("out-of-range", "found the number 9", "expected at most 5")),
        (
            _fault("multiple_of", 9, multiple_of=5),
            ("out-of-range", "found the number 9", "expected a multiple of 5"),
        ),
        (
            _fault("string_too_short", "", min_length=1),
            ("text-length", "found empty text", "expected at least 1 character"),
        ),
        (
            _fault("string_too_long", "abc", max_length=2),
            ("text-length", "has 3 characters", "expected at most 2 characters"),
        ),
        (
            _fault("too_short", (), min_length=1),
            ("list-length", "found an empty list", "expected at least 1 entry"),
        ),
        (
            _fault("too_long", (1, 2), max_length=1),
            ("list-length", "has 2 entries", "expected at most 1 entry"),
        ),
        (
            _fault("string_pattern_mismatch", "Demo One!", pattern="^[a-z0-9]+(-[a-z0-9]+)*$"),
            ("text-form", "found text 'Demo One!'", "write demo-one"),
        ),
        (
            _fault("string_pattern_mismatch", "€", pattern="^[A-Z]{3}$"),
            ("text-form", "found text '€'", "expected three capital letters, such as EUR"),
        ),
        (
            _fault("string_pattern_mismatch", "x", pattern="^[0-9]$"),
            ("text-form", "found text 'x'", "expected text of the form ^[0-9]$"),
        ),
        (
            _fault("value_error", "x", error=ValueError("is odd | make it even")),
            ("invalid-value", "is odd", "make it even"),
        ),
        (
            _fault("value_error", {}, error=ValueError("low stands above high")),
            ("contradiction", "low stands above high", ""),
        ),
        (_fault("assertion_error", "x", error=AssertionError("\x1b")), ("invalid-value", "\\x1b", "")),
        (
            _fault("finite_number", 1.0),
            ("invalid-value", "found the number 1.0", "input should be something"),
        ),
        (_fault("int_type", 1.5), ("wrong-kind", "found the number 1.5", "expected a whole number")),
        (_fault("date_type", "1.2.2024"), ("wrong-kind", "found text '1.2.2024'", "write it as YYYY-MM-DD")),
        (_fault("date_type", "soon"), ("wrong-kind", "found text 'soon'", "expected a day as YYYY-MM-DD")),
        (_fault("tuple_type", "x"), ("wrong-kind", "found text 'x'", "expected a list")),
        (_fault("model_type", (1,)), ("wrong-kind", "found a list of 1", "expected keys with values")),
    ],
)
def test_each_fault_in_plain_words(fault: Fault, words: tuple[str, str, str]) -> None:
    assert single(fault, "") == words


def test_text_is_wanted_where_a_number_or_a_day_stands() -> None:
    assert single(_fault("string_type", 5.1), "5.10")[2] == 'put it in quotes: "5.10"'
    assert (
        single(_fault("string_type", date(2024, 1, 2)), "2024-01-02")[2] == 'put it in quotes: "2024-01-02"'
    )
    assert single(_fault("string_type", (1,)), "")[2] == "expected text"


def test_the_words_that_would_also_do_are_named() -> None:
    fault = _fault("value_error", "IP", error=ValueError("is no code | write IPX7"))
    assert single(fault, "", [WORDS])[2] == "write IPX7, or one of the words: unknown, none, not applicable"
    slip = _fault("value_error", "unknwon", error=ValueError("is no code | write IPX7"))
    assert single(slip, "", [WORDS])[2] == "did you mean 'unknown'?"
    one = _fault("literal_error", "x", expected="'unknown'")
    assert (
        single(_fault("value_error", "IP", error=ValueError("is no code")), "", [one])[2]
        == "or the word unknown"
    )
    assert single(_fault("less_than_equal", 9, le=5), "", [WORDS])[2] == "expected at most 5"
