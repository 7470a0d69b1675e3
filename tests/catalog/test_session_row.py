from datetime import date
from pathlib import Path

import pytest

from spindlewise.catalog.session_row import HEADER, SessionRow, read_sessions
from spindlewise.problems import render

ROOT = Path(__file__).parents[2]
GOOD = "2026-03-12,heron-one,64,-0.8,1.3,counts"


def read(folder: Path, *lines: str, more: str = "") -> tuple[list[SessionRow], str]:
    path = folder / "sessions.csv"
    path.write_text("\n".join([",".join(HEADER) + more, *lines, ""]), "utf-8")
    rows, problems = read_sessions(path, "sessions.csv")
    return rows, render(problems, "plain")


def test_a_session_is_read_whole(tmp_path: Path) -> None:
    rows, said = read(tmp_path, GOOD, GOOD.replace("counts", "void: a loose cleat"))
    assert said == ""
    assert rows[0] == SessionRow(date(2026, 3, 12), "heron-one", 64.0, -0.8, 1.3, "counts", line=2)
    assert [row.counts for row in rows] == [True, False]


def test_unit_and_kilometres_may_follow(tmp_path: Path) -> None:
    rows, said = read(tmp_path, f"{GOOD},serial 12,9000", f"{GOOD},,", more=",unit,ridden_km")
    assert said == ""
    assert [(row.unit, row.ridden_km) for row in rows] == [("serial 12", 9000.0), ("", None)]


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (GOOD.replace("counts", "ok"), "verdict: found 'ok'; allowed: counts, void: REASON"),
        (GOOD.replace("counts", "void"), "verdict: found 'void'"),
        (GOOD.replace("counts", "void: "), "verdict: found"),
        (GOOD.replace("counts", "counts: yes"), "verdict: found 'counts: yes'"),
        (GOOD.replace("counts", ""), "verdict: is empty"),
        (GOOD.replace(",64,", ",0,"), "minutes: found 0"),
        (GOOD.replace("-0.8", "-0,8"), "field"),
        (GOOD.replace("-0.8", "--0.8"), "mean_difference_pct: found '--0.8'"),
        (GOOD.replace("1.3", "-1.3"), "sd_pct: found -1.3"),
        (GOOD.replace("heron-one", " "), "product: is empty"),
        (GOOD.replace("2026-03-12", "2026-02-30"), "date: there is no day"),
    ],
)
def test_a_line_that_is_wrong_is_told_and_left_out(tmp_path: Path, line: str, told: str) -> None:
    rows, said = read(tmp_path, line, GOOD)
    assert len(rows) == 1
    assert said.startswith("sessions.csv:2:")
    assert told in said


def test_kilometres_are_not_below_zero(tmp_path: Path) -> None:
    rows, said = read(tmp_path, f"{GOOD},serial 12,-1", more=",unit,ridden_km")
    assert rows == []
    assert "ridden_km: found -1" in said


def test_the_demo_is_read_without_a_word() -> None:
    rows, problems = read_sessions(ROOT / "catalog" / "bench" / "sessions.csv", "sessions.csv")
    assert problems == []
    assert sum(not row.counts for row in rows) == 2
