"""Kinds of number and how they print: the one place where figures are rounded, and to what they carry.

One rule for halves everywhere: away from zero, as at a till, on the decimal digits as they are written.
The minus is ASCII's, so that a pasted figure is still a number; minus zero is never printed.
"""

import math
from datetime import date
from decimal import ROUND_HALF_UP, Context, Decimal
from functools import cache

_CONTEXT = Context(prec=400)  # not the thread's context: the same input must give the same digits
_DECIMALS = {"g": 0, "h": 0, "W": 0, "%": 1, "mm": 1, "s": 1, "points": 1}
"""The decimals that figures of a unit carry; of other units one, where it says something."""


_CODES_BY_DIGITS = {
    0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
    2: (
        "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF "
        "CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD "
        "GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL "
        "MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR "
        "PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP "
        "TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW ZWG"
    ),
    3: "BHD IQD JOD KWD LYD OMR TND",
    4: "CLF UYW",
}
"""ISO 4217:2015, list one as of 2026-01-01: what stands here is held to the maintained list by a test."""


@cache
def _digits_by_currency() -> dict[str, int]:
    return {code: digits for digits, codes in _CODES_BY_DIGITS.items() for code in codes.split()}


@cache
def currency_codes() -> tuple[str, ...]:
    """The ISO 4217 codes of money in circulation, in order; metals, funds without units and tests are out.

    >>> "EUR" in currency_codes(), "XAU" in currency_codes()
    (True, False)
    """
    return tuple(sorted(_digits_by_currency()))


def minor_digits(currency: str) -> int:
    """How many decimals a currency's amounts carry (ISO 4217): 2 for EUR, 0 for JPY, 3 for KWD.

    Raises ValueError for a code that is no currency, or one without minor units such as XAU.

    >>> minor_digits("EUR"), minor_digits("JPY")
    (2, 0)
    """
    digits = _digits_by_currency().get(currency)
    if digits is None:
        raise ValueError(f"{currency!r} is no currency in circulation; give an ISO 4217 code such as 'EUR'")
    return digits


def in_circulation(currency: str) -> str:
    """The code itself, if amounts in it can be rounded; raises ValueError as `minor_digits` does."""
    minor_digits(currency)
    return currency


def as_written(value: object) -> object:
    """A number from a file as the decimal that stands there: 899.1 is 899.1, not 899.10000000000002.

    What is no number is given back for others to refuse. Raises ValueError for one that is not finite.

    >>> as_written(899.1), as_written("899.1")
    (Decimal('899.1'), '899.1')
    """
    if isinstance(value, bool) or not isinstance(value, int | float):
        return value
    if isinstance(value, float) and not math.isfinite(value):
        raise ValueError("is not a finite amount | write a plain decimal number")
    return Decimal(repr(value))


def to_minor_unit(amount: Decimal, currency: str) -> Decimal:
    """The amount in whole minor units; halves go away from zero, as at a till.

    Raises ValueError for a currency that is none, and for an amount that is not finite.

    >>> to_minor_unit(Decimal("1.005"), "EUR"), to_minor_unit(Decimal("99.5"), "JPY")
    (Decimal('1.01'), Decimal('100'))
    """
    return _in_steps(amount, minor_digits(currency))


def amount_text(amount: Decimal, currency: str) -> str:
    """An amount as a plain decimal with the currency's own decimals, for JSON and CSV: '899.00'.

    >>> amount_text(Decimal("899"), "EUR"), amount_text(Decimal("98000"), "JPY")
    ('899.00', '98000')
    """
    return f"{to_minor_unit(amount, currency):f}"


def money_text(amount: Decimal, currency: str, signed: bool = False) -> str:
    """An amount as people read it, code first, then a plain space: 'EUR 1,234.50'.

    >>> money_text(Decimal("1234.5"), "EUR"), money_text(Decimal("98000"), "JPY", signed=True)
    ('EUR 1,234.50', 'JPY +98,000')
    """
    rounded = to_minor_unit(amount, currency)
    return f"{currency} {rounded:{'+' if signed and rounded > 0 else ''},f}"


def about_money_text(amount: Decimal, currency: str) -> str:
    """An amount that is only known roughly, to two significant digits: 'EUR 49', 'JPY 9,000', 'EUR 6.80'.

    >>> about_money_text(Decimal("48.67"), "EUR"), about_money_text(Decimal("8961"), "JPY")
    ('EUR 49', 'JPY 9,000')
    >>> about_money_text(Decimal("6.83"), "EUR"), about_money_text(Decimal("0.004"), "EUR")
    ('EUR 6.80', 'EUR 0.00')
    """
    exact = to_minor_unit(amount, currency)
    if not exact:
        return money_text(exact, currency)
    step = Decimal(1).scaleb(max(exact.adjusted() - 1, -minor_digits(currency)))
    rough = exact.quantize(step, ROUND_HALF_UP, _CONTEXT)
    if abs(rough) < 10:
        return money_text(rough, currency)
    return f"{currency} {rough.quantize(Decimal(1), ROUND_HALF_UP, _CONTEXT):,f}"


def rounded(value: float, decimals: int = 0) -> float:
    """A number rounded as `number_text` prints it, for figures in JSON; never minus zero.

    Raises ValueError for NaN and infinity.

    >>> rounded(2.675, 2), rounded(-0.04, 1)
    (2.68, 0.0)
    """
    return float(_in_steps(Decimal(repr(float(value))), decimals))


def number_text(value: float, decimals: int = 0, signed: bool = False) -> str:
    """A number with so many decimals; never '-0'. Raises ValueError for NaN and infinity.

    >>> number_text(-0.04, 1), number_text(6.25, 1, signed=True), number_text(404.0)
    ('0.0', '+6.3', '404')
    """
    return _signed_text(_in_steps(Decimal(repr(float(value))), decimals), signed)


def grams_text(value: float, signed: bool = False) -> str:
    """Grams to the gram: '404 g'."""
    return f"{number_text(value, 0, signed)} g"


def to_half_millimetre(value: float) -> float:
    """Millimetres to the half, as a saddle can be set.

    >>> to_half_millimetre(6.25), to_half_millimetre(-8.74)
    (6.5, -8.5)
    """
    return float(_half(value))


def millimetres_text(value: float, signed: bool = False) -> str:
    """Millimetres to the half, as a saddle can be set.

    >>> millimetres_text(6.26, signed=True), millimetres_text(-8.75), millimetres_text(0.1)
    ('+6.5 mm', '-9.0 mm', '0.0 mm')
    """
    return f"{_signed_text(_half(value), signed)} mm"


def percent_text(value: float, decimals: int = 1, signed: bool = False) -> str:
    """A percentage: '-6.0 %'."""
    return f"{number_text(value, decimals, signed)} %"


def watts_text(value: float, signed: bool = False) -> str:
    """Watts to the watt: '250 W'."""
    return f"{number_text(value, 0, signed)} W"


def seconds_text(value: float, signed: bool = False) -> str:
    """Seconds to the tenth: '3.2 s'."""
    return f"{number_text(value, 1, signed)} s"


def points_text(value: float, signed: bool = False) -> str:
    """Points of a score to the tenth, without a unit: '82.4'."""
    return number_text(value, 1, signed)


def date_text(day: date) -> str:
    """A day as ISO 8601 writes it: '2026-11-20'."""
    return f"{day.year:04d}-{day.month:02d}-{day.day:02d}"


def figure_text(value: float, unit: str) -> str:
    """A figure in its unit, with the decimals that figures of this unit carry.

    >>> figure_text(404.2, "g"), figure_text(11.0, "mm"), figure_text(2.5, "years"), figure_text(1, "years")
    ('404 g', '11.0 mm', '2.5 years', '1 year')
    """
    decimals = _DECIMALS.get(unit, 0 if float(value).is_integer() else 1)
    text = number_text(value, decimals)
    shown_unit = "year" if unit == "years" and text == "1" else "" if unit == "points" else unit
    return f"{text} {shown_unit}".rstrip()


def _half(value: float) -> Decimal:
    halves = _in_steps(_CONTEXT.multiply(Decimal(repr(float(value))), Decimal(2)), 0)
    return _CONTEXT.multiply(halves, Decimal("0.5"))


def _in_steps(value: Decimal, decimals: int) -> Decimal:
    if not value.is_finite():
        raise ValueError(f"{value} cannot be printed; give a finite number, and say unknown in words")
    found = value.quantize(_step(decimals), ROUND_HALF_UP, _CONTEXT)
    return found if found else found.copy_abs()


@cache
def _step(decimals: int) -> Decimal:
    return Decimal(1).scaleb(-decimals)


def _signed_text(value: Decimal, signed: bool) -> str:
    return f"{value:+f}" if signed and not value.is_zero() else f"{value:f}"
