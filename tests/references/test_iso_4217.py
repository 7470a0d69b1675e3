"""ISO 4217:2015, "Codes for the representation of currencies", table A.1: minor units.

The figures are those of the maintenance agency's list as REFERENCES section 8 gives them.
"""

from decimal import Decimal

import pytest
from babel.numbers import get_currency_precision
from iso4217 import Currency

from spindlewise.units import amount_text, currency_codes, minor_digits, to_minor_unit

MINOR_UNITS = {
    "USD": 2, "EUR": 2, "GBP": 2, "CHF": 2, "SEK": 2, "MRU": 2, "MGA": 2,
    "JPY": 0, "KRW": 0, "CLP": 0, "ISK": 0, "VND": 0, "UGX": 0, "UYI": 0,
    "BHD": 3, "KWD": 3, "OMR": 3, "TND": 3, "JOD": 3, "IQD": 3, "LYD": 3,
    "CLF": 4, "UYW": 4,
}  # fmt: skip
BY_CUSTOM = {"IQD": 0, "MGA": 0}
"""Where the locale data follows the custom of shops instead of the standard."""


@pytest.mark.parametrize(("code", "digits"), MINOR_UNITS.items())
def test_minor_units_are_those_of_the_standard(code: str, digits: int) -> None:
    assert minor_digits(code) == digits
    assert amount_text(Decimal(5), code) == f"{5:.{digits}f}"


def test_gold_has_no_minor_unit_and_is_no_money_here() -> None:
    assert "XAU" not in currency_codes()
    with pytest.raises(ValueError, match="'XAU' is no currency in circulation"):
        minor_digits("XAU")


@pytest.mark.parametrize("code", MINOR_UNITS)
def test_locale_data_agrees_unless_it_follows_custom(code: str) -> None:
    assert get_currency_precision(code) == BY_CUSTOM.get(code, minor_digits(code))


def test_the_mauritanian_and_malagasy_units_of_a_fifth_have_two_digits_in_the_standard() -> None:
    assert to_minor_unit(Decimal("0.2"), "MRU") == Decimal("0.20")
    assert to_minor_unit(Decimal("0.2"), "MGA") == Decimal("0.20")


def test_the_table_is_the_maintained_list_with_its_minor_units() -> None:
    listed = {str(c.code): c.exponent for c in Currency if c.exponent is not None}
    assert {code: minor_digits(code) for code in currency_codes()} == listed
