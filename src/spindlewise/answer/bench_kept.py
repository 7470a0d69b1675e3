"""What a catalog's own bench holds by a day: rides, one after the other, sessions, weighings, hours."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spindlewise.answer.bench_hours import HoursReport, hours_report
from spindlewise.answer.bench_ride import RideReport, ride_report
from spindlewise.answer.bench_session import (
    NoSession,
    ProductSessions,
    RideSession,
    product_sessions,
    ride_sessions,
    with_ride,
)
from spindlewise.answer.bench_weigh import WeighReport, weigh_report
from spindlewise.answer.desk import Desk
from spindlewise.bench.ride_folders import SHEET, ride_folders
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.catalog.reading import read_record
from spindlewise.catalog.run_row import read_runs
from spindlewise.catalog.session_row import SessionRow, read_sessions
from spindlewise.catalog.weighing_row import read_weighings
from spindlewise.problems import Problem

RIDES, SESSIONS, WEIGHINGS, HOURS = (
    "bench/rides",
    "bench/sessions.csv",
    "bench/weighings.csv",
    "bench/hours.csv",
)
"""Where a catalog keeps them."""


@dataclass(frozen=True, slots=True, eq=False)
class KeptRide:
    """A ride of the catalog: its report, its sessions, and what they come to with those that stand there.

    `folder` is its place in the catalog.
    """

    folder: str
    report: RideReport
    sessions: tuple[RideSession | NoSession, ...]
    records: tuple[ProductSessions, ...]


@dataclass(frozen=True, slots=True)
class UnreadRide:
    """A ride whose sheet cannot be read, and why."""

    folder: str
    problems: tuple[Problem, ...]


def kept_rides(desk: Desk) -> Iterator[KeptRide | UnreadRide]:
    """Read one ride after the other, so that an archive need not be held whole; none dated after the day."""
    catalog = desk.catalog
    known = kept_sessions(desk)
    for folder in ride_folders(catalog.folder / RIDES):
        place = folder.relative_to(catalog.folder).as_posix()
        sheet, _, problems = read_record(RideSheet, folder / SHEET)
        if sheet is None:
            yield UnreadRide(place, tuple(problems))
        elif sheet.date <= desk.day:
            report = ride_report(sheet, folder, place)
            sessions = ride_sessions(report)
            held = [session for session in sessions if isinstance(session, RideSession)]
            yield KeptRide(place, report, sessions, ride_records(known, held, desk))


def ride_records(
    known: Sequence[SessionRow], held: Sequence[RideSession], desk: Desk
) -> tuple[ProductSessions, ...]:
    """What the sessions of each product of a ride come to, the ride's own among them."""
    return tuple(
        product_sessions(session.row.product, with_ride(known, session), desk.day) for session in held
    )


def kept_sessions(desk: Desk) -> list[SessionRow]:
    """The sessions that stand in the catalog and could be read; none where it keeps no file of them."""
    path = desk.catalog.folder / SESSIONS
    return read_sessions(path, SESSIONS)[0] if SESSIONS in desk.catalog.bench_files else []


def kept_weighings(desk: Desk) -> WeighReport:
    """What the catalog's own weighings say."""
    if WEIGHINGS not in desk.catalog.bench_files:
        return weigh_report([], desk.catalog, desk.day)
    rows, problems = read_weighings(desk.catalog.folder / WEIGHINGS, WEIGHINGS)
    return weigh_report(rows, desk.catalog, desk.day, problems)


def kept_hours(desk: Desk) -> HoursReport:
    """What the catalog's own log of charges says."""
    if HOURS not in desk.catalog.bench_files:
        return hours_report([], desk.catalog, desk.day)
    rows, problems = read_runs(desk.catalog.folder / HOURS, HOURS)
    return hours_report(rows, desk.catalog, desk.day, problems)
