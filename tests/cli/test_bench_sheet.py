from pathlib import Path

import pytest

from command_line import as_expected, run
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.catalog.reading import read_record

DUO = "tarnquell-liskar-duo"


def test_a_sheet_is_yaml_that_the_ride_reads(tmp_path: Path) -> None:
    result = run("bench", "sheet", DUO, "--beside", "spider", "--beside", "hub", "-o", tmp_path / "ride.yaml")
    assert (result.exit_code, result.stdout) == (0, "")
    sheet, _, problems = read_record(RideSheet, tmp_path / "ride.yaml")
    assert problems == []
    assert sheet is not None
    assert [meter.id for meter in sheet.meters] == ["pedals", "spider", "hub"]
    again = run("bench", "sheet", DUO, "-o", tmp_path / "ride.yaml")
    assert again.exit_code == 5
    ridden = run("bench", "ride", tmp_path)
    assert ridden.exit_code == 3
    assert "put it beside the ride's sheet" in ridden.stderr


def test_the_folder_of_the_ride_is_made(tmp_path: Path) -> None:
    path = tmp_path / "bench" / "rides" / "loop" / "ride.yaml"
    assert run("bench", "sheet", DUO, "-o", path).exit_code == 0
    assert path.is_file()
    (tmp_path / "file").write_text("")
    refused = run("bench", "sheet", DUO, "-o", tmp_path / "file" / "ride.yaml")
    assert (refused.exit_code, "Traceback" in refused.stderr) == (5, False)


def test_it_prints_as_text_and_as_a_page() -> None:
    text = run("bench", "sheet", DUO, "--print", "text")
    as_expected("bench_sheet.txt", text.stdout)
    page = run("bench", "sheet", DUO, "--print", "html")
    assert page.stdout.startswith("<!doctype html>")
    assert "Before the ride: Tarnquell Liskar Duo" in page.stdout


def test_without_a_word_a_spider_stands_beside_it() -> None:
    assert "percent_of: spider\n" in run("bench", "sheet", DUO).stdout


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("tarnquell-liskar-dou",), "did you mean tarnquell-liskar-duo?"),
        (("lommerside-lethery",), "is a plain pedal and reads no power"),
        ((DUO, "--beside", "wheel"), "choose of pedals, crank, spider, hub, trainer"),
        ((DUO, "--print", "pdf"), "choose one of text, html"),
    ],
)
def test_wrong_usage_says_what_would_be_right(words: tuple[str, ...], told: str) -> None:
    result = run("bench", "sheet", *words)
    assert result.exit_code == 2
    assert told in result.stderr
