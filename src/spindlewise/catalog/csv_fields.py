"""Typed fields of one CSV record: each that is wrong becomes a problem at its own place."""

import re
from collections.abc import Sequence
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from typing import TypeVar

from spindlewise.catalog.csv_text import Row
from spindlewise.problems import RESERVED_FILE_NAMES, Level, Problem, nearest, quoted
from spindlewise.units import currency_codes, minor_digits

MOST_DIGITS = 15
"""A number with more is a slip, not a price."""

W = TypeVar("W", bound=str)
_PLAIN = re.compile(r"(?:0|[1-9][0-9]*)(?:\.[0-9]+)?")
_DECIMAL_COMMA = re.compile(r"[0-9]+,[0-9]{1,2}")
_COMMA_GROUPS = re.compile(r"[0-9]{1,3}(?:(?:,[0-9]{3})+\.[0-9]+|(?:,[0-9]{3}){2,})")
_POINT_GROUPS = re.compile(r"[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+")
_IDENTIFIER = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


class FieldReader:
    """Reads the typed fields of one row by name; a wrong one gives None and adds to `problems`."""

    def __init__(self, row: Row, header: Sequence[str], problems: list[Problem]) -> None:
        """`header` names the row's fields in their order; `problems` collects what is wrong."""
        self._row = row
        self._header = header
        self._problems = problems
        self._problems_before = len(problems)

    @property
    def faultless(self) -> bool:
        """Whether nothing was wrong with this row so far."""
        return len(self._problems) == self._problems_before

    def wrong(self, name: str, rule: str, message: str, tip: str = "", level: Level = "error") -> None:
        """Note a problem with a field."""
        place = self._row.place(self._header.index(name))
        self._problems.append(Problem(place, level, rule, f"{name}: {message}", tip, name))

    def text(self, name: str, longest: int = 300) -> str | None:
        """A field of plain text that may not be empty."""
        text = self._at(name)
        if not text.strip():
            self.wrong(name, "empty-field", "is empty", "write a value")
        elif text != text.strip():
            self.wrong(name, "stray-space", f"found {quoted(text)}", "take the space at its end away")
        elif len(text) > longest:
            self.wrong(name, "long-field", f"is {len(text)} characters long, {longest} at most")
        else:
            return text
        return None

    def identifier(self, name: str) -> str | None:
        """A product's id: it may become a file name, so nothing that leads elsewhere can be one."""
        text = self.text(name, 60)
        if text is None:
            return None
        if _IDENTIFIER.fullmatch(text) and text not in RESERVED_FILE_NAMES:
            return text
        tip = "write lower-case letters, digits and single hyphens, for instance my-pedal"
        self.wrong(name, "bad-id", f"found {quoted(text)}, which cannot be a product's id", tip)
        return None

    def word(self, name: str, allowed: Sequence[W]) -> W | None:
        """One of a few words."""
        text = self._at(name)
        for word in allowed:
            if text == word:
                return word
        choice = ", ".join(allowed)
        guess = nearest(text, allowed)
        tip = f"did you mean {guess}?" if guess else f"write one of: {choice}"
        self.wrong(name, "unknown-word", f"found {quoted(text)}; allowed: {choice}", tip)
        return None

    def day(self, name: str, may_be_empty: bool = False) -> date | None:
        """A day as YYYY-MM-DD."""
        text = self._at(name)
        if may_be_empty and not text:
            return None
        if not _DAY.fullmatch(text):
            tip = "write the day as YYYY-MM-DD, for instance 2026-11-18"
            self.wrong(name, "bad-date", f"found {quoted(text)}, which is no date", tip)
            return None
        try:
            return date.fromisoformat(text)
        except ValueError:
            self.wrong(name, "impossible-date", f"there is no day {text}", "correct the month or the day")
            return None

    def decimal(self, name: str, zero_allowed: bool = False) -> Decimal | None:
        """A plain decimal number above zero: digits, at most one point, no sign, no exponent."""
        found = self.signed_decimal(name)
        if found is None:
            return None
        text = self._at(name)
        if text.startswith("-") or (found == 0 and not zero_allowed):
            bound = "0 or more" if zero_allowed else "more than 0"
            self.wrong(name, "not-positive", f"found {text}", f"write {bound}; unknown is no row at all")
            return None
        return found

    def signed_decimal(self, name: str) -> Decimal | None:
        """A plain decimal number of either sign: digits, at most one point, no exponent."""
        text = self._at(name)
        if not _PLAIN.fullmatch(text.removeprefix("-")):
            told = f"found {quoted(text)}, which is not a plain number"
            self.wrong(name, "bad-number", told, _plain_number_tip(text))
        elif len(text) > MOST_DIGITS:
            told = f"found {quoted(text)}, {len(text)} characters long"
            self.wrong(name, "long-number", told, f"write {MOST_DIGITS} at most")
        else:
            return Decimal(text)
        return None

    def currency(self, name: str) -> str | None:
        """An ISO 4217 code of a currency in circulation."""
        text = self._at(name)
        if text in currency_codes():
            return text
        guess = nearest(text, currency_codes())
        tip = f"did you mean {guess}?" if guess else "write an ISO 4217 code such as EUR"
        self.wrong(
            name, "unknown-currency", f"found {quoted(text)}, which is no currency in circulation", tip
        )
        return None

    def amount(self, name: str, currency: str | None) -> Decimal | None:
        """An amount of money, above zero, in the currency's minor units (two decimals for EUR)."""
        value = self.decimal(name)
        if value is None or currency is None:
            return None
        digits = minor_digits(currency)
        rounded = value.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)
        if len(self._at(name).partition(".")[2]) > digits:
            told = f"found {self._at(name)}, but {currency} has {digits or 'no'} decimals"
            self.wrong(name, "minor-unit", told, f"write {rounded:f}")
            return None
        return rounded

    def _at(self, name: str) -> str:
        return self._row.fields[self._header.index(name)]


def _plain_number_tip(text: str) -> str:
    if _DECIMAL_COMMA.fullmatch(text):
        return f"write {text.replace(',', '.')}"
    if _COMMA_GROUPS.fullmatch(text):
        return f"write {text.replace(',', '')}"
    if _POINT_GROUPS.fullmatch(text):
        return f"write {text.replace('.', '').replace(',', '.')}"
    return "write digits and a point, for instance 899.00"
