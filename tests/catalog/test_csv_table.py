from pathlib import Path

import pytest

from spindlewise.catalog.csv_table import read_table, table_of
from spindlewise.problems import render

REQUIRED, OPTIONAL = ("date", "reading_g"), ("tare_g", "calibration_g")


def said(raw: bytes) -> str:
    return render(table_of(raw, "w.csv", REQUIRED, OPTIONAL)[1], "plain")


@pytest.mark.parametrize(
    ("header", "columns"),
    [
        (b"date,reading_g", REQUIRED),
        (b"date,reading_g,calibration_g", (*REQUIRED, "calibration_g")),
        (b"date,reading_g,calibration_g,tare_g", (*REQUIRED, "calibration_g", "tare_g")),
        (b"\xef\xbb\xbfdate,reading_g,tare_g\r", (*REQUIRED, "tare_g")),
    ],
)
def test_optional_columns_stand_behind_the_required_ones_in_any_order(
    header: bytes, columns: tuple[str, ...]
) -> None:
    row = ",".join("1" for _ in columns).encode()
    table, problems = table_of(header + b"\n" + row + b"\n", "w.csv", REQUIRED, OPTIONAL)
    assert problems == []
    assert table is not None
    assert table.header == columns
    assert table.rows[0].fields == ("1",) * len(columns)


def test_a_last_line_without_its_end_counts() -> None:
    table, problems = table_of(b"date,reading_g\n2026-01-01,404", "w.csv", REQUIRED, OPTIONAL)
    assert (problems, table and len(table.rows)) == ([], 1)


def test_a_column_that_is_none_is_named_where_it_stands() -> None:
    assert said(b"date,reading_g,tara_g\n") == (
        "w.csv:1:16: error: 'tara_g' is no column of this table; did you mean tare_g? after the required "
        "columns there may be: tare_g, calibration_g (csv-header)\n"
    )
    assert "w.csv:1:23: error: 'tare_g' stands there twice" in said(b"date,reading_g,tare_g,tare_g\n")
    assert "'' is no column of this table" in said(b"date,reading_g,\n")


def test_another_header_is_refused_with_the_right_one() -> None:
    assert said(b"day,grams\n") == (
        "w.csv:1:1: error: the header is 'day,grams'; write date,reading_g (csv-header)\n"
    )
    assert table_of(b"day,grams\n", "w.csv", REQUIRED, OPTIONAL)[0] is None
    assert "is empty" in said(b"")


def test_bad_lines_are_told_and_the_others_kept() -> None:
    table, problems = table_of(b"date,reading_g\na\nb,c\n", "w.csv", REQUIRED, OPTIONAL)
    assert table is not None
    assert [row.fields for row in table.rows] == [("b", "c")]
    assert [problem.rule for problem in problems] == ["field-count"]


def test_a_file_that_is_not_there_is_a_problem(tmp_path: Path) -> None:
    table, problems = read_table(tmp_path / "w.csv", "w.csv", REQUIRED, OPTIONAL)
    assert table is None
    assert [problem.rule for problem in problems] == ["missing-file"]
    (tmp_path / "w.csv").write_bytes(b"date,reading_g\n1,2\n")
    table, problems = read_table(tmp_path / "w.csv", "w.csv", REQUIRED, OPTIONAL)
    assert table is not None
    assert problems == []
