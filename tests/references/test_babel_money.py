"""Unicode Common Locale Data Repository, through Babel 2.18: how money prints in a locale.

Where ours differs is said in each test.
"""

from decimal import Decimal

import pytest
from babel.numbers import format_currency, format_decimal
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.units import money_text


@pytest.mark.parametrize(
    ("amount", "currency", "locale", "text"),
    [
        ("1234.5", "EUR", "de_DE", "1.234,50\u00a0€"),
        ("1234.5", "USD", "en_US", "$1,234.50"),
        ("1234.5", "JPY", "ja_JP", "￥1,234"),
    ],
)
def test_a_locale_prints_symbols_hard_spaces_and_half_to_even(
    amount: str, currency: str, locale: str, text: str
) -> None:
    """They are why amounts here are printed with the code, plain spaces and one rule of halves."""
    assert format_currency(Decimal(amount), currency, locale=locale).replace("¥", "￥") == text


@pytest.mark.parametrize(
    ("amount", "currency", "ours"),
    [("1234.5", "EUR", "EUR 1,234.50"), ("1234.5", "USD", "USD 1,234.50"), ("1234.5", "JPY", "JPY 1,235")],
)
def test_ours_groups_as_english_does_and_rounds_as_a_till(amount: str, currency: str, ours: str) -> None:
    assert money_text(Decimal(amount), currency) == ours


@pytest.mark.parametrize("amount", ["0.01", "999.99", "1000", "12345678.9", "-5", "-1234.56"])
def test_ours_is_the_english_format_with_the_code_in_front(amount: str) -> None:
    english = format_currency(Decimal(amount), "EUR", format="#,##0.00", locale="en")
    assert money_text(Decimal(amount), "EUR") == f"EUR {english}"


@settings(deadline=None)
@given(st.decimals(-(10**12), 10**12, places=2))
def test_amounts_are_grouped_as_the_locale_data_group_them_in_english(amount: Decimal) -> None:
    if amount.is_zero():
        amount = abs(amount)
    assert money_text(amount, "EUR") == "EUR " + format_decimal(amount, format="#,##0.00", locale="en")
