"""A ride as a session of the bench, and what several sessions come to: the observations of a reading."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import numpy as np

from spindlewise.answer.bench_observation import BenchObservation, bench_source, note_of
from spindlewise.answer.bench_ride import RideReport
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.session_record import (
    LEAST_SESSIONS,
    SessionRecord,
    change_along,
    minute_differences_pct,
    session_record,
)
from spindlewise.bench.weighing import rounded_up
from spindlewise.catalog.session_row import COUNTS, SessionRow
from spindlewise.units import rounded

DAYS_A_YEAR = 365.25
LEAST_SPAN_KM, LEAST_SPAN_YEARS = 500.0, 0.25
"""Design choice, no source: over a shorter series a drift says more of the days than of the meter."""

SESSIONS = "bench/sessions.csv"
"""The sessions' file, as the catalog names it."""

LEAST_MINUTES = 2
"""A spread needs two minutes."""


@dataclass(frozen=True, slots=True)
class RideSession:
    """A ride's line for the sessions, and the recordings behind it: source and SHA-256 of each.

    `generated` says that a program drew the recordings: nothing was measured.
    """

    row: SessionRow
    recordings: tuple[tuple[str, str], ...]
    generated: bool


@dataclass(frozen=True, slots=True)
class NoSession:
    """A meter that stands for a product, and why the ride gives no session of it."""

    product: str
    because: str


@dataclass(frozen=True, slots=True)
class ProductSessions:
    """All sessions of a product, those that count for nothing too, and what they come to.

    `record` is None below three sessions that count. `per_1000_km` and `per_year` say how the bias moves, of
    one unit where units are named, whose sessions `series` has; None where nothing can be said.
    """

    product: str
    rows: tuple[SessionRow, ...]
    counted: tuple[SessionRow, ...]
    record: SessionRecord | None
    per_1000_km: Estimate | None
    per_year: Estimate | None
    series: tuple[SessionRow, ...] = ()


def ride_sessions(report: RideReport) -> tuple[RideSession | NoSession, ...]:
    """A session for each meter that stands for a product, against the sheet's denominator."""
    found: list[RideSession | NoSession] = []
    sheet = report.sheet
    meters = {meter.id: meter for meter in sheet.meters}
    reference = meters[sheet.percent_of]
    for meter in sheet.meters:
        if meter.product == "not applicable" or meter.id == reference.id:
            continue
        pair = next((p for p in report.pairs if (p.first, p.second) == (meter.id, reference.id)), None)
        if pair is None or pair.power.with_zeros is None or pair.power.with_zeros.difference_pct is None:
            found.append(NoSession(meter.product, "there is nothing to compare it with"))
            continue
        if pair.chain:
            found.append(NoSession(meter.product, "a chain and its loss stand between it and the reference"))
            continue
        assert report.aligned is not None  # noqa: S101  # there is a pair
        rows = [report.aligned.row(name) for name in (meter.id, reference.id)]
        minutes = minute_differences_pct(report.comparable_w[rows[0]], report.comparable_w[rows[1]])
        if len(minutes) < LEAST_MINUTES:
            found.append(NoSession(meter.product, "there are not two minutes in which both pedal"))
            continue
        quality = {r.name: r for r in report.recordings}
        row = SessionRow(
            date=sheet.date,
            product=meter.product,
            minutes=max(rounded(pair.power.with_zeros.count / 60.0), 1.0),
            mean_difference_pct=pair.power.with_zeros.difference_pct.value,
            sd_pct=float(np.std(minutes, ddof=1)),
            verdict=_verdict(report, pair.verdicts[1].says, pair.verdicts[1].because),
            unit="" if meter.unit == "unknown" else meter.unit,
            ridden_km=None if isinstance(meter.ridden_km, str) else meter.ridden_km,
        )
        recordings = tuple((quality[i].source, quality[i].sha256) for i in (meter.id, reference.id))
        found.append(RideSession(row, recordings, sheet.made == "generated"))
    return tuple(found)


def product_sessions(product: str, rows: Sequence[SessionRow], day: date) -> ProductSessions:
    """Put all sessions of a product by `day` together; two of one date are both kept.

    Bias and spread as `session_record` has them. A change with kilometres or time is told of one unit only:
    of the unit that has most sessions where units are named, else of all sessions that name none.
    """
    own = sorted((r for r in rows if r.product == product and r.date <= day), key=lambda r: (r.date, r.line))
    counted = [row for row in own if row.counts]
    units = sorted({row.unit for row in counted}, key=lambda unit: (not unit, -_count(counted, unit), unit))
    series = [row for row in counted if units and row.unit == units[0]]
    with_km = [row for row in series if row.ridden_km is not None]
    return ProductSessions(
        product=product,
        rows=tuple(own),
        counted=tuple(counted),
        record=session_record([row.mean_difference_pct for row in counted], [row.sd_pct for row in counted]),
        per_1000_km=_change(
            with_km, [(r.ridden_km or 0.0) / 1000.0 for r in with_km], LEAST_SPAN_KM / 1000.0
        ),
        per_year=_change(series, [r.date.toordinal() / DAYS_A_YEAR for r in series], LEAST_SPAN_YEARS),
        series=tuple(series),
    )


def with_ride(rows: Sequence[SessionRow], session: RideSession) -> tuple[SessionRow, ...]:
    """The sessions and the ride's own, unless a line of its date and product stands among them already."""
    row = session.row
    if any((each.date, each.product) == (row.date, row.product) for each in rows):
        return tuple(rows)
    return (*rows, row)


def reading_observations(
    sessions: ProductSessions, catalog_folder: Path, rides: Sequence[RideSession] = ()
) -> tuple[BenchObservation, ...]:
    """Bias and spread as the catalog states them; none below three sessions that count.

    To 0.1 %, the plus-minus rounded up. The source is the catalog's file of sessions, or the first recording
    where all of them are of `rides` and none stands in that file; the note names the recordings of `rides`
    with their SHA-256, as far as there is room.
    """
    if sessions.record is None:
        return ()
    first, last = sessions.counted[0].date, sessions.counted[-1].date
    note = [f"{sessions.record.count} sessions that count of {len(sessions.rows)}"]
    if rides:
        days = sorted({ride.row.date.isoformat() for ride in rides})
        note.append(f"with the ride{'s' if len(days) > 1 else ''} of {', '.join(days)}")
    drift = sessions.per_1000_km
    if drift is not None and not drift.holds(0.0):
        note.append(f"drifts by {drift.value:+.2f} % for each 1,000 km")
    if any(ride.generated for ride in rides):
        note.append("some of the recordings are drawn by a program, not measured")
    files = dict.fromkeys(file for ride in rides for file in ride.recordings)
    recordings = tuple((bench_source(Path(name), catalog_folder), digest) for name, digest in files)
    note += [f"{name} SHA-256 {digest}" for name, digest in recordings]
    ridden = all(any(row is ride.row for ride in rides) for row in sessions.counted)
    source = recordings[0][0] if ridden and recordings else SESSIONS
    figures = (
        ("reading_bias_pct", sessions.record.bias),
        ("reading_spread_pct", sessions.record.spread),
    )
    return tuple(
        BenchObservation(
            product=sessions.product,
            attribute=attribute,
            date=last,
            source=f"{source}, {first.isoformat()} to {last.isoformat()}",
            note=note_of(note),
            value=rounded(figure.pct, 1),
            plus_minus=rounded_up(figure.plus_minus_pct, 0.1),
            basis={},
            recordings=recordings,
        )
        for attribute, figure in figures
    )


def session_line(row: SessionRow) -> str:
    """The line for the table of sessions, with unit and kilometres where they are known.

    >>> session_line(SessionRow(date(2026, 3, 12), "heron-one", 64, -0.84, 1.26, "counts"))
    '2026-03-12,heron-one,64,-0.8,1.3,counts'
    """
    cells = [
        row.date.isoformat(),
        row.product,
        f"{row.minutes:g}",
        f"{rounded(row.mean_difference_pct, 1):g}",
        f"{rounded(row.sd_pct, 1):g}",
        _field(row.verdict),
    ]
    if row.unit or row.ridden_km is not None:
        cells += [_field(row.unit), "" if row.ridden_km is None else f"{row.ridden_km:g}"]
    return ",".join(cells)


def missing_sessions(sessions: ProductSessions) -> int:
    """How many more sessions it takes until anything is scored."""
    return max(LEAST_SESSIONS - len(sessions.counted), 0)


def _change(rows: Sequence[SessionRow], at: list[float], least: float) -> Estimate | None:
    if len(rows) < LEAST_SESSIONS or max(at) - min(at) < least:
        return None
    return change_along(at, [row.mean_difference_pct for row in rows])


def _count(rows: Sequence[SessionRow], unit: str) -> int:
    return sum(row.unit == unit for row in rows)


def _verdict(report: RideReport, quality: str, because: tuple[str, ...]) -> str:
    standing = report.sheet.standing
    if standing.state != COUNTS:
        return f"{standing.state}: {standing.because}"
    return f"void: {because[0]}" if quality == "not enough" else COUNTS


def _field(text: str) -> str:
    """A field as RFC 4180 writes it."""
    return '"' + text.replace('"', '""') + '"' if any(c in text for c in ',"') else text
