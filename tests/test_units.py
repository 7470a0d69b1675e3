"""Kinds of number and how they print."""

import math
from collections.abc import Callable
from datetime import UTC, date, datetime
from decimal import ROUND_DOWN, Decimal, localcontext

import numpy as np
import pytest

from spindlewise.units import (
    amount_text,
    as_written,
    currency_codes,
    date_text,
    figure_text,
    grams_text,
    in_circulation,
    millimetres_text,
    minor_digits,
    money_text,
    number_text,
    percent_text,
    points_text,
    rounded,
    seconds_text,
    to_half_millimetre,
    to_minor_unit,
    watts_text,
)


@pytest.mark.parametrize(
    ("amount", "currency", "text"),
    [
        ("899", "EUR", "899.00"),
        ("899.5", "EUR", "899.50"),
        ("1234567.891", "USD", "1234567.89"),
        ("98000", "JPY", "98000"),
        ("1E+3", "JPY", "1000"),
        ("7.2E+2", "EUR", "720.00"),
        ("12.3456", "KWD", "12.346"),
        ("-0.004", "EUR", "0.00"),
        ("-15.005", "EUR", "-15.01"),
    ],
)
def test_an_amount_for_a_file_has_the_decimals_of_its_currency_and_nothing_else(
    amount: str, currency: str, text: str
) -> None:
    assert amount_text(Decimal(amount), currency) == text


@pytest.mark.parametrize(
    ("amount", "currency", "signed", "text"),
    [
        ("1234.5", "EUR", False, "EUR 1,234.50"),
        ("1234567", "JPY", False, "JPY 1,234,567"),
        ("120", "EUR", True, "EUR +120.00"),
        ("-120", "EUR", True, "EUR -120.00"),
        ("-0.001", "EUR", True, "EUR 0.00"),
        ("0", "USD", True, "USD 0.00"),
        ("1.2345", "BHD", False, "BHD 1.235"),
    ],
)
def test_money_reads_code_first(amount: str, currency: str, signed: bool, text: str) -> None:
    assert money_text(Decimal(amount), currency, signed=signed) == text


def test_money_has_plain_spaces_and_an_ascii_minus_only() -> None:
    assert money_text(Decimal("-1234567.5"), "EUR").isascii()


@pytest.mark.parametrize("thread", [5, 28])
def test_the_callers_decimal_settings_change_no_digit(thread: int) -> None:
    with localcontext() as context:
        context.prec, context.rounding = thread, ROUND_DOWN
        assert amount_text(Decimal("123456789012.345"), "EUR") == "123456789012.35"
        assert money_text(Decimal("123456789012.345"), "EUR") == "EUR 123,456,789,012.35"
        assert number_text(123456.75, 1) == "123456.8"
        assert millimetres_text(123456.75) == "123457.0 mm"


@pytest.mark.parametrize("code", ["", "eur", "EURO", "€", "XXX", "XTS", "XAU", "DEM"])
def test_what_is_no_currency_in_circulation_is_refused_with_an_example(code: str) -> None:
    assert code not in currency_codes()
    with pytest.raises(ValueError, match="give an ISO 4217 code such as 'EUR'"):
        minor_digits(code)


def test_currency_codes_are_in_order_and_many() -> None:
    assert list(currency_codes()) == sorted(currency_codes())
    assert len(currency_codes()) > 150


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [
        (2.675, 2, "2.68"),  # as written, though the binary number lies below it
        (0.5, 0, "1"),
        (1.5, 0, "2"),
        (-0.5, 0, "-1"),
        (-0.04, 1, "0.0"),
        (-0.0, 0, "0"),
        (1e16, 0, "10000000000000000"),
        (1e300, 0, "1" + "0" * 300),
        (1e-300, 2, "0.00"),
        (404, 0, "404"),
    ],
)
def test_halves_go_away_from_zero_on_the_digits_as_written(value: float, decimals: int, text: str) -> None:
    assert number_text(value, decimals) == text
    assert rounded(value, decimals) == float(text)
    assert math.copysign(1, rounded(value, decimals)) == (-1 if text.startswith("-") else 1)


def test_a_signed_number_shows_plus_except_on_zero() -> None:
    assert number_text(3.0, signed=True) == "+3"
    assert number_text(-3.0, signed=True) == "-3"
    assert number_text(0.2, signed=True) == "0"


def test_a_numpy_number_prints_as_a_plain_one() -> None:
    assert grams_text(np.float64(404.2)) == "404 g"
    assert type(rounded(np.float64(1.25), 1)) is float


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
@pytest.mark.parametrize(
    "printed", [number_text, rounded, millimetres_text, to_half_millimetre, grams_text, percent_text]
)
def test_what_is_not_finite_is_never_printed(printed: Callable[[float], object], value: float) -> None:
    with pytest.raises(ValueError, match="give a finite number"):
        printed(value)


@pytest.mark.parametrize("value", ["NaN", "Infinity"])
def test_an_amount_that_is_not_finite_is_never_printed(value: str) -> None:
    with pytest.raises(ValueError, match="give a finite number"):
        to_minor_unit(Decimal(value), "EUR")


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (6.24, "+6.0 mm"),
        (6.25, "+6.5 mm"),
        (6.74, "+6.5 mm"),
        (6.75, "+7.0 mm"),
        (-6.25, "-6.5 mm"),
        (0.2, "0.0 mm"),
        (-0.2, "0.0 mm"),
    ],
)
def test_a_saddle_moves_by_half_millimetres(value: float, text: str) -> None:
    assert millimetres_text(value, signed=True) == text
    assert to_half_millimetre(value) == float(text.removesuffix(" mm"))


def test_each_kind_of_number_says_its_unit() -> None:
    assert grams_text(-53.0, signed=True) == "-53 g"
    assert percent_text(-6.0, signed=True) == "-6.0 %"
    assert percent_text(47.25, 2) == "47.25 %"
    assert watts_text(249.5) == "250 W"
    assert seconds_text(3.24, signed=True) == "+3.2 s"
    assert points_text(82.35) == "82.4"


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (404.4, "g", "404 g"),
        (11.0, "mm", "11.0 mm"),
        (1.0, "%", "1.0 %"),
        (2.5, "years", "2.5 years"),
        (2.0, "years", "2 years"),
        (1.0, "years", "1 year"),
        (100.0, "kg", "100 kg"),
        (34.5, "N m", "34.5 N m"),
        (61.0, "points", "61.0"),
        (3.0, "", "3"),
    ],
)
def test_a_figure_carries_the_decimals_of_its_unit(value: float, unit: str, text: str) -> None:
    assert figure_text(value, unit) == text


def test_a_day_prints_as_iso_8601_with_four_digits_of_the_year_and_no_time() -> None:
    assert date_text(date(2026, 1, 9)) == "2026-01-09"
    assert date_text(date(987, 1, 9)) == "0987-01-09"
    assert date_text(datetime(2026, 1, 9, 23, 59, tzinfo=UTC)) == "2026-01-09"


def test_a_number_is_the_decimal_that_was_written_and_the_rest_is_left_to_others() -> None:
    assert [as_written(v) for v in (899.1, 899, "899", True, None)] == [
        Decimal("899.1"),
        Decimal(899),
        "899",
        True,
        None,
    ]
    with pytest.raises(ValueError, match="not a finite amount"):
        as_written(float("nan"))


def test_a_currency_without_a_minor_unit_is_not_in_circulation() -> None:
    assert in_circulation("EUR") == "EUR"
    with pytest.raises(ValueError, match="XAU"):
        in_circulation("XAU")
