from datetime import date

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.catalog.plain_scalar import Surprise, read_plain


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("0", 0),
        ("-0", 0),
        ("310", 310),
        ("-12", -12),
        ("999999999999999", 999999999999999),
        ("53.20", 53.2),
        ("-0.5", -0.5),
        ("0.0", 0.0),
        ("899.10000000000", 899.1),
        ("2024-02-29", date(2024, 2, 29)),
        ("unknown", "unknown"),
        ("not applicable", "not applicable"),
        ("12 g", "12 g"),
        ("899,00", "899,00"),
        ("1.2.3", "1.2.3"),
        ("2024-1-5", "2024-1-5"),
        ("12:75", "12:75"),
        ("ANT+", "ANT+"),
        ("-", "-"),
        (".", "."),
        ("+", "+"),
        ("nano", "nano"),
        ("nothing", "nothing"),
        ("٣", "٣"),
        ("0x", "0x"),
        ("1e", "1e"),
        ("0O_", "0O_"),
        ("0x_", "0x_"),
        ("._e5", "._e5"),
        ("e3", "e3"),
        ("v1.0", "v1.0"),
    ],
)
def test_plain_scalar_means(text: str, value: object) -> None:
    assert read_plain(text) == value
    assert type(read_plain(text)) is type(value)


@pytest.mark.parametrize(
    "text", ["yes", "No", "ON", "oFF", "true", "False", "null", "NULL", "~", "<<", "=", ""]
)
def test_words_that_readers_turn_into_something_else_are_refused(text: str) -> None:
    assert isinstance(read_plain(text), Surprise)


@pytest.mark.parametrize(
    ("text", "tip"),
    [
        ("1:30", "90"),
        ("-1:00:30", "-3630"),
        ("0777", "777"),
        ("007.50", "7.50"),
        ("0x1F", "31"),
        ("0o17", "15"),
        ("0b11", "3"),
        ("0x_f_", "15"),
        ("1e3", "1000"),
        ("-1.5e-3", "-0.0015"),
        (".5e1", "5"),
        ("1_000", "1000"),
        ("+5", "5"),
        ("-.5", "-0.5"),
        ("5.", "5"),
        ("-00", "0"),
    ],
)
def test_the_tip_gives_the_number_that_was_meant(text: str, tip: str) -> None:
    surprise = read_plain(text)
    assert isinstance(surprise, Surprise)
    assert surprise.rule == "ambiguous-number"
    assert surprise.tip == f'write "{text}" in quotes for the text, or {tip} for the number'


@pytest.mark.parametrize(
    "text", ["1" * 16, "0." + "1" * 15, "0" * 5000, "1_" * 5000 + "1", "1" * 9000 + ":00"]
)
def test_numbers_longer_than_a_double_are_refused_at_any_length(text: str) -> None:
    surprise = read_plain(text)
    assert isinstance(surprise, Surprise)
    assert surprise.rule == "long-number"
    assert len(surprise.message) < 100


@given(st.text(alphabet="0123456789+-.:_eExobXOBTt ,aAfFnNiIyYs~=<", max_size=14))
@settings(deadline=None, max_examples=400)
def test_no_text_survives_that_pyyaml_would_read_as_something_else(text: str) -> None:
    ours = read_plain(text)
    if isinstance(ours, str):
        resolved = yaml.SafeLoader("").resolve(yaml.ScalarNode, text, (True, False))
        assert resolved in ("tag:yaml.org,2002:str", "tag:yaml.org,2002:timestamp")
        assert resolved.endswith("str") or "-" in text


@given(st.integers(-(10**15) + 1, 10**15 - 1))
@settings(deadline=None)
def test_integers_come_back(number: int) -> None:
    assert read_plain(str(number)) == number


@given(st.dates())
@settings(deadline=None)
def test_days_come_back(day: date) -> None:
    assert read_plain(day.isoformat()) == day
