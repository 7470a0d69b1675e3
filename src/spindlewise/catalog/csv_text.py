"""Strict CSV with places: every field keeps its line and column, every problem of the file is reported."""

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from pathlib import Path

from spindlewise.problems import Place, Problem, nearest, quoted
from spindlewise.units import minor_digits

LONGEST_LINE = 4000
"""A longer line is not a row of these files."""


@dataclass(frozen=True, slots=True)
class Row:
    """One record: where it stands and its fields."""

    file: str
    line: int
    fields: tuple[str, ...]

    def place(self, index: int) -> Place:
        """Where a field begins, counted in characters; quotes count as our own writer writes them."""
        before = self.fields[:index]
        width = sum(len(_written(field)) + 1 for field in before)
        return Place(self.file, self.line, width + 1)


def _written(field: str) -> str:
    return '"' + field.replace('"', '""') + '"' if any(c in field for c in ',"\r\n') else field


def read_rows(path: Path, shown: str, header: Sequence[str]) -> tuple[list[Row], list[Problem]]:
    """The file's records below its header, and what is wrong with the file as a whole."""
    try:
        raw = path.read_bytes()
    except FileNotFoundError:
        tip = f"begin it with the line {','.join(header)}"
        return [], [Problem(Place(shown, 1, 1), "error", "missing-file", "is not there", tip)]
    except OSError as error:
        return [], [
            Problem(Place(shown, 1, 1), "error", "unreadable-file", f"cannot be read: {error.strerror}")
        ]
    return rows_of(raw, shown, header)


def rows_of(raw: bytes, shown: str, header: Sequence[str]) -> tuple[list[Row], list[Problem]]:
    """The same for the bytes of a file."""
    start = Place(shown, 1, 1)
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        column = error.start - (raw.rfind(b"\n", 0, error.start) + 1) + 1
        place = Place(shown, line, column)
        return [], [Problem(place, "error", "not-utf-8", "is not UTF-8 text here", "save the file as UTF-8")]
    if text.startswith("\ufeff"):
        return [], [
            Problem(start, "error", "byte-order-mark", "begins with a byte order mark", "save it without")
        ]
    if not text:
        return [], [Problem(start, "error", "empty-file", "is empty", f"begin it with {','.join(header)}")]
    problems: list[Problem] = []
    if not text.endswith("\n"):
        last = text.count("\n") + 1
        tip = "complete or remove the last line; `spindlewise price repair` removes it"
        problems.append(Problem(Place(shown, last, 1), "error", "torn-line", "the last line has no end", tip))
        text = text[: text.rfind("\n") + 1]
    rows: list[Row] = []
    for line, fields in _records(text, shown, problems):
        if line == 1:
            if tuple(fields) != tuple(header):
                problems.append(_wrong_header(shown, fields, header))
                return [], problems
        elif len(fields) != len(header):
            message = f"has {len(fields)} fields, {len(header)} are needed: {','.join(header)}"
            problems.append(
                Problem(
                    Place(shown, line, 1), "error", "field-count", message, "quote fields that hold a comma"
                )
            )
        else:
            rows.append(Row(shown, line, tuple(fields)))
    return rows, problems


def _records(text: str, shown: str, problems: list[Problem]) -> Iterator[tuple[int, list[str]]]:
    """Records one physical line at a time: no field of these files runs over a line's end."""
    for number, physical in enumerate(
        text.splitlines(keepends=False) if "\r" not in text.replace("\r\n", "") else text.split("\n"), start=1
    ):
        if physical == "":
            if number > 1:
                problems.append(
                    Problem(Place(shown, number, 1), "error", "empty-line", "is empty", "take the line out")
                )
            continue
        if len(physical) > LONGEST_LINE:
            message = f"is {len(physical)} characters long, {LONGEST_LINE} at most"
            problems.append(Problem(Place(shown, number, 1), "error", "long-line", message))
            continue
        hidden = next((i for i, c in enumerate(physical) if not c.isprintable()), None)
        if hidden is not None:
            code = f"U+{ord(physical[hidden]):04X}"
            message = f"has a character that cannot be seen ({code})"
            problems.append(
                Problem(
                    Place(shown, number, hidden + 1), "error", "hidden-character", message, "write plain text"
                )
            )
            continue
        try:
            yield number, next(csv.reader(io.StringIO(physical), strict=True))
        except csv.Error as error:
            problems.append(
                Problem(
                    Place(shown, number, 1),
                    "error",
                    "csv-quoting",
                    f"quotes do not match: {error}",
                    'write a quote inside a quoted field twice: ""',
                )
            )


def _wrong_header(shown: str, fields: Sequence[str], header: Sequence[str]) -> Problem:
    message = f"the header is {quoted(','.join(fields), 120)}"
    return Problem(Place(shown, 1, 1), "error", "csv-header", message, f"write {','.join(header)}")


class FieldReader:
    """Reads the typed fields of one row; each wrong one becomes a problem and None."""

    def __init__(self, row: Row, header: Sequence[str], problems: list[Problem]) -> None:
        """`problems` collects what is wrong."""
        self.row = row
        self.header = header
        self.problems = problems

    def _at(self, name: str) -> str:
        return self.row.fields[self.header.index(name)]

    def wrong(self, name: str, rule: str, message: str, tip: str = "", level: str = "error") -> None:
        """Note a problem with a field."""
        place = self.row.place(self.header.index(name))
        self.problems.append(
            Problem(
                place, "warning" if level == "warning" else "error", rule, f"{name}: {message}", tip, name
            )
        )

    def text(self, name: str, longest: int = 300) -> str | None:
        """A field that may not be empty."""
        text = self._at(name)
        if not text.strip():
            self.wrong(name, "empty-field", "is empty", "write a value")
            return None
        if text != text.strip():
            self.wrong(name, "stray-space", "begins or ends with a space", "take the space away")
            return None
        if len(text) > longest:
            self.wrong(name, "long-field", f"is {len(text)} characters long, {longest} at most")
            return None
        return text

    def word(self, name: str, allowed: Sequence[str]) -> str | None:
        """One of a few words."""
        text = self._at(name)
        if text in allowed:
            return text
        guess = nearest(text, allowed)
        tip = f"did you mean {guess}?" if guess else f"write one of: {', '.join(allowed)}"
        self.wrong(name, "unknown-word", f"found {quoted(text)}; allowed: {', '.join(allowed)}", tip)
        return None

    def day(self, name: str, may_be_empty: bool = False) -> date | None:
        """A date as YYYY-MM-DD."""
        text = self._at(name)
        if may_be_empty and not text:
            return None
        parts = text.split("-")
        shaped = [len(p) for p in parts] == [4, 2, 2] and all(p.isascii() and p.isdigit() for p in parts)
        if not shaped:
            self.wrong(
                name,
                "bad-date",
                f"found {quoted(text)}",
                "write the day as YYYY-MM-DD, for instance 2026-11-18",
            )
            return None
        try:
            return date(*map(int, parts))
        except ValueError:
            self.wrong(
                name, "impossible-date", f"there is no day {quoted(text)}", "correct the month or the day"
            )
            return None

    def decimal(self, name: str) -> Decimal | None:
        """A plain positive decimal number: digits, at most one point, no sign, no exponent."""
        text = self._at(name)
        whole, point, part = text.partition(".")
        digits = whole + part
        if not (digits.isascii() and digits.isdigit() and whole and (part or not point)) or len(digits) > 15:
            tip = "write digits and a point, for instance 899.00"
            if text.count(",") == 1 and text.replace(",", "").isdigit():
                tip = f"write {text.replace(',', '.')}"
            self.wrong(name, "bad-number", f"found {quoted(text)}, which is not a plain number", tip)
            return None
        value = Decimal(text)
        if value <= 0:
            self.wrong(
                name,
                "not-positive",
                f"found {text}",
                "an amount is more than 0; leave the row out if unknown",
            )
            return None
        return value

    def currency(self, name: str) -> str | None:
        """An ISO 4217 code."""
        text = self._at(name)
        try:
            minor_digits(text)
        except ValueError as error:
            message, _, tip = str(error).partition(" | ")
            self.wrong(name, "unknown-currency", message, tip)
            return None
        return text

    def amount(self, name: str, currency: str | None) -> Decimal | None:
        """An amount of money with no more decimals than its currency has."""
        value = self.decimal(name)
        if value is None or currency is None:
            return value
        digits = minor_digits(currency)
        exponent = value.as_tuple().exponent
        if isinstance(exponent, int) and -exponent > digits:
            tip = f"write {value.quantize(Decimal(1).scaleb(-digits)):f}"
            self.wrong(name, "minor-unit", f"{value:f} has more decimals than {currency} has ({digits})", tip)
            return None
        return value.quantize(Decimal(1).scaleb(-digits))
