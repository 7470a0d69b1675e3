from pathlib import Path

import pytest

from command_line import read, run
from spindlewise.catalog.yaml_text import read_yaml_text

HEAD = "date,product,cells,counter_h,event\n"
CELLS = "2026-0{},pellamund-orrestad,two alkaline AAA,{}\n"
LOG = (
    ("1-01", "0,fresh"),
    ("2-01", "150,empty"),
    ("2-02", "150,fresh"),
    ("4-01", "310,empty"),
    ("4-02", "310,fresh"),
    ("6-01", "463,empty"),
)


def log(folder: Path, *more: str) -> Path:
    path = folder / "hours.csv"
    path.write_text(HEAD + "".join(CELLS.format(*line) for line in LOG) + "".join(more), "utf-8")
    return path


def test_hours_against_the_claim(tmp_path: Path) -> None:
    result = run("bench", "hours", log(tmp_path))
    assert result.exit_code == 0
    told = " ".join(result.stdout.split())
    assert "Pellamund Orrestad, two alkaline AAA: 154 h in the middle" in told
    assert "Proved under the claim of 200 h" in told


def test_json_and_snippet(tmp_path: Path) -> None:
    found = read("bench", "hours", log(tmp_path))
    assert found["schema"] == "spindlewise bench hours 1"
    assert found["ran"][0]["claim"]["verdict"] == "proved under"
    snippet = run("bench", "hours", log(tmp_path), "--snippet").stdout
    document, problems = read_yaml_text(snippet, "snippet")
    assert problems == []
    assert document is not None
    path = ("pellamund-orrestad", "running_hours", 0)
    assert document.value((*path, "value")) == 154
    assert document.value((*path, "basis")) == {"cells": "two alkaline AAA"}


def test_one_run_is_written_without_a_plus_minus(tmp_path: Path) -> None:
    path = tmp_path / "hours.csv"
    path.write_text(HEAD + "".join(CELLS.format(*line) for line in LOG[:2]), "utf-8")
    out = tmp_path / "out"
    assert run("bench", "hours", path, "--write", out).exit_code == 0
    (written,) = out.iterdir()
    assert written.name == "pellamund-orrestad-hours-2026-02-01.yaml"
    assert "plus_minus: unknown" in written.read_text("utf-8")


def test_a_bad_line_is_told_and_the_others_count(tmp_path: Path) -> None:
    result = run("bench", "hours", log(tmp_path, "2026-07-01,pellamund-orrestad,two alkaline AAA,x,empty\n"))
    assert result.exit_code == 3
    assert "counter_h: found 'x'" in result.stderr
    assert "154 h" in result.stdout


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("--as-of", "2020-01-01"), 4, "nothing ran by 2020-01-01"),
        (("--snippet", "--as-of", "2026-01-15"), 4, "no answer"),
    ],
)
def test_nothing_that_ran_has_no_answer(tmp_path: Path, words: tuple[str, ...], code: int, told: str) -> None:
    result = run("bench", "hours", log(tmp_path), *words)
    assert result.exit_code == code
    assert told in result.stderr


def test_a_file_that_is_not_there_cannot_be_read(tmp_path: Path) -> None:
    assert run("bench", "hours", tmp_path / "hours.csv").exit_code == 5
