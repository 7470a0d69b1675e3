"""Kinds of number and how they print: the one place where figures are rounded, and to what they carry."""

from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from functools import cache

MINUS = "-"
"""An ASCII minus everywhere, so that a pasted figure is still a number."""


@cache
def minor_digits(currency: str) -> int:
    """How many decimals a currency's amounts carry (ISO 4217): 2 for EUR, 0 for JPY, 3 for KWD.

    Raises ValueError for a code that is no currency, or one without minor units such as XAU.

    >>> minor_digits("EUR"), minor_digits("JPY")
    (2, 0)
    """
    from iso4217 import Currency

    try:
        exponent = Currency(currency).exponent
    except ValueError:
        raise ValueError(
            f"{currency!r} is not a currency code | write an ISO 4217 code such as EUR"
        ) from None
    if exponent is None:
        raise ValueError(f"{currency!r} has no minor unit | write the code of a currency in circulation")
    return int(exponent)


def to_minor_unit(amount: Decimal, currency: str) -> Decimal:
    """The amount in whole minor units; halves go up, as at a till.

    >>> to_minor_unit(Decimal("1.005"), "EUR"), to_minor_unit(Decimal("99.5"), "JPY")
    (Decimal('1.01'), Decimal('100'))
    """
    return amount.quantize(Decimal(1).scaleb(-minor_digits(currency)), rounding=ROUND_HALF_UP)


def amount_text(amount: Decimal, currency: str) -> str:
    """An amount as a plain decimal with the currency's own decimals, for JSON and CSV: '899.00'."""
    return f"{to_minor_unit(amount, currency) + 0:f}"


@cache
def _pattern(digits: int) -> str:
    return "#,##0" + ("." + "0" * digits if digits else "")


def money_text(amount: Decimal, currency: str) -> str:
    """An amount as people read it, code first: 'EUR 1,234.50'.

    >>> money_text(Decimal("1234.5"), "EUR"), money_text(Decimal("98000"), "JPY")
    ('EUR 1,234.50', 'JPY 98,000')
    """
    from babel.numbers import format_decimal

    rounded = to_minor_unit(amount, currency) + 0
    return f"{currency} {format_decimal(rounded, format=_pattern(minor_digits(currency)), locale='en')}"


def number_text(value: float, decimals: int = 0, signed: bool = False) -> str:
    """A number with so many decimals, halves to even on the decimal as written; never '-0'.

    >>> number_text(-0.04, 1), number_text(6.25, 1, signed=True), number_text(404.0)
    ('0.0', '+6.2', '404')
    """
    step = Decimal(1).scaleb(-decimals)
    rounded = Decimal(repr(float(value))).quantize(step, rounding=ROUND_HALF_EVEN)
    if rounded == 0:
        rounded = abs(rounded)
    return f"{rounded:+f}" if signed and rounded != 0 else f"{rounded:f}"


def grams_text(value: float, signed: bool = False) -> str:
    """Grams to the gram."""
    return f"{number_text(value, 0, signed)} g"


def millimetres_text(value: float, signed: bool = False) -> str:
    """Millimetres to the half, as a saddle can be set; halves of a half go away from zero.

    >>> millimetres_text(6.26, signed=True), millimetres_text(-8.75), millimetres_text(0.1)
    ('+6.5 mm', '-9.0 mm', '0.0 mm')
    """
    halves = (Decimal(repr(float(value))) * 2).quantize(Decimal(1), rounding=ROUND_HALF_UP)
    return f"{number_text(float(halves / 2), 1, signed)} mm"


def percent_text(value: float, decimals: int = 1, signed: bool = False) -> str:
    """A percentage."""
    return f"{number_text(value, decimals, signed)} %"


def watts_text(value: float, signed: bool = False) -> str:
    """Watts to the watt."""
    return f"{number_text(value, 0, signed)} W"


def points_text(value: float, signed: bool = False) -> str:
    """Points of a score, to a tenth."""
    return number_text(value, 1, signed)


def figure_text(value: float, unit: str) -> str:
    """A figure in its unit with the decimals that figures of this unit carry."""
    decimals = {"g": 0, "mm": 1, "%": 1, "h": 0, "years": 0, "kg": 0, "N m": 0}.get(unit, 1)
    text = number_text(value, decimals)
    if decimals == 0 and not float(value).is_integer() and unit in ("years", "kg", "N m"):
        text = number_text(value, 1)
    return f"{text} {unit}".strip()
