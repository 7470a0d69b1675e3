"""Strict CSV with places: every field keeps its line and column, every problem of the file is reported.

The format is RFC 4180 with a header, one record a line: no field of these files runs over a line's end, so a
line that was torn by a crash spoils itself only. Line feeds and CRLF both end a line, and a byte order mark
at the beginning is accepted, as neither says anything about the data.
"""

import codecs
import io
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from spindlewise.problems import Place, Problem, quoted

LONGEST_LINE = 4000
"""Characters; a longer line is not a row of these files."""
LARGEST_BYTES = 128 * 1024 * 1024
"""One file is at most 128 MiB: a price log of a million lines has 90."""

MOST_TOLD = 1000
"""Lines that are wrong, in one file; a file of nothing but such lines would fill the memory with them."""

_FIELD = re.compile(r'(?:"([^"]*(?:""[^"]*)*)"|([^",]*))(?=,|\Z)')
_OPENED = re.compile(r'"[^"]*(?:""[^"]*)*')


@dataclass(frozen=True, slots=True)
class Row:
    """One record: where it stands, its fields, and the line as it is written."""

    file: str
    line: int
    fields: tuple[str, ...]
    text: str

    def place(self, index: int) -> Place:
        """Where a field begins, its quote included, counted in characters from 1."""
        return Place(self.file, self.line, split_line(self.text)[0][index][0] + 1)


def read_rows(path: Path, shown: str, header: Sequence[str]) -> tuple[list[Row], list[Problem]]:
    """The file's records below its header, and what is wrong with its lines; never raises for bad data."""
    raw, problems = read_raw(path, shown, f"begin it with the line {','.join(header)}")
    return ([], problems) if raw is None else rows_of(raw, shown, header)


def read_raw(path: Path, shown: str, tip: str) -> tuple[bytes | None, list[Problem]]:
    """The file's bytes, or None and why they were not read; `tip` says what a file that is missing needs."""
    start = Place(shown, 1, 1)
    try:
        if not path.is_file():
            if path.exists():
                return None, [Problem(start, "error", "unreadable-file", "is not a file")]
            return None, [Problem(start, "error", "missing-file", "is not there", tip)]
        if path.stat().st_size > LARGEST_BYTES:
            told = f"is larger than {LARGEST_BYTES // 1024**2} MiB"
            return None, [Problem(start, "error", "file-too-large", told, "split it")]
        return path.read_bytes(), []
    except OSError as error:
        return None, [Problem(start, "error", "unreadable-file", f"cannot be read: {error.strerror}")]


def rows_of(raw: bytes, shown: str, header: Sequence[str]) -> tuple[list[Row], list[Problem]]:
    """The same for the bytes of a file; a last line without its end is torn, and only that is said of it."""
    problems: list[Problem] = []
    return list(each_row(raw, shown, header, problems)), problems


def each_row(raw: bytes, shown: str, header: Sequence[str], problems: list[Problem]) -> Iterator[Row]:
    """The same row by row, for files that are gone through once; what is wrong is added to `problems`."""
    raw = raw.removeprefix(codecs.BOM_UTF8)
    if not raw:
        tip = f"begin it with the line {','.join(header)}"
        problems.append(Problem(Place(shown, 1, 1), "error", "empty-file", "is empty", tip))
        return
    if not raw.endswith(b"\n"):
        tip = "complete or remove it; `spindlewise price repair` removes it from a price log"
        place = Place(shown, raw.count(b"\n") + 1, 1)
        problems.append(Problem(place, "error", "torn-line", "the last line has no end", tip))
    for number, line in enumerate(io.BytesIO(raw), start=1):
        if not line.endswith(b"\n"):
            return
        row = _row(line[:-1], shown, number, problems)
        if number == 1:
            if row is None or row.fields != tuple(header):
                problems += _wrong_header(row, shown, header)
                return
        elif row is not None and len(row.fields) == len(header):
            yield row
        elif row is not None:
            problems.append(_wrong_count(row, header))
        if len(problems) > MOST_TOLD:
            problems.append(too_many(shown, number))
            return


def too_many(shown: str, line: int) -> Problem:
    """The last word on a file with more wrong lines than anybody reads: the rest of it is not read either."""
    tip = "put the first ones right, then check again"
    told = f"more than {MOST_TOLD} lines of this file are wrong; it was not read any further"
    return Problem(Place(shown, line, 1), "error", "too-many-problems", told, tip)


def split_line(line: str) -> tuple[list[tuple[int, str]], int | None]:
    """The line's fields, each with the index of its first character, and the index of a quote that is wrong.

    >>> split_line('a,"b ""c"" d",')
    ([(0, 'a'), (2, 'b "c" d'), (14, '')], None)
    >>> split_line('a,b"c')
    ([(0, 'a')], 3)
    """
    fields: list[tuple[int, str]] = []
    at = 0
    while found := _FIELD.match(line, at):
        inside = found.group(1)
        fields.append((at, found.group(2) if inside is None else inside.replace('""', '"')))
        if found.end() == len(line):
            return fields, None
        at = found.end() + 1
    opened = _OPENED.match(line, at)
    if opened is None:
        return fields, line.index('"', at)
    return fields, opened.end() if opened.end() < len(line) else at


def _row(raw: bytes, shown: str, number: int, problems: list[Problem]) -> Row | None:
    raw = raw.removesuffix(b"\r")

    def wrong(at: int, rule: str, message: str, tip: str = "") -> None:
        problems.append(Problem(Place(shown, number, at + 1), "error", rule, message, tip))

    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as error:
        at = len(raw[: error.start].decode("utf-8"))
        wrong(at, "not-utf8", f"the byte 0x{raw[error.start]:02X} is not UTF-8", "save the file as UTF-8")
        return None
    if not text:
        wrong(0, "empty-line", "the line is empty", "take it out")
        return None
    if len(text) > LONGEST_LINE:
        wrong(0, "long-line", f"the line is {len(text)} characters long, {LONGEST_LINE} at most")
        return None
    if not text.isprintable():
        at = next(i for i, c in enumerate(text) if not c.isprintable())
        told = f"a character that cannot be seen (U+{ord(text[at]):04X})"
        wrong(at, "invisible-character", told, "write visible characters and plain spaces")
        return None
    fields, fault = split_line(text) if '"' in text else ([(0, field) for field in text.split(",")], None)
    if fault is not None:
        wrong(
            fault,
            "csv-quoting",
            "a quote that opens or closes no field",
            'put the whole field in quotes, and write each quote in it twice: "a ""b"" c"',
        )
        return None
    return Row(shown, number, tuple(field for _, field in fields), text)


def _wrong_header(row: Row | None, shown: str, header: Sequence[str]) -> list[Problem]:
    if row is None:
        return []
    tip = f"write {','.join(header)}"
    if row.fields == (";".join(header),):
        tip = "part the fields by commas, in every line"
    message = f"the header is {quoted(row.text, 120)}"
    return [Problem(Place(shown, 1, 1), "error", "csv-header", message, tip)]


def _wrong_count(row: Row, header: Sequence[str]) -> Problem:
    count = len(row.fields)
    message = f"{count} field{'' if count == 1 else 's'}, {len(header)} are needed: {','.join(header)}"
    tip = "put a field that holds a comma in quotes" if count > len(header) else "leave no field out"
    return Problem(Place(row.file, row.line, 1), "error", "field-count", message, tip)
