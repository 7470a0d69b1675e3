"""One line of the battery log: fresh cells or a full charge, dead, or looked at and still running."""

from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from pathlib import Path
from typing import Literal

from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_table import read_table
from spindlewise.catalog.csv_text import Row
from spindlewise.problems import Place, Problem

Event = Literal["fresh", "empty", "still running"]
EVENTS: tuple[Event, ...] = ("fresh", "empty", "still running")
HEADER = ("date", "product", "cells", "counter_h", "event")


@dataclass(frozen=True, slots=True)
class RunRow:
    """What was seen at so many hours on the counter; `text` is the line as it stands."""

    place: Place
    date: Day
    product: str
    cells: str
    counter_h: float
    event: Event
    text: str


def read_runs(path: Path, shown: str) -> tuple[list[RunRow], list[Problem]]:
    """All lines that are right, in the file's order, and every problem of every other line."""
    table, problems = read_table(path, shown, HEADER, ())
    rows = [] if table is None else [_run(row, problems) for row in table.rows]
    return [row for row in rows if row is not None], problems


def _run(row: Row, problems: list[Problem]) -> RunRow | None:
    reader = FieldReader(row, HEADER, problems)
    day = reader.day("date")
    product = reader.identifier("product")
    cells = reader.text("cells", 120)
    counter = reader.decimal("counter_h", zero_allowed=True)
    event = reader.word("event", EVENTS)
    if not (day and product and cells and event) or counter is None:
        return None
    return RunRow(row.place(HEADER.index("counter_h")), day, product, cells, float(counter), event, row.text)
