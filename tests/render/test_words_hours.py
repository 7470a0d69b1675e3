import json
from dataclasses import replace
from datetime import date
from typing import Any

from small_answers import desk, names
from spindlewise.answer.bench_hours import ClaimedHours, HoursReport, RanFor
from spindlewise.bench.running_time import Run, RunningTime, running_time
from spindlewise.render.as_json import as_json
from spindlewise.render.as_text import as_text
from spindlewise.render.words_hours import SCHEMA, hours_blocks, hours_json, hours_sentence

DAY = date(2026, 3, 8)
THREE = running_time([Run(60, True), Run(64, True), Run(61, True), Run(55, False)])


def ran(found: RunningTime, verdict: str = "") -> RanFor:
    claim = ClaimedHours(50.0, "sheet", verdict) if verdict else None
    return RanFor("pellamund-orrestad", "two alkaline AAA", DAY, found, None, claim, ())


def said(found: RunningTime, verdict: str = "") -> str:
    return hours_sentence(ran(found, verdict), names())


def test_an_interval_where_runs_tell_one() -> None:
    assert said(THREE, "proved within").startswith(
        "Pellamund Orrestad, two alkaline AAA: 62 h in the middle, between "
    )
    assert said(THREE, "proved within").endswith(
        "The claim of 50 h is proved: all of the interval lies above it."
    )
    assert said(THREE, "proved under").endswith(
        "Proved under the claim of 50 h: all of the interval lies below it."
    )


def test_a_bound_and_too_few_runs_say_so() -> None:
    bound = said(running_time([Run(50, False)]), "cannot tell")
    assert (
        "at least 50 h (no runs to the end, 1 still running or charged early); nothing ran out yet" in bound
    )
    assert bound.endswith("Whether the claim of 50 h holds cannot be told.")
    longer = said(running_time([Run(50.5, False)]), "cannot tell")
    assert longer.endswith(
        "That is longer than the claim of 50 h already; whether it holds as a rule cannot be told."
    )
    few = said(running_time([Run(55, True)]))
    assert "too few to say how runs differ" in few
    assert few.endswith("Nobody claims hours on these cells.")


def test_claims_on_other_cells_are_named() -> None:
    one = replace(ran(THREE), claimed_on=("one CR2032", "two lithium AAA"))
    assert hours_sentence(one, names()).endswith(
        "Nobody claims hours on these cells; they are claimed on one CR2032 and two lithium AAA."
    )


def test_the_page_and_the_json() -> None:
    report = HoursReport((ran(THREE, "proved within"), ran(running_time([Run(70, False)]))), ())
    assert "As of 2026-03-08." in as_text(hours_blocks(desk().catalog, report, DAY))
    found: dict[str, Any] = json.loads(as_json(SCHEMA, hours_json(report, DAY)))
    full, bound = found["ran"]
    assert full["low_h"] < full["hours"] < full["high_h"]
    assert full["claim"]["verdict"] == "proved within"
    assert (bound["says"], bound["at_least_h"], bound["low_h"], bound["claim"]) == (
        "at least",
        70.0,
        None,
        None,
    )
