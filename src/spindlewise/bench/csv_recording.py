"""A recording out of a CSV file with described columns, or what is wrong with the file and where."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

import numpy as np

from spindlewise.bench.csv_columns import Column, CsvColumns
from spindlewise.bench.csv_times import times_of
from spindlewise.bench.file_bytes import read_bytes, sha256_of
from spindlewise.bench.finished import Rows, finish
from spindlewise.bench.recording import FloatArray, Recording
from spindlewise.problems import Place, Problem, nearest, quoted

SPELT_OUT = 3
"""Faults of one kind in one column that are placed one by one; the rest are counted."""


@dataclass(slots=True)
class _Table:
    """The rows that have all fields: what is in them, in which line each stands, and what was found wrong."""

    shown: str
    columns: CsvColumns
    positions: dict[str, int] = field(default_factory=dict)
    rows: list[list[str]] = field(default_factory=list)
    lines: list[int] | range = range(0)
    problems: list[Problem] = field(default_factory=list)

    def say(self, line: int, rule: str, message: str, tip: str = "", at: int = 1) -> None:
        self.problems.append(Problem(Place(self.shown, line, at), "error", rule, message, tip))

    def warn(self, line: int, rule: str, message: str, tip: str = "", at: int = 1) -> None:
        self.problems.append(Problem(Place(self.shown, line, at), "warning", rule, message, tip))


def read_csv_recording(
    path: Path, shown: str, name: str, columns: CsvColumns, day: date | None = None
) -> tuple[Recording | None, list[Problem]]:
    """The recording in the file and the problems with it; None where there is nothing to compare.

    `day` gives times of day their start. Never raises for what is in the file: a value that cannot be read
    is left out (NaN), a row without a time or with too few fields is left out, and both are said.
    """
    raw, problems = read_bytes(path, shown)
    if raw is None:
        return None, problems
    return csv_recording(raw, shown, name, columns, day)


def csv_recording(
    raw: bytes, shown: str, name: str, columns: CsvColumns, day: date | None = None
) -> tuple[Recording | None, list[Problem]]:
    """The same for the bytes of a file."""
    table = _Table(shown, columns)
    text = _text(raw, table)
    if text is None or not _split(text, table):
        return None, table.problems
    texts = {what: _column(table, what) for what in table.positions}
    written = columns.time.written_as
    time_texts = [text.strip() for text in texts["time"]]
    if columns.decimal == "," and written != "ISO timestamps":
        time_texts = [text.replace(",", ".") for text in time_texts]
    times_s, started_at, bad = times_of(time_texts, written, day)
    _say_values(table, "time", bad, f"is no time written as {written}")
    numbers = {what: _numbers(table, what, texts[what]) for what in texts if what not in ("time", "lap")}
    rows = Rows(
        times_s=times_s,
        power_w=_power(columns, numbers),
        cadence_rpm=numbers.get("cadence"),
        left_share=_left_share(columns, numbers),
        altitude_m=numbers.get("altitude"),
        lap_begins=_lap_begins(texts.get("lap")),
    )
    return finish(rows, name, started_at, shown, sha256_of(raw), table.problems, table.lines)


def _text(raw: bytes, table: _Table) -> str | None:
    if raw[8:12] == b".FIT":
        table.say(1, "recording-foreign", "is a FIT file, not CSV", "write format: FIT for it")
        return None
    encoding = {"utf-8": "utf-8-sig"}.get(table.columns.encoding, table.columns.encoding)
    try:
        text = raw.decode(encoding)
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        told = f"is not text in {table.columns.encoding} (byte 0x{raw[error.start]:02X})"
        table.say(line, "recording-not-text", told, "name the encoding: utf-8, cp1252 or utf-16")
        return None
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        table.say(line, "recording-not-text", "holds NUL bytes: it is no CSV file, or a damaged one")
        return None
    return text


def _split(text: str, table: _Table) -> bool:
    columns = table.columns
    lines = text.split("\n", columns.skip_lines)
    if len(lines) <= columns.skip_lines or not lines[-1].strip():
        table.say(1, "recording-empty", "holds no rows", "check skip_lines, and whether the file is whole")
        return False
    body = lines[-1]
    reader = csv.reader(io.StringIO(body, newline=""), delimiter=columns.mark)
    try:
        rows = list(reader)
    except csv.Error as error:
        line = columns.skip_lines + reader.line_num
        table.say(line, "recording-not-csv", f"cannot be split into fields: {error}")
        return False
    if reader.line_num != len(rows):
        told = "a field in quotes runs over the end of a line"
        first = next(i for i, row in enumerate(rows) if any("\n" in f or "\r" in f for f in row))
        table.say(columns.skip_lines + first + 1, "recording-not-csv", told, "close the quote")
        return False
    first_line = columns.skip_lines + 1
    header = rows.pop(0) if columns.header else []
    table.positions = _positions(table, header, rows, first_line)
    if not table.positions:
        return False
    _keep_whole_rows(table, rows, first_line + columns.header, len(header), body.endswith("\n"))
    return True


def _positions(table: _Table, header: list[str], rows: list[list[str]], line: int) -> dict[str, int]:
    """Where each described column stands; nothing where one of them is not there, which is said."""
    names = [name.strip() for name in header]
    width = len(names) or max(map(len, rows))
    found: dict[str, int] = {}
    for what, column in table.columns.named().items():
        if isinstance(column, int):
            if column > width:
                told = f"has {width} columns; {what} is to be in column {column}"
                table.say(line, "recording-column", told, "count again, from 1")
            found[what] = column - 1
        elif names.count(column) == 1:
            found[what] = names.index(column)
        else:
            _say_column(table, what, column, names, line)
    return {} if table.problems else found


def _say_column(table: _Table, what: str, column: Column, names: list[str], line: int) -> None:
    wanted = quoted(str(column))
    if column in names:
        told = f"has {names.count(str(column))} columns {wanted}; which of them is {what} cannot be told"
        table.say(line, "recording-column", told, "give the column's position instead, from 1")
        return
    near = nearest(str(column), names)
    tip = f"did you mean {quoted(near)}?" if near else ""
    if len(names) == 1:
        tip = "the header is one single field: name the file's real delimiter"
    table.say(line, "recording-column", f"has no column {wanted} for {what}", tip)


def _keep_whole_rows(
    table: _Table, rows: list[list[str]], first_line: int, header_width: int, ended: bool
) -> None:
    needed = max(table.positions.values()) + 1
    width = header_width or needed
    whole = [width <= len(row) for row in rows]
    if all(whole):
        table.rows, table.lines = rows, range(first_line, first_line + len(rows))
        return
    table.lines = [first_line + i for i, keep in enumerate(whole) if keep]
    table.rows = [row for row, keep in zip(rows, whole, strict=True) if keep]
    short = [i for i, row in enumerate(rows) if row and not whole[i]]
    if short and short[-1] == len(rows) - 1 and not ended:
        last = short.pop()
        told = f"breaks off in the middle of a row, after {len(rows[last])} of {width} fields"
        table.warn(
            first_line + last, "recording-truncated", told, "copy the file again if there is more of it"
        )
    for i in short[:SPELT_OUT]:
        told = f"the row has {len(rows[i])} fields, not {width}; it is left out"
        table.warn(first_line + i, "recording-row", told)
    if len(short) > SPELT_OUT:
        told = f"{len(short) - SPELT_OUT} more rows have too few fields and are left out"
        table.warn(first_line + short[SPELT_OUT], "recording-row", told)


def _column(table: _Table, what: str) -> list[str]:
    position = table.positions[what]
    return [row[position] for row in table.rows]


def _numbers(table: _Table, what: str, texts: list[str]) -> FloatArray:
    """The column as numbers: at once where every text is one, else one by one."""
    missing = table.columns.missing
    comma = table.columns.decimal == ","
    if comma:
        texts = [text.replace(".", "?").replace(",", ".") for text in texts]
    together = "".join(texts)
    if "" in missing and together.isascii() and "_" not in together:
        try:
            values = np.array([float(text) if text else np.nan for text in texts], dtype=np.float64)
        except ValueError:
            values = np.empty(0)
        if np.isfinite(values).sum() == len(texts) - texts.count(""):
            return values
    slow = [_number_or_bad(text, missing) for text in texts]
    _say_values(table, what, [i for i, value in enumerate(slow) if value is None], "is no number")
    return np.array(slow, dtype=np.float64)


def _number_or_bad(text: str, missing: Sequence[str]) -> float | None:
    """A number, NaN for what stands for a missing value, None for anything else."""
    bare = text.strip()
    if bare.casefold() in missing:
        return float("nan")
    try:
        value = float(bare) if bare.isascii() and "_" not in bare else float("inf")
    except ValueError:
        return None
    return value if abs(value) < float("inf") else None


def _say_values(table: _Table, what: str, bad: list[int], why: str) -> None:
    position = table.positions[what]
    for i in bad[:SPELT_OUT]:
        row = table.rows[i]
        at = sum(len(text) + 1 for text in row[:position]) + 1
        told = f"{what.replace('_', ' ')}: {quoted(row[position], 30)} {why}; it is left out"
        table.warn(table.lines[i], "recording-value", told, at=at)
    if len(bad) > SPELT_OUT:
        told = f"{what.replace('_', ' ')}: {len(bad) - SPELT_OUT} more values cannot be read and are left out"
        table.warn(table.lines[bad[SPELT_OUT]], "recording-value", told)


def _power(columns: CsvColumns, numbers: dict[str, FloatArray]) -> FloatArray:
    if "power" in numbers:
        return numbers["power"]
    sides = [numbers[what] for what in ("left_power", "right_power") if what in numbers]
    return 2.0 * sides[0] if columns.double_one_side else sides[0] + sides[1]


def _left_share(columns: CsvColumns, numbers: dict[str, FloatArray]) -> FloatArray | None:
    if columns.balance is not None:
        stated: FloatArray = numbers["balance"] / (100.0 if "percent" in columns.balance.written_as else 1.0)
        return stated if "left" in columns.balance.written_as else np.subtract(1.0, stated)
    if "left_power" not in numbers or "right_power" not in numbers:
        return None
    both = numbers["left_power"] + numbers["right_power"]
    share: FloatArray = np.full(len(both), np.nan)
    return np.divide(numbers["left_power"], both, out=share, where=both > 0)


def _lap_begins(texts: list[str] | None) -> list[int]:
    if texts is None:
        return []
    return [i for i in range(1, len(texts)) if texts[i] != texts[i - 1]]
