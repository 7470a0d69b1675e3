"""One line of the weighings: what lay on which scales, and what they showed."""

from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from pathlib import Path
from typing import Literal

from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_table import read_table
from spindlewise.catalog.csv_text import Row
from spindlewise.problems import Place, Problem

What = Literal["pair", "one pedal", "left", "right"]
WHATS: tuple[What, ...] = ("pair", "one pedal", "left", "right")
BATTERIES = ("in", "out", "not applicable", "unknown")
CLEATS = ("off", "on", "unknown")

HEADER = ("date", "product", "what", "batteries", "cleats", "reading_g", "scale", "resolution_g")
OPTIONAL = ("tare_g", "correction_g", "calibration_g")
"""What held the pedals, weighed alone; the certificate's correction; its expanded uncertainty (k = 2)."""


@dataclass(frozen=True, slots=True)
class WeighingRow:
    """One reading; None where the optional column is not there or empty. `text` is the line as it stands."""

    place: Place
    date: Day
    product: str
    what: What
    batteries: str
    cleats: str
    reading_g: float
    scale: str
    resolution_g: float
    tare_g: float | None
    correction_g: float | None
    calibration_g: float | None
    text: str


def read_weighings(path: Path, shown: str) -> tuple[list[WeighingRow], list[Problem]]:
    """All readings that are right, in the file's order, and every problem of every other line."""
    table, problems = read_table(path, shown, HEADER, OPTIONAL)
    rows = [] if table is None else [_weighing(row, table.header, problems) for row in table.rows]
    return [row for row in rows if row is not None], problems


def _weighing(row: Row, header: tuple[str, ...], problems: list[Problem]) -> WeighingRow | None:
    reader = FieldReader(row, header, problems)

    def stated(name: str) -> bool:
        return name in header and row.fields[header.index(name)] != ""

    day = reader.day("date")
    product = reader.identifier("product")
    what = reader.word("what", WHATS)
    batteries = reader.word("batteries", BATTERIES)
    cleats = reader.word("cleats", CLEATS)
    reading = reader.decimal("reading_g")
    scale = reader.text("scale", 120)
    resolution = reader.decimal("resolution_g")
    tare = reader.decimal("tare_g") if stated("tare_g") else None
    correction = reader.signed_decimal("correction_g") if stated("correction_g") else None
    calibration = reader.decimal("calibration_g", zero_allowed=True) if stated("calibration_g") else None
    if not (day and product and what and batteries and cleats and reading and scale and resolution):
        return None
    if not reader.faultless:
        return None
    return WeighingRow(
        place=row.place(header.index("reading_g")),
        date=day,
        product=product,
        what=what,
        batteries=batteries,
        cleats=cleats,
        reading_g=float(reading),
        scale=scale,
        resolution_g=float(resolution),
        tare_g=None if tare is None else float(tare),
        correction_g=None if correction is None else float(correction),
        calibration_g=None if calibration is None else float(calibration),
        text=row.text,
    )
