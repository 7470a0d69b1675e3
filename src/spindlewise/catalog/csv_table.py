"""A table of the bench: required columns in their order, then any of the optional ones."""

import codecs
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from spindlewise.catalog.csv_text import Row, read_raw, rows_of
from spindlewise.problems import Place, Problem, nearest, quoted


@dataclass(frozen=True, slots=True)
class Table:
    """The columns that the file has, in its order, and its rows."""

    header: tuple[str, ...]
    rows: tuple[Row, ...]


def read_table(
    path: Path, shown: str, required: Sequence[str], optional: Sequence[str]
) -> tuple[Table | None, list[Problem]]:
    """The table in the file, or None where its header is not one; and all that is wrong with its lines.

    A last line without its end counts: people type these files, no program appends to them.
    """
    raw, problems = read_raw(path, shown, f"begin it with the line {','.join(required)}")
    return (None, problems) if raw is None else table_of(raw, shown, required, optional)


def table_of(
    raw: bytes, shown: str, required: Sequence[str], optional: Sequence[str]
) -> tuple[Table | None, list[Problem]]:
    """The same for the bytes of a file.

    >>> raw = b"date,reading_g,tare_g\\n2026-03-12,404,\\n"
    >>> table, _ = table_of(raw, "weighings.csv", ["date", "reading_g"], ["tare_g"])
    >>> table.header, table.rows[0].fields
    (('date', 'reading_g', 'tare_g'), ('2026-03-12', '404', ''))
    """
    if raw and not raw.endswith(b"\n"):
        raw += b"\n"
    first = raw.removeprefix(codecs.BOM_UTF8).partition(b"\n")[0].removesuffix(b"\r")
    found = tuple(first.decode("utf-8", "replace").split(","))
    more = found[len(required) :]
    if found[: len(required)] == tuple(required):
        for name in more:
            if name not in optional or more.count(name) > 1:
                return None, [_stray_column(shown, name, first, more, optional)]
    else:
        more = ()
    header = (*required, *more)
    rows, problems = rows_of(raw, shown, header)
    refused = any(problem.rule in ("csv-header", "empty-file") for problem in problems)
    return None if refused else Table(header, tuple(rows)), problems


def _stray_column(
    shown: str, name: str, first: bytes, more: Sequence[str], optional: Sequence[str]
) -> Problem:
    near = nearest(name, optional)
    allowed = (
        f"after the required columns there may be: {', '.join(optional)}"
        if optional
        else "there are no columns after the required ones"
    )
    tip = f"did you mean {near}? {allowed}" if near and name not in optional else allowed
    told = "stands there twice" if more.count(name) > 1 else "is no column of this table"
    line = first.decode("utf-8", "replace")
    return Problem(
        Place(shown, 1, line.rindex(name) + 1 if name else len(line) + 1),
        "error",
        "csv-header",
        f"{quoted(name)} {told}",
        tip,
    )
