"""A long price log read column by column, for logs of which every line is plainly right.

The strict reader looks at each field of each line, and a log of a million lines makes one wait. Here each
distinct piece of text goes to the strict reader once. Whatever is not plainly right is left to that reader
altogether, which says what is wrong and where; so both read the same, or this one reads nothing.
"""

import codecs
from collections.abc import Callable
from typing import Any, TypeVar

import numpy as np

from spindlewise.catalog.column_cutting import (
    QUOTED_COMMA,
    SPACE,
    field_ends,
    line_starts,
    plain_amounts,
    unquoted,
    visible,
)
from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_text import LONGEST_LINE, Row, split_line
from spindlewise.catalog.price_columns import NO_DAY, PriceColumns
from spindlewise.catalog.price_row import HEADER, KINDS, TAXES, Kind, Tax
from spindlewise.catalog.text_numbers import PADDING, Codes, Ints, TextNumbers
from spindlewise.problems import Problem
from spindlewise.units import minor_digits

CHUNK_BYTES = 1 << 20
"""So much is worked on at once: it stays in the processor's cache."""
LONGEST_SOURCE_BYTES = 300
"""As many characters as the strict reader allows; more bytes than that are its to count."""
FIRST_LINE = ",".join(HEADER).encode() + b"\n"
SOURCE = len(HEADER) - 1

T = TypeVar("T")


def plain_text(raw: bytes) -> bytes:
    """The file's text as its lines say it: without a byte order mark, each line ended by a line feed."""
    text = raw.removeprefix(codecs.BOM_UTF8)
    return text.replace(b"\r\n", b"\n") if b"\r" in text else text


def read_columns(text: bytes) -> PriceColumns | None:
    """All lines of a log below its header, or None where anything is not plainly right."""
    if not text.startswith(FIRST_LINE) or not text.endswith(b"\n"):
        return None
    reading, at = _Reading(), len(FIRST_LINE)
    while at < len(text):
        end = text.rfind(b"\n", at, at + CHUNK_BYTES) + 1
        if not end or not reading.take(text[at:end], at):
            return None
        at = end
    columns = reading.columns()
    return None if columns is None or _repeats(columns, text) else columns


def fields_of(line: bytes) -> tuple[str, ...]:
    """The fields of a line that is known to be right."""
    text = line.decode()
    return tuple(field for _, field in split_line(text)[0]) if '"' in text else tuple(text.split(","))


def last_field(line: bytes) -> str:
    """The source of a line that is known to be right."""
    return fields_of(line)[-1] if b'"' in line else line[line.rindex(b",") + 1 :].decode()


def line_at(text: bytes, start: int) -> bytes:
    """The line that begins there."""
    return text[start : text.index(b"\n", start)]


class _Reading:
    """What was found chunk by chunk: numbers by line, and distinct days, heads and tails of lines.

    A head is product, region and currency; a tail is tax, kind, seller and the last day.
    """

    def __init__(self) -> None:
        self._days, self._heads, self._tails = TextNumbers(), TextNumbers(), TextNumbers()
        self._parts: list[tuple[Any, ...]] = []

    def take(self, chunk: bytes, at: int) -> bool:
        """Read these whole lines, which begin at byte `at` of the text; False where anything is not plain."""
        starts = line_starts(chunk)
        if int(np.diff(starts).max()) > LONGEST_LINE or not visible(chunk, len(starts) - 1):
            return False
        if b'"' in chunk:
            cut = unquoted(chunk)
            if cut is None:
                return False
            chunk = cut
        padded = chunk + PADDING
        letters = np.frombuffer(padded, np.uint8)
        ends = field_ends(letters[: len(chunk)])
        if ends is None:
            return False
        begins = np.empty_like(ends)
        begins[:, 1:] = ends[:, :-1] + 1
        begins[0, 0], begins[1:, 0] = 0, ends[:-1, -1] + 1
        days = self._days.number(padded, begins[:, 0], ends[:, 0])
        heads = self._heads.number(padded, begins[:, 1], ends[:, 3])
        tails = self._tails.number(padded, begins[:, 5], ends[:, 8])
        amounts = plain_amounts(letters, begins[:, 4], ends[:, 4])
        if days is None or heads is None or tails is None or amounts is None:
            return False
        first, last = begins[:, SOURCE], ends[:, SOURCE]
        length = last - first
        if int(length.min()) < 1 or int(length.max()) > LONGEST_SOURCE_BYTES:
            return False
        if (letters[first] == SPACE).any() or (letters[last - 1] == SPACE).any():
            return False
        self._parts.append(((starts[:-1] + at).astype(np.uint32), days, heads, tails, *amounts))
        return True

    def columns(self) -> PriceColumns | None:
        """The columns, if every distinct day, head and tail is right and no line contradicts itself."""
        days = _read_each(self._days, _read_day)
        heads = _read_each(self._heads, _read_head)
        tails = _read_each(self._tails, _read_tail)
        if days is None or heads is None or tails is None:
            return None
        if not self._parts:
            empty = np.zeros(0, np.int32)
            return PriceColumns(np.zeros(0, np.uint32), empty, empty, empty, np.zeros(0, np.int64), ())
        parts = zip(*self._parts, strict=True)
        starts, day, head, tail, whole, decimals = (np.concatenate(part) for part in parts)
        day = np.array(days, np.int32)[day]
        until = np.array([last for *_, last in tails], np.int32)[tail]
        digits = np.array([minor_digits(currency) for *_, currency in heads], np.int64)[head]
        if ((until != NO_DAY) & (until < day)).any() or (decimals > digits).any():
            return None
        # an offer is the same whatever its last day
        alike = _numbers([parts[:3] for parts in tails])
        offered = np.array(alike, np.int64)[tail]
        both = head.astype(np.int64) * len(tails) + offered
        distinct, offer = _compressed(both, len(heads) * len(tails))
        offers = []
        for number in distinct.tolist():
            product, region, currency = heads[number // len(tails)]
            tax, kind, seller, _ = tails[number % len(tails)]
            offers.append((product, region, seller, kind, currency, tax))
        return PriceColumns(starts, day, until, offer, whole * 10 ** (digits - decimals), tuple(offers))


def _read_each(numbers: TextNumbers, read: Callable[[tuple[str, ...]], T | None]) -> list[T] | None:
    """Each distinct piece, read once by the strict reader's rules; None where one of them is wrong."""
    found = []
    for piece in numbers.texts:
        fields = tuple(field.replace(QUOTED_COMMA, ",") for field in piece.decode().split(","))
        one = read(fields)
        if one is None:
            return None
        found.append(one)
    return found


def _reader(fields: tuple[str, ...], names: tuple[str, ...]) -> tuple[FieldReader, list[Problem]]:
    problems: list[Problem] = []
    return FieldReader(Row("", 1, fields, ",".join(fields)), names, problems), problems


def _read_day(fields: tuple[str, ...]) -> int | None:
    day = _reader(fields, HEADER[:1])[0].day("date")
    return None if day is None else day.toordinal()


def _read_head(fields: tuple[str, ...]) -> tuple[str, str, str] | None:
    reader, problems = _reader(fields, HEADER[1:4])
    product, region, currency = (
        reader.text("product", 60),
        reader.text("region", 8),
        reader.currency("currency"),
    )
    return None if problems or not (product and region and currency) else (product, region, currency)


def _read_tail(fields: tuple[str, ...]) -> tuple[Tax, Kind, str, int] | None:
    reader, problems = _reader(fields, HEADER[5:9])
    tax, kind, seller = reader.word("tax", TAXES), reader.word("kind", KINDS), reader.text("seller", 120)
    until = reader.day("valid_until", may_be_empty=True)
    if problems or not (tax and kind and seller) or (kind == "offer" and until is None):
        return None
    return tax, kind, seller, NO_DAY if until is None else until.toordinal()


def _numbers(things: list[Any]) -> list[int]:
    """For each thing the index of the first that is equal to it."""
    first: dict[Any, int] = {}
    return [first.setdefault(thing, number) for number, thing in enumerate(things)]


def _compressed(numbers: Ints, below: int) -> tuple[Ints, Codes]:
    """The distinct ones of these numbers in order, and for each its index among them."""
    if below > 4 * len(numbers):
        distinct, which = np.unique(numbers, return_inverse=True)
        return distinct, which.astype(np.int32)
    there = np.bincount(numbers, minlength=below) > 0
    return np.flatnonzero(there), (np.cumsum(there) - 1).astype(np.int32)[numbers]


def _repeats(columns: PriceColumns, text: bytes) -> bool:
    """Whether a line says the same as another, field by field."""
    alike = columns.likeness()
    ordered = np.argsort(alike, kind="stable")
    twins = np.flatnonzero(alike[ordered[1:]] == alike[ordered[:-1]])
    suspects = np.unique(np.concatenate([ordered[twins], ordered[twins + 1]])).tolist()
    lines = {fields_of(line_at(text, start)) for start in columns.starts[suspects].tolist()}
    return len(lines) < len(suspects)
