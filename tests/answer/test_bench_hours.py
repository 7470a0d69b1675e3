"""Battery hours: runs that still went on are bounds, and the claim is of at least so many."""

from datetime import date
from pathlib import Path

import pytest

import worlds
from spindlewise.answer.bench_hours import HoursReport, hours_observation, hours_report
from spindlewise.catalog.run_row import HEADER, RunRow, read_runs
from spindlewise.problems import render

CLAIM = worlds.seen(50.0, {"cells": "built-in"}, grade="claimed", source="sheet of May")
FOUR_RUNS = (
    "0,fresh",
    "60,empty",
    "60,fresh",
    "124,empty",
    "124,fresh",
    "185,empty",
    "185,fresh",
    "240,still running",
)


def rows(folder: Path, *lines: str, product: str = "some-pedal", cells: str = "built-in") -> list[RunRow]:
    path = folder / "hours.csv"
    whole = [
        ",".join(HEADER),
        *(f"2026-03-{i + 1:02},{product},{cells},{line}" for i, line in enumerate(lines)),
    ]
    path.write_text("\n".join(whole), "utf-8")
    found, problems = read_runs(path, "hours.csv")
    assert problems == []
    return found


def report(folder: Path, *lines: str, claims: tuple = (CLAIM,), **more: str) -> HoursReport:
    catalog = worlds.catalog([worlds.product("some-pedal", {"running_hours": claims or "unknown"})], [])
    return hours_report(rows(folder, *lines, **more), catalog, worlds.DAY)


def test_runs_to_the_end_give_an_interval_and_prove_the_claim(tmp_path: Path) -> None:
    (one,) = report(tmp_path, *FOUR_RUNS).ran
    assert (one.found.says, one.found.ended, one.found.running) == ("estimated", 3, 1)
    assert one.found.interval is not None
    assert one.found.interval.holds(61.0)
    assert one.plus_minus_h is not None
    assert one.claim is not None
    assert (one.claim.hours, one.claim.verdict) == (50.0, "proved within")
    given = hours_observation(one, "bench/hours.csv")
    assert given is not None
    assert (given.value, given.basis, given.date) == (62.0, {"cells": "built-in"}, date(2026, 3, 8))
    assert given.plus_minus is not None
    assert given.plus_minus >= one.plus_minus_h
    assert given.note.startswith("3 runs to the end, 1 still running; SHA-256 of their lines")


@pytest.mark.parametrize(("claimed", "verdict"), [(300.0, "proved under"), (62.0, "cannot tell")])
def test_a_claim_that_is_too_long_is_proved_under_it(tmp_path: Path, claimed: float, verdict: str) -> None:
    claim = {**CLAIM, "value": claimed}
    (one,) = report(tmp_path, *FOUR_RUNS, claims=(claim,)).ran
    assert one.claim is not None
    assert one.claim.verdict == verdict


def test_still_running_is_a_bound_and_no_observation(tmp_path: Path) -> None:
    (one,) = report(tmp_path, "0,fresh", "70,still running").ran
    assert (one.found.says, one.found.hours, one.plus_minus_h) == ("at least", 70.0, None)
    assert hours_observation(one, "bench/hours.csv") is None
    assert one.claim is not None
    assert one.claim.verdict == "cannot tell"


def test_one_run_to_the_end_has_no_plus_minus(tmp_path: Path) -> None:
    (one,) = report(tmp_path, "0,fresh", "55,empty").ran
    given = hours_observation(one, "bench/hours.csv")
    assert given is not None
    assert (given.value, given.plus_minus) == (55.0, None)


def test_other_cells_measured_hours_and_unknown_claims_are_no_claim(tmp_path: Path) -> None:
    assert report(tmp_path, *FOUR_RUNS, cells="two lithium AAA").ran[0].claim is None
    assert report(tmp_path, *FOUR_RUNS, claims=()).ran[0].claim is None
    assert report(tmp_path, *FOUR_RUNS, product="stranger").ran[0].claim is None
    for other in ({**CLAIM, "grade": "reported"}, {**CLAIM, "value": "unknown"}, {**CLAIM, "value": 0.0}):
        assert report(tmp_path, *FOUR_RUNS, claims=(other,)).ran[0].claim is None


def test_a_counter_that_runs_backwards_is_a_problem_at_its_line(tmp_path: Path) -> None:
    found = report(tmp_path, "0,fresh", "60,empty", "50,fresh")
    assert found.ran == ()
    assert "hours.csv:4:" in render(found.problems, "plain")
    assert "counter_h: 50 h after 60 h; the counter only rises" in render(found.problems, "plain")


def test_a_log_without_a_run_is_a_warning(tmp_path: Path) -> None:
    found = report(tmp_path, "40,empty")
    assert found.ran == ()
    assert [(problem.level, problem.rule) for problem in found.problems] == [("warning", "no-run")]


def test_what_is_dated_later_is_not_seen(tmp_path: Path) -> None:
    read = rows(tmp_path, "0,fresh", "55,empty")
    assert hours_report(read, worlds.catalog([], []), date(2026, 1, 1)).ran == ()


def test_claims_on_other_cells_are_named(tmp_path: Path) -> None:
    (one,) = report(tmp_path, *FOUR_RUNS, cells="two lithium AAA").ran
    assert (one.claim, one.claimed_on) == (None, ("built-in",))
    (one,) = report(tmp_path, *FOUR_RUNS).ran
    assert one.claimed_on == ()


def test_a_product_that_the_catalog_does_not_have_is_said_once(tmp_path: Path) -> None:
    found = report(tmp_path, *FOUR_RUNS, product="some-pedl")
    assert render(found.problems, "plain") == (
        "hours.csv:2:31: warning: product: the catalog has no 'some-pedl'; did you mean some-pedal? "
        "(unknown-product)\n"
    )
    assert found.ran[0].claim is None
