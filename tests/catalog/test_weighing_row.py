from datetime import date
from pathlib import Path

import pytest

from spindlewise.catalog.weighing_row import HEADER, WeighingRow, read_weighings
from spindlewise.problems import render

ROOT = Path(__file__).parents[2]
GOOD = "2026-03-12,heron-one,pair,in,off,404,counter scale A,1"
MORE = ",tare_g,correction_g,calibration_g"


def read(folder: Path, *lines: str, more: str = "") -> tuple[list[WeighingRow], str]:
    path = folder / "weighings.csv"
    path.write_text("\n".join([",".join(HEADER) + more, *lines, ""]), "utf-8")
    rows, problems = read_weighings(path, "weighings.csv")
    return rows, render(problems, "plain")


def test_a_reading_is_read_whole(tmp_path: Path) -> None:
    rows, said = read(tmp_path, GOOD)
    assert said == ""
    (row,) = rows
    assert (row.date, row.product, row.what) == (date(2026, 3, 12), "heron-one", "pair")
    assert (row.batteries, row.cleats, row.reading_g, row.resolution_g) == ("in", "off", 404.0, 1.0)
    assert (row.tare_g, row.correction_g, row.calibration_g) == (None, None, None)
    assert (row.text, row.place.line, row.place.column) == (GOOD, 2, 34)


def test_tare_correction_and_calibration_may_follow(tmp_path: Path) -> None:
    rows, said = read(tmp_path, f"{GOOD},12.5,-0.3,0.8", f"{GOOD},,,0", more=MORE)
    assert said == ""
    assert [(r.tare_g, r.correction_g, r.calibration_g) for r in rows] == [
        (12.5, -0.3, 0.8),
        (None, None, 0.0),
    ]


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (GOOD.replace(",pair,", ",both,"), "what: found 'both'; allowed: pair, one pedal, left, right"),
        (GOOD.replace(",in,", ",inn,"), "batteries: found 'inn'"),
        (GOOD.replace(",off,", ",of,"), "cleats: found 'of'"),
        (GOOD.replace("404", "-404"), "reading_g: found -404; write more than 0"),
        (GOOD.replace("404", "404 g"), "reading_g: found '404 g', which is not a plain number"),
        (GOOD.removesuffix("1") + "0", "resolution_g: found 0"),
        (GOOD.replace("2026-03-12", "12.3.2026"), "date: found '12.3.2026', which is no date"),
        (GOOD.replace("heron-one", ""), "product: is empty"),
        (GOOD.replace("counter scale A", ""), "scale: is empty"),
    ],
)
def test_a_line_that_is_wrong_is_told_and_left_out(tmp_path: Path, line: str, told: str) -> None:
    rows, said = read(tmp_path, line, GOOD)
    assert len(rows) == 1
    assert said.startswith("weighings.csv:2:")
    assert told in said


@pytest.mark.parametrize(
    ("end", "told"),
    [
        (",0,,", "tare_g: found 0"),
        (",,+1,", "correction_g: found '+1', which is not a plain number"),
        (",,,-1", "calibration_g: found -1; write 0 or more"),
    ],
)
def test_optional_columns_are_held_to_numbers_too(tmp_path: Path, end: str, told: str) -> None:
    rows, said = read(tmp_path, GOOD + end, more=MORE)
    assert rows == []
    assert told in said


def test_the_demo_is_read_without_a_word() -> None:
    rows, problems = read_weighings(ROOT / "catalog" / "bench" / "weighings.csv", "weighings.csv")
    assert problems == []
    assert len(rows) == 115
