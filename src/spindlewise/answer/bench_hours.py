"""How long batteries ran, from a log of charges and cell changes, with what was still running."""

import hashlib
import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from spindlewise.answer.bench_observation import BenchObservation, note_of
from spindlewise.bench.conformity import Claim, conformity
from spindlewise.bench.running_time import RunningTime, running_time, runs_from_log
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.figure import seen
from spindlewise.catalog.observation import HoursFigure
from spindlewise.catalog.run_row import RunRow
from spindlewise.problems import Problem, nearest, quoted
from spindlewise.units import rounded


@dataclass(frozen=True, slots=True)
class ClaimedHours:
    """The newest claim on the same cells, and whether what was seen proves it: at least so many hours."""

    hours: float
    source: str
    verdict: str


@dataclass(frozen=True, slots=True)
class RanFor:
    """One product on one kind of cells, to the last line seen; `plus_minus_h` is None where none is known.

    `claimed_on` has the cells on which hours are claimed, where these are others.
    """

    product: str
    cells: str
    date: date
    found: RunningTime
    plus_minus_h: float | None
    claim: ClaimedHours | None
    lines: tuple[str, ...]
    claimed_on: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class HoursReport:
    """All that ran, in order of product and cells, and what is wrong with the log."""

    ran: tuple[RanFor, ...]
    problems: tuple[Problem, ...]


def hours_report(
    rows: Sequence[RunRow], catalog: Catalog, day: date, problems: Sequence[Problem] = ()
) -> HoursReport:
    """Put the log's lines together by product and cells, in the file's order; nothing after `day` is seen."""
    found = list(problems)
    groups: dict[tuple[str, str], list[RunRow]] = {}
    for row in rows:
        if row.date <= day:
            groups.setdefault((row.product, row.cells), []).append(row)
    ran = [one for key in sorted(groups) if (one := _ran(groups[key], catalog, day, found))]
    found += [_stranger(group[0], catalog) for key, group in groups.items() if key[0] not in catalog.products]
    return HoursReport(tuple(ran), tuple(found))


def hours_observation(one: RanFor, source: str) -> BenchObservation | None:
    """The catalog's observation to the whole hour; None where nothing ran out, since a bound is no figure."""
    if one.found.says == "at least":
        return None
    digest = hashlib.sha256("".join(f"{line}\n" for line in one.lines).encode()).hexdigest()
    ended, running = one.found.ended, one.found.running
    runs = f"{ended} run{'' if ended == 1 else 's'} to the end, {running} still running"
    return BenchObservation(
        product=one.product,
        attribute="running_hours",
        date=one.date,
        source=f"{source}, {one.date.isoformat()}",
        note=note_of([runs, f"SHA-256 of their lines {digest}"]),
        value=rounded(one.found.hours),
        plus_minus=None if one.plus_minus_h is None else float(math.ceil(one.plus_minus_h)),
        basis={"cells": one.cells},
    )


def _ran(rows: list[RunRow], catalog: Catalog, day: date, problems: list[Problem]) -> RanFor | None:
    before = 0.0
    for row in rows:
        if row.counter_h < before:
            told = f"counter_h: {row.counter_h:g} h after {before:g} h; the counter only rises"
            tip = "put the lines in the order in which they were seen"
            problems.append(Problem(row.place, "error", "counter-backwards", told, tip, "counter_h"))
            return None
        before = row.counter_h
    runs = runs_from_log([(row.counter_h, row.event) for row in rows])
    if not runs:
        told = "event: no run begins with fresh and goes on after it"
        tip = "write a line with fresh cells or a full charge, then what was seen later"
        problems.append(Problem(rows[0].place, "warning", "no-run", told, tip, "event"))
        return None
    found = running_time(runs)
    interval = found.interval
    reach = None if interval is None else max(interval.high - found.hours, found.hours - interval.low)
    first = rows[0]
    claim = _claim(first, catalog, day, found, reach)
    return RanFor(
        product=first.product,
        cells=first.cells,
        date=max(row.date for row in rows),
        found=found,
        plus_minus_h=reach,
        claim=claim,
        lines=tuple(row.text for row in rows),
        claimed_on=() if claim else tuple(sorted({one.basis.cells for one in _claims(first, catalog, day)})),
    )


def _claim(
    row: RunRow, catalog: Catalog, day: date, found: RunningTime, reach: float | None
) -> ClaimedHours | None:
    for claim in _claims(row, catalog, day):
        value = claim.value
        if isinstance(value, str) or value <= 0 or claim.basis.cells != row.cells:
            continue
        basis = {"cells": row.cells}
        if reach is not None:
            stated = Claim(value, basis, sense="at least")
            verdict: str = conformity(found.hours, reach, basis, stated).verdict
        else:
            verdict = "cannot tell"
        return ClaimedHours(value, claim.source, verdict)
    return None


def _claims(row: RunRow, catalog: Catalog, day: date) -> list[HoursFigure]:
    product = catalog.products.get(row.product)
    known = seen(product.observations.running_hours, day) if product else ()
    return [claim for claim in known if claim.grade == "claimed"]


def _stranger(row: RunRow, catalog: Catalog) -> Problem:
    near = nearest(row.product, catalog.products)
    tip = f"did you mean {near}?" if near else "there is no claim to hold it to"
    told = f"product: the catalog has no {quoted(row.product)}"
    return Problem(row.place, "warning", "unknown-product", told, tip, "product")
