from datetime import date
from pathlib import Path

import pytest

from spindlewise.catalog.run_row import HEADER, RunRow, read_runs
from spindlewise.problems import render

GOOD = "2026-03-12,heron-one,two alkaline AAA,61.5,still running"


def read(folder: Path, *lines: str) -> tuple[list[RunRow], str]:
    path = folder / "hours.csv"
    path.write_text("\n".join([",".join(HEADER), *lines, ""]), "utf-8")
    rows, problems = read_runs(path, "hours.csv")
    return rows, render(problems, "plain")


def test_a_line_is_read_whole(tmp_path: Path) -> None:
    (row, fresh), said = read(tmp_path, GOOD, GOOD.replace("61.5,still running", "0,fresh"))
    assert said == ""
    assert (row.date, row.product, row.cells) == (date(2026, 3, 12), "heron-one", "two alkaline AAA")
    assert (row.counter_h, row.event, row.text) == (61.5, "still running", GOOD)
    assert (fresh.counter_h, fresh.event) == (0.0, "fresh")


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (GOOD.replace("still running", "dead"), "event: found 'dead'; allowed: fresh, empty, still running"),
        (GOOD.replace("61.5", "-1"), "counter_h: found -1; write 0 or more"),
        (GOOD.replace("two alkaline AAA", ""), "cells: is empty"),
        (GOOD.replace("2026-03-12", "spring"), "date: found 'spring'"),
        (GOOD.replace("heron-one", " "), "product: is empty"),
    ],
)
def test_a_line_that_is_wrong_is_told_and_left_out(tmp_path: Path, line: str, told: str) -> None:
    rows, said = read(tmp_path, line, GOOD)
    assert len(rows) == 1
    assert said.startswith("hours.csv:2:")
    assert told in said


def test_another_header_is_refused(tmp_path: Path) -> None:
    (tmp_path / "hours.csv").write_text("date,hours\n", "utf-8")
    rows, problems = read_runs(tmp_path / "hours.csv", "hours.csv")
    assert (rows, [problem.rule for problem in problems]) == ([], ["csv-header"])
