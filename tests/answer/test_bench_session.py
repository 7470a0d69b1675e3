"""Rides as sessions: each counts once, nothing is scored below three, and drift is told of one unit."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from small_rides import FIRST, demo, report
from spindlewise.answer.bench_session import (
    NoSession,
    ProductSessions,
    RideSession,
    missing_sessions,
    product_sessions,
    reading_observations,
    ride_sessions,
    session_line,
    with_ride,
)
from spindlewise.bench.demo_rides import SERIES
from spindlewise.bench.synthetic_ride import Meter, Stretch
from spindlewise.catalog.figure import seen
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.session_row import SessionRow, read_sessions

DEMO = Path(__file__).parents[2] / "catalog"
DAY = date(2026, 11, 20)


def row(day: str, pct: float, sd: float = 1.0, verdict: str = "counts", **more) -> SessionRow:
    return SessionRow(date.fromisoformat(day), "some-pedal", 60.0, pct, sd, verdict, **more)


def together(*rows: SessionRow) -> ProductSessions:
    return product_sessions("some-pedal", rows, DAY)


def test_every_bias_and_spread_that_the_demo_states_is_what_its_sessions_give() -> None:
    catalog, _ = open_catalog(DEMO)
    rows, problems = read_sessions(DEMO / "bench" / "sessions.csv", "sessions.csv")
    assert catalog is not None
    assert problems == []
    held = 0
    for product in sorted({row.product for row in rows}):
        for given in reading_observations(product_sessions(product, rows, DAY), DEMO):
            stated = getattr(catalog.products[product].observations, given.attribute)
            measured = next(entry for entry in seen(stated, DAY) if entry.grade == "measured")
            assert (measured.value, measured.plus_minus) == (given.value, given.plus_minus), product
            assert (measured.source, measured.date) == (given.source, given.date)
            held += 1
    assert held == 24


def test_the_demo_ride_is_a_session_with_its_recordings() -> None:
    (found,) = ride_sessions(demo())
    assert isinstance(found, RideSession)
    assert (found.row.product, found.row.verdict, found.row.ridden_km) == ("osmeryd-avessin", "counts", 410.0)
    assert found.row.mean_difference_pct == pytest.approx(100 * (1.002 / 0.998 - 1), abs=0.15)
    assert [name for name, _ in found.recordings] == [
        "bench/rides/2025-10-18-three-meters/pedals.csv",
        "bench/rides/2025-10-18-three-meters/spider.csv",
    ]
    assert found.generated


def test_a_void_ride_is_a_line_that_counts_for_nothing() -> None:
    (found,) = ride_sessions(demo(FIRST))
    assert isinstance(found, RideSession)
    assert found.row.verdict.startswith("bedding-in: the first half hour")
    assert not found.row.counts


def test_a_ride_too_short_to_tell_is_void_with_the_reason() -> None:
    (found,) = ride_sessions(
        report(Meter("pedals"), Meter("spider"), plan=[Stretch(200, 150), Stretch(200, 250)])
    )
    assert isinstance(found, RideSession)
    assert found.row.verdict.startswith("void: ")


@pytest.mark.parametrize(
    ("meters", "plan", "because"),
    [
        ((Meter("pedals"), Meter("hub")), None, "a chain and its loss"),
        ((Meter("pedals"), Meter("spider")), [Stretch(100, 200)], "not two minutes"),
        ((Meter("pedals"), Meter("spider")), [Stretch(15, 200)], "nothing to compare"),
    ],
)
def test_no_session_says_why(meters, plan, because) -> None:
    (found,) = ride_sessions(report(*meters, plan=plan))
    assert isinstance(found, NoSession)
    assert because in found.because


def test_what_nobody_noted_of_the_unit_stays_unknown() -> None:
    facts = {"pedals": {"unit": "unknown", "ridden_km": "unknown"}}
    (found,) = ride_sessions(report(Meter("pedals"), Meter("spider"), facts=facts))
    assert isinstance(found, RideSession)
    assert (found.row.unit, found.row.ridden_km) == ("", None)


def test_void_sessions_are_listed_and_count_for_nothing() -> None:
    found = together(
        row("2026-01-05", 0.5), row("2026-01-03", 0.7), row("2026-01-04", 9.9, verdict="void: a loose cleat"),
        row("2026-01-06", 0.6),
    )  # fmt: skip
    assert [each.date.day for each in found.rows] == [3, 4, 5, 6]
    assert found.record is not None
    assert found.record.bias.pct == pytest.approx(0.6)
    assert missing_sessions(found) == 0


def test_below_three_sessions_nothing_is_scored() -> None:
    found = together(row("2026-01-03", 0.7), row("2026-01-04", 0.5))
    assert found.record is None
    assert missing_sessions(found) == 1
    assert reading_observations(found, DEMO) == ()
    assert missing_sessions(together()) == 3


def test_what_is_dated_later_is_not_seen() -> None:
    assert together(row("2027-01-03", 0.7)).rows == ()


def test_a_unit_that_drifts_over_nine_thousand_kilometres() -> None:
    ridden = ((0, 0.1), (200, 0.15), (1000, 0.3), (1100, 0.25), (9000, 1.4), (9100, 1.45))
    rows = [
        row(f"2026-0{i + 1}-03", pct, unit="serial 12", ridden_km=float(km))
        for i, (km, pct) in enumerate(ridden)
    ]
    others = [row("2026-02-07", -3.0, unit="serial 40", ridden_km=5000.0)]
    found = together(*rows, *others)
    assert found.per_1000_km is not None
    assert found.per_1000_km.value == pytest.approx(0.14, abs=0.02)
    assert not found.per_1000_km.holds(0.0)
    assert found.per_year is not None


def test_no_drift_is_told_from_a_short_series() -> None:
    rows = [row(f"2026-01-0{i}", 0.1 * i, unit="a", ridden_km=10.0 * i) for i in range(1, 6)]
    found = together(*rows)
    assert (found.per_1000_km, found.per_year) == (None, None)
    assert together(row("2026-01-03", 0.7, ridden_km=0.0), row("2026-09-03", 0.7)).per_year is None


def test_a_ride_that_stands_among_the_sessions_counts_once() -> None:
    (session,) = ride_sessions(demo())
    assert isinstance(session, RideSession)
    assert with_ride([], session) == (session.row,)
    assert with_ride([session.row], session) == (session.row,)
    other_day = row("2026-01-03", 0.7)
    assert with_ride([other_day], session) == (other_day, session.row)


def test_the_note_names_the_recordings_and_their_digests() -> None:
    (session,) = ride_sessions(demo())
    assert isinstance(session, RideSession)
    rows = [
        SessionRow(date(2025, 10, day), "osmeryd-avessin", 60.0, 0.1, 0.7, "counts") for day in (7, 9, 16)
    ]
    known = product_sessions("osmeryd-avessin", with_ride(rows, session), DAY)
    bias, spread = reading_observations(known, DEMO, [session])
    assert bias.attribute == "reading_bias_pct"
    assert bias.source == "bench/sessions.csv, 2025-10-07 to 2025-10-18"
    assert bias.note.startswith(
        "4 sessions that count of 4; with the ride of 2025-10-18; some of the recordings"
    )
    assert session.recordings[0][1] in bias.note
    assert len(bias.note) <= 600
    assert (spread.plus_minus, spread.basis) == (0.3, {})


def test_rides_alone_are_their_own_source_and_not_a_file_that_is_not_there() -> None:
    rides = [
        found for name in SERIES for found in ride_sessions(demo(name)) if isinstance(found, RideSession)
    ]
    alone = product_sessions("brellowick-ferrowen", [ride.row for ride in rides], DAY)
    bias, _ = reading_observations(alone, DEMO, rides)
    assert bias.source == "pedals.csv, 2024-09-24 to 2026-09-12"  # opened beside the catalog, by name
    kept = row("2026-01-03", 0.7)
    mixed = product_sessions("brellowick-ferrowen", [kept, *(ride.row for ride in rides)], DAY)
    mixed = replace(mixed, counted=(kept, *mixed.counted))
    assert reading_observations(mixed, DEMO, rides)[0].source.startswith("bench/sessions.csv, ")


def test_a_line_is_read_back_as_it_was(tmp_path: Path) -> None:
    written = row(
        "2026-01-03", -0.7, 1.2, 'void: a "loose" cleat, left', unit="serial 12, red", ridden_km=410.0
    )
    path = tmp_path / "sessions.csv"
    head = "date,product,minutes,mean_difference_pct,sd_pct,verdict,unit,ridden_km"
    path.write_text(f"{head}\n{session_line(written)}\n", "utf-8")
    (read,), problems = read_sessions(path, "sessions.csv")
    assert problems == []
    assert read == SessionRow(**{f: getattr(written, f) for f in SessionRow.__slots__ if f != "line"}, line=2)
    assert session_line(row("2026-01-03", 0.7)).count(",") == 5
