"""One line of the sessions: a ride beside the bench's reference meter, and whether it counts."""

from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from pathlib import Path

from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_table import read_table
from spindlewise.catalog.csv_text import Row
from spindlewise.problems import Problem

COUNTS = "counts"
STATES = (COUNTS, "void", "bedding-in")
HEADER = ("date", "product", "minutes", "mean_difference_pct", "sd_pct", "verdict")
OPTIONAL = ("unit", "ridden_km")
"""Which unit of the product, and how far it had been ridden before: what a long series needs."""


@dataclass(frozen=True, slots=True)
class SessionRow:
    """One session. `verdict` is `counts`, or void or bedding-in with the reason: 'void: a loose cleat'."""

    date: Day
    product: str
    minutes: float
    mean_difference_pct: float
    sd_pct: float
    verdict: str
    unit: str = ""
    ridden_km: float | None = None
    line: int = 0

    @property
    def counts(self) -> bool:
        """Whether anything may be reckoned from it."""
        return self.verdict == COUNTS


def read_sessions(path: Path, shown: str) -> tuple[list[SessionRow], list[Problem]]:
    """All sessions that are right, in the file's order, and every problem of every other line."""
    table, problems = read_table(path, shown, HEADER, OPTIONAL)
    rows = [] if table is None else [_session(row, table.header, problems) for row in table.rows]
    return [row for row in rows if row is not None], problems


def _session(row: Row, header: tuple[str, ...], problems: list[Problem]) -> SessionRow | None:
    reader = FieldReader(row, header, problems)
    day = reader.day("date")
    product = reader.identifier("product")
    minutes = reader.decimal("minutes")
    difference = reader.signed_decimal("mean_difference_pct")
    spread = reader.decimal("sd_pct", zero_allowed=True)
    verdict = reader.text("verdict")
    state, colon, reason = (verdict or COUNTS).partition(":")
    if state not in STATES or (state == COUNTS) != (not colon) or (colon and not reason.strip()):
        told = f"found {verdict!r}; allowed: counts, void: REASON, bedding-in: REASON"
        reader.wrong("verdict", "session-verdict", told, "a session that does not count says why")
    unit = row.fields[header.index("unit")] if "unit" in header else ""
    km_text = row.fields[header.index("ridden_km")] if "ridden_km" in header else ""
    km = reader.decimal("ridden_km", zero_allowed=True) if km_text else None
    if not (day and product and minutes and verdict) or difference is None or spread is None:
        return None
    if not reader.faultless:
        return None
    return SessionRow(
        date=day,
        product=product,
        minutes=float(minutes),
        mean_difference_pct=float(difference),
        sd_pct=float(spread),
        verdict=verdict,
        unit=unit,
        ridden_km=None if km is None else float(km),
        line=row.line,
    )
