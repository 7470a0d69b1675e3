"""Plain scalars: what a value without quotes means, by rules on which all YAML readers agree."""

import re
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import lru_cache

from spindlewise.problems import quoted, shown

LONGEST_NUMBER = 15
"""Digits of a number: as many as a double carries through unchanged."""

_TRUTH_WORDS = frozenset({"yes", "no", "on", "off", "true", "false"})
_FALSE_WORDS = frozenset({"no", "off", "false"})
_SHORT_WORDS = _TRUTH_WORDS | {"null"}
_NUMBER_STARTS = frozenset("0123456789+-.")
_PLAIN_INTEGER = re.compile(r"-?(?:0|[1-9][0-9]*)")
_PLAIN_DECIMAL = re.compile(r"-?(?:0|[1-9][0-9]*)\.[0-9]+")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_DAY_AND_TIME = re.compile(r"([0-9]{4})-([0-9]{1,2})-([0-9]{1,2})(?:[Tt]|\s+)[0-9]{1,2}:.*", re.DOTALL)
_NOT_FINITE = re.compile(r"[-+]?\.(nan|inf)", re.IGNORECASE)
_BASE_SIXTY = re.compile(r"[-+]?[0-9][0-9_]*(?::[0-5]?[0-9])+(?:\.[0-9_]*)?")
_OTHER_BASE = re.compile(r"[-+]?0(?:x_*[0-9a-f][0-9a-f_]*|o_*[0-7][0-7_]*|b_*[01][01_]*)", re.IGNORECASE)
_EXPONENT = re.compile(r"[-+]?(?:[0-9][0-9_]*(?:\.[0-9_]*)?|\.[0-9][0-9_]*)e[-+]?[0-9]+", re.IGNORECASE)
_LOOSE_NUMBER = re.compile(r"[-+]?(?:[0-9][0-9_]*(?:\.[0-9_]*)?|\.[0-9][0-9_]*)")

Scalar = str | int | float | date


@dataclass(frozen=True, slots=True)
class Surprise:
    """A plain scalar that is refused: the rule, what is wrong, what would be right."""

    rule: str
    message: str
    tip: str


@lru_cache(maxsize=1024)
def read_plain(text: str) -> Scalar | Surprise:
    """What a plain scalar means here: text, an integer, a decimal, a day; or a Surprise where it is refused.

    >>> read_plain("53.2"), read_plain("both sides"), read_plain("2025-03-01")
    (53.2, 'both sides', datetime.date(2025, 3, 1))
    >>> read_plain("1:30").tip
    'write "1:30" in quotes for the text, or 90 for the number'
    """
    if not text:
        return Surprise("missing-value", "the value is missing", "write unknown, none or not applicable")
    if text[0] in _NUMBER_STARTS:
        return _number_or_day(text)
    if text in ("~", "<<", "=") or (len(text) <= 5 and text.lower() in _SHORT_WORDS):
        return _word(text)
    return text


def _word(text: str) -> Surprise:
    word = text.lower()
    if word in _TRUTH_WORDS:
        misread = "false" if word in _FALSE_WORDS else "true"
        return Surprise(
            "ambiguous-word",
            f"{quoted(text)} without quotes means {misread} to some YAML readers",
            f'write "{text}" in quotes for the word itself, or a word that this key allows',
        )
    if word in ("null", "~"):
        return Surprise(
            "ambiguous-word",
            f"{quoted(text)} without quotes means no value to YAML readers",
            f'write unknown, none or not applicable, or "{text}" in quotes for the text',
        )
    return Surprise(
        "ambiguous-word",
        f"{quoted(text)} without quotes is a command to some YAML readers",
        f'write "{text}" in quotes for the text, or write the value out in full',
    )


def _number_or_day(text: str) -> Scalar | Surprise:
    if _PLAIN_INTEGER.fullmatch(text):
        return int(text) if len(text.lstrip("-")) <= LONGEST_NUMBER else _long_number(text)
    if _PLAIN_DECIMAL.fullmatch(text):
        return float(text) if len(text.lstrip("-")) <= LONGEST_NUMBER + 1 else _long_number(text)
    if _DAY.fullmatch(text):
        try:
            return date.fromisoformat(text)
        except ValueError:
            return Surprise(
                "impossible-date",
                f"{text} is not a day of the calendar",
                f'write a day as YYYY-MM-DD, or "{text}" in quotes for the text',
            )
    return _surprising_number(text)


def _surprising_number(text: str) -> str | Surprise:
    if when := _DAY_AND_TIME.fullmatch(text):
        year, month, day = when.groups()
        return Surprise(
            "time-of-day",
            f"{quoted(text)} is a day with a time",
            f"write the day alone, {year}-{month:0>2}-{day:0>2}, or put it in quotes for the text",
        )
    if _NOT_FINITE.fullmatch(text):
        return Surprise(
            "not-a-number",
            f"{quoted(text)} is not a finite number",
            f'write a number or unknown, or "{text}" in quotes for the text',
        )
    number = (
        _LOOSE_NUMBER.fullmatch(text)
        or _BASE_SIXTY.fullmatch(text)
        or _OTHER_BASE.fullmatch(text)
        or _EXPONENT.fullmatch(text)
    )
    if number is None:
        return text
    if len(text) > 2 * LONGEST_NUMBER:
        return _long_number(text)
    return _ambiguous_number(text)


def _ambiguous_number(text: str) -> Surprise:
    meant, misread = _meant_number(text)
    said = f"{quoted(text)} without quotes means {misread} to some YAML readers"
    return Surprise(
        "ambiguous-number",
        said if misread else f"YAML readers differ on {quoted(text)} without quotes",
        f'write "{text}" in quotes for the text, or {meant} for the number',
    )


def _meant_number(text: str) -> tuple[str, str]:
    """The number that was probably meant, and the one that some readers make of it where that differs."""
    sign, body = ("-" if text[0] == "-" else ""), text.lstrip("+-").replace("_", "").lower()
    if ":" in body:
        sixty = _sign(sign, _from_base_sixty(body))
        return sixty, sixty
    if body[:2] in ("0x", "0o", "0b"):
        other = _sign(sign, str(int(body, 0)))
        return other, other
    if "e" in body:
        mantissa, exponent = body.split("e")
        if abs(int(exponent)) > LONGEST_NUMBER:
            return "the digits written out", ""
        return _sign(sign, _tidy(format(Decimal(_tidy(mantissa)).scaleb(int(exponent)), "f"))), ""
    octal = body if re.fullmatch(r"0[0-7]+", body) else ""
    misread = _sign(sign, str(int(octal, 8))) if octal and int(octal, 8) != int(octal) else ""
    return _sign(sign, _tidy(body)), misread


def _sign(sign: str, digits: str) -> str:
    return digits if digits.strip("0.") == "" else sign + digits


def _from_base_sixty(body: str) -> str:
    total = Decimal(0)
    for part in body.split(":"):
        total = total * 60 + Decimal(part)
    return _tidy(format(total, "f"))


def _tidy(digits: str) -> str:
    whole, _, fraction = digits.partition(".")
    whole = whole.lstrip("0") or "0"
    return f"{whole}.{fraction}" if fraction else whole


def _long_number(text: str) -> Surprise:
    return Surprise(
        "long-number",
        f"{shown(text, 24)} has more digits than a number keeps",
        f"write at most {LONGEST_NUMBER} digits, or put it in quotes for the text",
    )
