"""Many rides, one after the other: of each only a line and its sessions are kept."""

from dataclasses import dataclass
from datetime import date

from spindlewise.answer.bench_ride import RideReport
from spindlewise.answer.bench_session import NoSession, RideSession, ride_sessions
from spindlewise.bench.estimate import Estimate


@dataclass(frozen=True, slots=True)
class PairLine:
    """Two meters of a ride in one line: their difference, and the three verdicts in a word or two each."""

    first: str
    second: str
    percent_of: str
    difference_pct: Estimate | None
    agreement: str
    quality: str
    plausibility: str


@dataclass(frozen=True, slots=True)
class RideLine:
    """A ride of an archive; `void` says why it counts for nothing, None where it counts."""

    ride: str
    date: date
    title: str
    void: str | None
    unread: tuple[str, ...]
    pairs: tuple[PairLine, ...]
    sessions: tuple[RideSession | NoSession, ...]


def ride_line(report: RideReport) -> RideLine:
    """What an archive keeps of a report."""
    pairs = []
    for pair in report.pairs:
        found = pair.power.with_zeros
        pairs.append(
            PairLine(
                first=pair.first,
                second=pair.second,
                percent_of=pair.percent_of,
                difference_pct=None if found is None else found.difference_pct,
                agreement=pair.verdicts[0].says,
                quality=pair.verdicts[1].says,
                plausibility=pair.verdicts[2].says,
            )
        )
    sheet = report.sheet
    return RideLine(
        sheet.id, sheet.date, sheet.title, report.void, report.unread, tuple(pairs), ride_sessions(report)
    )
