"""Running hours from the bench, in words and as JSON."""

from datetime import date

from spindlewise.answer.bench_hours import HoursReport, RanFor
from spindlewise.catalog.catalog import Catalog
from spindlewise.render.as_json import Json, number
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph
from spindlewise.render.naming import Naming, listed, naming
from spindlewise.render.words_rank import notice_of_invention
from spindlewise.units import number_text

SCHEMA = "spindlewise bench hours 1"


def hours_blocks(catalog: Catalog, report: HoursReport, day: date) -> tuple[Block, ...]:
    """A sentence or two for each product on each kind of cells."""
    names = naming(catalog)
    return (
        Heading("How long batteries ran", 1),
        Paragraph(
            f"As of {day.isoformat()}. Half of the runs last longer than the figure in the middle. A run "
            "that was still going on, or was charged early, lasted at least that long.",
            "quiet",
        ),
        Bullets(tuple(hours_sentence(one, names) for one in report.ran)),
        *notice_of_invention(catalog),
    )


def hours_sentence(one: RanFor, names: Naming) -> str:
    """What the runs come to, and what that says of the claim."""
    found = one.found
    lead = f"{names.product(one.product)}, {one.cells}:"
    runs = _runs(found.ended, found.running)
    if found.says == "at least":
        said = f"at least {_hours(found.hours)} ({runs}); nothing ran out yet, so there is no observation"
    elif found.interval is None:
        said = f"{_hours(found.hours)} in the middle ({runs}); too few to say how runs differ"
    else:
        low, high = number_text(found.interval.low), _hours(found.interval.high)
        said = f"{_hours(found.hours)} in the middle, between {low} and {high} ({runs})"
    if one.claim is None:
        others = f"; they are claimed on {listed(one.claimed_on)}" if one.claimed_on else ""
        return f"{lead} {said}. Nobody claims hours on these cells{others}."
    if found.says == "at least" and found.hours > one.claim.hours:
        return f"{lead} {said}. {LONGER.format(claim=_hours(one.claim.hours))}"
    return f"{lead} {said}. {CLAIMS[one.claim.verdict].format(claim=_hours(one.claim.hours))}"


def _runs(ended: int, running: int) -> str:
    """How many runs ended, and how many are known to have lasted at least so long.

    >>> _runs(3, 0), _runs(1, 1)
    ('3 runs to the end', '1 run to the end, 1 still running or charged early')
    """
    to_the_end = f"{ended or 'no'} run{'' if ended == 1 else 's'} to the end"
    return f"{to_the_end}, {running} still running or charged early" if running else to_the_end


CLAIMS = {
    "proved within": "The claim of {claim} is proved: all of the interval lies above it.",
    "proved under": "Proved under the claim of {claim}: all of the interval lies below it.",
    "cannot tell": "Whether the claim of {claim} holds cannot be told.",
}

LONGER = "That is longer than the claim of {claim} already; whether it holds as a rule cannot be told."


def hours_json(report: HoursReport, day: date) -> dict[str, Json]:
    """The same as JSON, without the schema key."""
    return {
        "as_of": day.isoformat(),
        "ran": [_one(one) for one in report.ran],
        "problems": len(report.problems),
    }


def _one(one: RanFor) -> Json:
    found = one.found
    return {
        "product": one.product,
        "cells": one.cells,
        "date": one.date.isoformat(),
        "says": found.says,
        "hours": number(found.hours),
        "low_h": None if found.interval is None else number(found.interval.low),
        "high_h": None if found.interval is None else number(found.interval.high),
        "at_least_h": number(found.at_least_h),
        "ended": found.ended,
        "running": found.running,
        "claimed_on": list(one.claimed_on),
        "claim": None
        if one.claim is None
        else {
            "hours": number(one.claim.hours),
            "source": one.claim.source,
            "verdict": one.claim.verdict,
        },
    }


def _hours(value: float) -> str:
    return f"{number_text(value)} h"
