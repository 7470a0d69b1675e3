"""Sessions of the bench as JSON."""

from datetime import date

from spindlewise.answer.bench_session import (
    NoSession,
    ProductSessions,
    RideSession,
    missing_sessions,
    session_line,
)
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.session_record import SessionFigure
from spindlewise.catalog.session_row import SessionRow
from spindlewise.render.as_json import Json, number

HISTORY_SCHEMA = "spindlewise bench history 1"


def sessions_json(
    sessions: tuple[RideSession | NoSession, ...], records: tuple[ProductSessions, ...]
) -> list[Json]:
    """A ride's sessions, each with what all of its product's come to; `because` where there is none."""
    by_product = {record.product: record for record in records}
    found: list[Json] = []
    for session in sessions:
        if isinstance(session, NoSession):
            found.append({"product": session.product, "session": None, "because": session.because})
            continue
        record = by_product.get(session.row.product)
        found.append(
            {
                "product": session.row.product,
                "session": _row(session.row),
                "line": session_line(session.row),
                "generated": session.generated,
                "recordings": [{"file": name, "sha256": digest} for name, digest in session.recordings],
                "all_sessions": None if record is None else record_json(record),
            }
        )
    return found


def history_json(record: ProductSessions, day: date) -> dict[str, Json]:
    """A product's sessions without the schema key."""
    return {
        "as_of": day.isoformat(),
        "product": record.product,
        "sessions": [_row(row) for row in record.rows],
        **record_json(record),
    }


def _row(row: SessionRow) -> Json:
    return {
        "date": row.date.isoformat(),
        "minutes": number(row.minutes),
        "mean_difference_pct": number(row.mean_difference_pct),
        "sd_pct": number(row.sd_pct),
        "verdict": row.verdict,
        "unit": row.unit or None,
        "ridden_km": number(row.ridden_km),
    }


def record_json(record: ProductSessions) -> dict[str, Json]:
    """What the sessions of a product come to."""
    found = record.record
    return {
        "counted": len(record.counted),
        "missing": missing_sessions(record),
        "bias_pct": None if found is None else _figure(found.bias),
        "spread_pct": None if found is None else _figure(found.spread),
        "change_per_1000_km_pct": _slope(record.per_1000_km),
        "change_per_year_pct": _slope(record.per_year),
    }


def _figure(found: SessionFigure) -> Json:
    return {"value": number(found.pct), "plus_minus": number(found.plus_minus_pct)}


def _slope(found: Estimate | None) -> Json:
    if found is None:
        return None
    return {
        "value": number(found.value),
        "low": number(found.low),
        "high": number(found.high),
        "proved": not found.holds(0.0),
    }
