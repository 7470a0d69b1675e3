"""Typed fields of a CSV record: what is accepted, and what is said of the rest."""

from datetime import date
from decimal import ROUND_DOWN, localcontext

import pytest

from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_text import rows_of
from spindlewise.problems import Problem, render

HEADER = ("key", "field")


def _reader(field: str) -> tuple[FieldReader, list[Problem]]:
    quoted = '"' + field.replace('"', '""') + '"' if "," in field or '"' in field else field
    rows, problems = rows_of(f"key,field\nkk,{quoted}\n".encode(), "f.csv", HEADER)
    return FieldReader(rows[0], HEADER, problems), problems


def _said(problems: list[Problem]) -> str:
    """What is said after place and level, of one problem of the field in column 4."""
    printed = render(problems, "plain")
    assert printed.count("\n") == 1
    assert [p.field for p in problems] == ["field"]
    return printed.removeprefix("f.csv:2:4: error: ").removesuffix("\n")


@pytest.mark.parametrize(
    ("field", "value"),
    [("899.00", "899.00"), ("1", "1"), ("0.8460", "0.8460"), ("123456789012.34", "123456789012.34")],
)
def test_a_plain_decimal_is_read_to_its_last_digit(field: str, value: str) -> None:
    reader, problems = _reader(field)
    assert str(reader.decimal("field")) == value
    assert reader.faultless
    assert problems == []


@pytest.mark.parametrize(
    ("field", "said"),
    [
        ("899,00", "found '899,00', which is not a plain number; write 899.00 (bad-number)"),
        ("1,299.00", "found '1,299.00', which is not a plain number; write 1299.00 (bad-number)"),
        ("1.299,00", "found '1.299,00', which is not a plain number; write 1299.00 (bad-number)"),
        ("1,234,567", "found '1,234,567', which is not a plain number; write 1234567 (bad-number)"),
        *(
            (
                odd,
                f"found '{odd}', which is not a plain number; "
                "write digits and a point, for instance 899.00 (bad-number)",
            )
            for odd in ("1,299", "", "899.", ".5", "+5", "8.99e2", "1_000", "0899", "٨٩٩", "NaN", "--5", "€9")
        ),
        ("-5", "found -5; write more than 0; unknown is no row at all (not-positive)"),
        ("0.00", "found 0.00; write more than 0; unknown is no row at all (not-positive)"),
        (
            "1234567890123456",
            "found '1234567890123456', 16 characters long; write 15 at most (long-number)",
        ),
    ],
)
def test_what_is_no_plain_decimal_is_said_with_what_was_meant(field: str, said: str) -> None:
    reader, problems = _reader(field)
    assert reader.decimal("field") is None
    assert not reader.faultless
    assert _said(problems) == f"field: {said}"


def test_zero_may_be_allowed_but_never_less() -> None:
    reader, problems = _reader("0")
    assert reader.decimal("field", zero_allowed=True) == 0
    assert problems == []
    reader, problems = _reader("-0.5")
    assert reader.decimal("field", zero_allowed=True) is None
    assert "write 0 or more" in _said(problems)


@pytest.mark.parametrize(
    ("field", "currency", "value"),
    [
        ("899", "EUR", "899.00"),
        ("899.5", "EUR", "899.50"),
        ("98000", "JPY", "98000"),
        ("1.234", "KWD", "1.234"),
    ],
)
def test_an_amount_takes_on_the_decimals_of_its_currency(field: str, currency: str, value: str) -> None:
    reader, _ = _reader(field)
    assert str(reader.amount("field", currency)) == value


@pytest.mark.parametrize(
    ("field", "currency", "said"),
    [
        ("899.005", "EUR", "found 899.005, but EUR has 2 decimals; write 899.01"),
        ("899.000", "EUR", "found 899.000, but EUR has 2 decimals; write 899.00"),
        ("98000.00", "JPY", "found 98000.00, but JPY has no decimals; write 98000"),
        ("98000.5", "JPY", "found 98000.5, but JPY has no decimals; write 98001"),
    ],
)
def test_more_decimals_than_the_currency_has_are_refused(field: str, currency: str, said: str) -> None:
    with localcontext() as context:
        context.rounding = ROUND_DOWN
        reader, problems = _reader(field)
        assert reader.amount("field", currency) is None
    assert _said(problems) == f"field: {said} (minor-unit)"


def test_an_amount_in_an_unknown_currency_is_no_amount_and_no_second_problem() -> None:
    reader, problems = _reader("899.00")
    assert reader.amount("field", None) is None
    assert problems == []
    reader, problems = _reader("899,00")
    assert reader.amount("field", None) is None
    assert "write 899.00" in _said(problems)


def test_a_currency_in_circulation_is_taken() -> None:
    reader, problems = _reader("JPY")
    assert reader.currency("field") == "JPY"
    assert problems == []


@pytest.mark.parametrize(
    ("field", "tip"),
    [
        ("eur", "did you mean EUR?"),
        ("EURO", "did you mean EUR?"),
        ("€", "write an ISO 4217 code such as EUR"),
        ("", "write an ISO 4217 code such as EUR"),
        ("XAU", "write an ISO 4217 code such as EUR"),
    ],
)
def test_an_unknown_currency_is_named(field: str, tip: str) -> None:
    reader, problems = _reader(field)
    assert reader.currency("field") is None
    said = _said(problems)
    assert said.startswith(f"field: found '{field}', which is no currency in circulation; ")
    assert said.endswith("(unknown-currency)")
    assert tip in said or field == "XAU"


def test_a_day_is_read_and_may_be_empty_where_allowed() -> None:
    reader, problems = _reader("2028-02-29")
    assert reader.day("field") == date(2028, 2, 29)
    reader, more = _reader("")
    assert reader.day("field", may_be_empty=True) is None
    assert problems == more == []


BAD_DATE = "which is no date; write the day as YYYY-MM-DD, for instance 2026-11-18 (bad-date)"


@pytest.mark.parametrize(
    ("field", "said"),
    [
        *(
            (odd, f"found '{odd}', {BAD_DATE}")
            for odd in (
                "",
                "18.11.2026",
                "2026-1-8",
                "20261118",
                "2026-11-18T10:00",
                "2026-W47-3",
                "٢٠٢٦-11-18",
            )
        ),
        ("2026-02-29", "there is no day 2026-02-29; correct the month or the day (impossible-date)"),
        ("2026-13-01", "there is no day 2026-13-01; correct the month or the day (impossible-date)"),
        ("0000-01-01", "there is no day 0000-01-01; correct the month or the day (impossible-date)"),
    ],
)
def test_what_is_no_day_is_said(field: str, said: str) -> None:
    reader, problems = _reader(field)
    assert reader.day("field") is None
    assert _said(problems) == f"field: {said}"


def test_a_word_is_one_of_the_allowed_ones() -> None:
    reader, _ = _reader("street")
    assert reader.word("field", ("list", "street")) == "street"


@pytest.mark.parametrize(
    ("field", "tip"),
    [
        ("Street", "did you mean street?"),
        ("steet", "did you mean street?"),
        ("sale", "write one of: list, street"),
        ("", "write one of: list, street"),
    ],
)
def test_another_word_is_asked_about(field: str, tip: str) -> None:
    reader, problems = _reader(field)
    assert reader.word("field", ("list", "street")) is None
    assert _said(problems) == f"field: found '{field}'; allowed: list, street; {tip} (unknown-word)"


@pytest.mark.parametrize("field", ["Nine Locks", '=HYPERLINK("x"), told', "x" * 40, "日本の店"])
def test_text_is_taken_as_it_is_even_where_a_spreadsheet_would_see_a_formula(field: str) -> None:
    reader, problems = _reader(field)
    assert reader.text("field", 40) == field
    assert problems == []


@pytest.mark.parametrize(
    ("field", "said"),
    [
        ("", "is empty; write a value (empty-field)"),
        ("   ", "is empty; write a value (empty-field)"),
        (" x", "found ' x'; take the space at its end away (stray-space)"),
        ("x ", "found 'x '; take the space at its end away (stray-space)"),
        ("x" * 41, "is 41 characters long, 40 at most (long-field)"),
    ],
)
def test_text_that_is_empty_spaced_or_long_is_refused(field: str, said: str) -> None:
    reader, problems = _reader(field)
    assert reader.text("field", 40) is None
    assert _said(problems) == f"field: {said}"


def test_a_warning_may_be_noted_too() -> None:
    reader, problems = _reader("x")
    reader.wrong("key", "odd-key", "looks odd", level="warning")
    assert render(problems, "plain") == "f.csv:2:1: warning: key: looks odd (odd-key)\n"


def test_a_products_id_leads_nowhere() -> None:
    for plain in ("a", "heron-2", "x" * 60):
        reader, problems = _reader(plain)
        assert reader.identifier("field") == plain
        assert problems == []
    for odd in ("..", "../a", "a/b", "Heron", "heron-", "-heron", "a--b", "con", "lpt9", "a.b", "h\u00e9ron"):
        reader, problems = _reader(odd)
        assert reader.identifier("field") is None
        assert "which cannot be a product's id; write lower-case letters" in _said(problems)
    assert _reader("x" * 61)[0].identifier("field") is None
