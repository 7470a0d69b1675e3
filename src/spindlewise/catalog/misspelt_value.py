"""Values written in a way that is understood but not accepted: what to write instead."""

import re
from datetime import date

_DAY = re.compile(r"([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})")
_SPREAD = re.compile(
    r"(?P<number>-?[0-9]+(?:\.[0-9]+)?)\s*(?:±|\+/-|\+-)\s*(?P<spread>[0-9]+(?:\.[0-9]+)?)\D*"
)
_CIRCA = re.compile(
    r"(?:~|≈|about|circa|ca\.?|approx\.?|under|over|up to|<=?|>=?)\s*(?P<number>(?P<leading>[0-9]+).*)", re.I
)
_RANGE = re.compile(r"[0-9]+(?:\.[0-9]+)?\s*(?:-|–|to)\s*[0-9]+(?:\.[0-9]+)?\D*")
_MONEY = re.compile(
    r"(?:[€$£¥]|[A-Z]{3})\s*(?P<before>[0-9][0-9.,' ]*)|(?P<after>[0-9][0-9.,' ]*?)\s*(?:[€$£¥]|[A-Z]{3})"
)
_UNIT = re.compile(r"(?P<number>[-+−]?[0-9][0-9.,']*?)\s*(?P<unit>[A-Za-zµ°%Ω][A-Za-zµ°%Ω·/ ]{0,11})")
_NO_KEYS_UNITS = frozenset(
    ("in", "inch", "inches", "ft", "oz", "lb", "lbs", "st", "cm", "min", "minutes", "weeks", "months")
)
"""Units that end no key: their bare number would be another figure."""
_GROUPED = re.compile(
    r"-?[0-9]{1,3}(?:(?P<group>[,.'\s])[0-9]{3})(?:(?P=group)[0-9]{3})*(?:[.,](?P<rest>[0-9]+))?"
)
_PLAIN = re.compile(r"-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?")


def number_tip(text: str) -> str:
    """What to write in place of a text where a number is wanted, or "" where nobody can tell.

    >>> number_tip("899,00")
    'write 899.00'
    >>> number_tip("12 g")
    'write 12: the unit stands in the key'
    """
    text = text.strip()[:80]
    if _PLAIN.fullmatch(text):
        return f"take the quotes away: {text}"
    if found := _SPREAD.fullmatch(text):
        number, spread = _tidy(found["number"]), _tidy(found["spread"])
        return f"write {number}, and {spread} under the key for the plus-minus"
    if _RANGE.fullmatch(text):
        return "write the middle of the range, and half its width under the key for the plus-minus"
    if found := _CIRCA.fullmatch(text):
        number = _number(found["number"]) or _tidy(found["leading"])
        return f"write {number}: how sure it is stands in a key of its own"
    if found := _MONEY.fullmatch(text):
        number = _number((found["before"] or found["after"]).strip())
        return f"write {number}: the currency stands in a key of its own" if number else ""
    if found := _UNIT.fullmatch(text):
        number = _number(found["number"])
        if number and found["unit"].strip().lower() in _NO_KEYS_UNITS:
            return "write it converted to the unit in the key"
        return f"write {number}: the unit stands in the key" if number else ""
    number = _number(text)
    return f"write {number}" if number else ""


def day_tip(text: str) -> str:
    """What to write in place of a text where a day is wanted.

    >>> day_tip("2025-3-1")
    'write 2025-03-01'
    """
    found = _DAY.fullmatch(text.strip())
    if found:
        try:
            day = date(int(found[1]), int(found[2]), int(found[3])).isoformat()
        except ValueError:
            return "no such day is in the calendar"
        return f"take the quotes away: {day}" if day == text else f"write {day}"
    return "write it as YYYY-MM-DD" if re.search(r"[0-9]", text) else ""


def _number(text: str) -> str:
    """The number as it has to be written, both where it can be either, or "" where it is none."""
    text = text.replace("−", "-").removeprefix("+")
    if _PLAIN.fullmatch(text):
        return text
    if re.fullmatch(r"-?[0-9]{1,3},[0-9]{3}", text):
        whole, fraction = text.split(",")
        return f"{_tidy(whole + fraction)} for thousands or {_tidy(whole)}.{fraction} for a decimal"
    if found := _GROUPED.fullmatch(text):
        rest = found["rest"]
        whole = text[: -len(rest) - 1] if rest else text
        return _tidy(re.sub(r"[^0-9-]", "", whole) + (f".{rest}" if rest else ""))
    if re.fullmatch(r"-?[0-9]+,[0-9]+", text):
        return _tidy(text.replace(",", "."))
    return _tidy(text) if re.fullmatch(r"-?[0-9]+(\.[0-9]*)?|-?\.[0-9]+", text) else ""


def _tidy(text: str) -> str:
    sign, digits = ("-", text[1:]) if text.startswith("-") else ("", text)
    whole, _, fraction = digits.partition(".")
    return sign + (whole.lstrip("0") or "0") + (f".{fraction}" if fraction else "")
