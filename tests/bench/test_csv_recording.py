from datetime import UTC, date, datetime

import numpy as np
import pytest

from spindlewise.bench.csv_columns import BalanceColumn, CsvColumns, TimeColumn
from spindlewise.bench.csv_recording import csv_recording, read_csv_recording

nan = float("nan")
SECONDS = TimeColumn(column="s", written_as="seconds")
PLAIN = CsvColumns(time=SECONDS, power="w")


def read(text, columns=PLAIN, day=None):
    raw = text if isinstance(text, bytes) else text.encode()
    return csv_recording(raw, "ride/a.csv", "a", columns, day)


def told(problems):
    return [(p.level, p.rule, p.place.line, p.place.column) for p in problems]


def refused(text, columns=PLAIN):
    recording, problems = read(text, columns)
    assert recording is None
    return problems[-1]


def test_every_column_that_is_described_is_read():
    columns = CsvColumns(
        time=SECONDS,
        power="w",
        cadence="rpm",
        altitude="m",
        lap="lap",
        balance=BalanceColumn(column="L", written_as="left percent"),
    )
    recording, problems = read("s,w,rpm,m,lap,L\n0,200,90,240,1,48\n1,,,,1,\n2,210,91,241,2,50\n", columns)
    assert problems == []
    assert recording.times_s.tolist() == [0, 1, 2]
    np.testing.assert_array_equal(recording.power_w, [200, nan, 210])
    np.testing.assert_array_equal(recording.cadence_rpm, [90, nan, 91])
    np.testing.assert_array_equal(recording.altitude_m, [240, nan, 241])
    np.testing.assert_array_equal(recording.left_share, [0.48, nan, 0.5])
    assert recording.laps_s == (2,)
    assert len(recording.sha256) == 64


def test_a_european_file_with_semicolons_and_decimal_commas():
    columns = CsvColumns(
        time=TimeColumn(column="Zeit", written_as="seconds"),
        power="Watt",
        delimiter=";",
        decimal=",",
        encoding="cp1252",
    )
    recording, problems = read("Zeit;Watt;Höhe\r\n0,5;200,25;1\r\n1,5;-;2\r\n".encode("cp1252"), columns)
    assert problems == []
    assert recording.times_s.tolist() == [0.5, 1.5]
    np.testing.assert_array_equal(recording.power_w, [200.25, nan])


def test_a_point_in_a_decimal_comma_is_a_thousands_mark_and_refused():
    columns = CsvColumns(time=SECONDS, power="w", delimiter=";", decimal=",")
    recording, problems = read("s;w\n0;1.250\n1;250\n", columns)
    np.testing.assert_array_equal(recording.power_w, [nan, 250])
    assert told(problems) == [("warning", "recording-value", 2, 3)]
    assert "'1.250' is no number" in problems[0].message


def test_dates_keep_their_decimal_point_beside_decimal_commas():
    columns = CsvColumns(
        time=TimeColumn(column="t", written_as="ISO timestamps"), power="w", delimiter=";", decimal=","
    )
    recording, _ = read("t;w\n2025-10-18T09:30:00.500Z;200,5\n2025-10-18T09:30:01.500Z;201\n", columns)
    assert recording.started_at == datetime(2025, 10, 18, 9, 30, 0, 500_000, tzinfo=UTC)
    assert recording.power_w.tolist() == [200.5, 201]


def test_a_file_without_header_after_remarks():
    columns = CsvColumns(
        time=TimeColumn(column=1, written_as="time of day"),
        power=2,
        header=False,
        skip_lines=2,
        delimiter="tab",
    )
    recording, problems = read("made by\nhand\n10:00:00\t200\n10:00:01\t201\n", columns, date(2025, 10, 18))
    assert problems == []
    assert recording.started_at == datetime(2025, 10, 18)  # noqa: DTZ001
    assert recording.times_s[0] == 36000


def test_both_sides_give_the_power_and_the_left_share():
    columns = CsvColumns(time=SECONDS, left_power="l", right_power="r")
    recording, _ = read("s,l,r\n0,90,110\n1,0,0\n2,,100\n", columns)
    np.testing.assert_array_equal(recording.power_w, [200, 0, nan])
    np.testing.assert_array_equal(recording.left_share, [0.45, nan, nan])


def test_one_side_is_doubled_where_the_sheet_says_so():
    columns = CsvColumns(time=SECONDS, left_power="l", double_one_side=True)
    recording, _ = read("s,l\n0,90\n1,100\n", columns)
    assert recording.power_w.tolist() == [180, 200]
    assert np.isnan(recording.left_share).all()


@pytest.mark.parametrize(
    ("written", "text", "share"),
    [
        ("left percent", "47", 0.47),
        ("right percent", "47", 0.53),
        ("left share", ".47", 0.47),
        ("right share", ".4", 0.6),
    ],
)
def test_the_balance_says_whose_it_is(written, text, share):
    columns = CsvColumns(time=SECONDS, power="w", balance=BalanceColumn(column="b", written_as=written))
    recording, _ = read(f"s,w,b\n0,200,{text}\n1,200,{text}\n", columns)
    np.testing.assert_allclose(recording.left_share, share)


def test_values_that_cannot_be_read_are_placed_and_the_rest_counted():
    rows = "".join(f"{i},{w}\n" for i, w in enumerate(["200", "x1", "x2", "x3", "x4", "x5", "1_0", "٣"]))
    recording, problems = read("s,w\n" + rows)
    assert told(problems) == [
        ("warning", "recording-value", 3, 3),
        ("warning", "recording-value", 4, 3),
        ("warning", "recording-value", 5, 3),
        ("warning", "recording-value", 6, 1),
    ]
    assert "4 more values" in problems[-1].message
    assert np.isfinite(recording.power_w).sum() == 1


@pytest.mark.parametrize("text", ["inf", "1e999", "-inf", "1,0"])
def test_no_number_that_is_not_finite(text):
    recording, problems = read(f's,w\n0,200\n1,"{text}"\n')
    np.testing.assert_array_equal(recording.power_w, [200, nan])
    assert problems[0].rule == "recording-value"


def test_what_stands_for_nothing_is_stated():
    recording, problems = read("s,w\n0,200\n1,NaN\n2, \n3,null\n")
    assert problems == []
    assert np.isfinite(recording.power_w).sum() == 1
    strict = CsvColumns(time=SECONDS, power="w", missing=("off",))
    recording, problems = read("s,w\n0,200\n1,off\n2,\n", strict)
    np.testing.assert_array_equal(recording.power_w, [200, nan, nan])
    assert told(problems) == [("warning", "recording-value", 4, 3)]


def test_times_that_cannot_be_read_are_placed():
    recording, problems = read("s,w\n0,200\nsoon,201\n2,202\n")
    assert recording.times_s.tolist() == [0, 2]
    assert told(problems) == [("warning", "recording-value", 3, 1)]
    assert "is no time written as seconds" in problems[0].message


def test_a_last_row_that_breaks_off_is_said_and_left_out():
    recording, problems = read("s,w\n0,200\n1,201\n2")
    assert recording.times_s.tolist() == [0, 1]
    assert told(problems) == [("warning", "recording-truncated", 4, 1)]


def test_short_rows_are_left_out_and_counted():
    recording, problems = read("s,w\n0,200\n\n1\n2\n3\n4\n5,205\n")
    assert recording.times_s.tolist() == [0, 5]
    assert told(problems) == [("warning", "recording-row", line, 1) for line in (4, 5, 6, 7)]
    assert problems[-1].message == "1 more rows have too few fields and are left out"


def test_a_last_row_without_its_line_end_counts_if_it_is_whole():
    recording, problems = read("s,w\n0,200\n1,201")
    assert problems == []
    assert recording.times_s.tolist() == [0, 1]


def test_more_fields_than_the_header_do_no_harm():
    recording, problems = read("s,w\n0,200,\n1,201,\n")
    assert problems == []
    assert recording.power_w.tolist() == [200, 201]


def test_columns_that_are_not_there():
    problem = refused("s,watts\n0,200\n", CsvColumns(time=SECONDS, power="watt"))
    assert (problem.rule, problem.place.line) == ("recording-column", 1)
    assert problem.message == "has no column 'watt' for power"
    assert problem.tip == "did you mean 'watts'?"
    assert "real delimiter" in refused("s;w\n0;200\n").tip
    assert "2 columns 'w'" in refused("s,w,w\n0,1,2\n").message
    columns = CsvColumns(time=TimeColumn(column=1, written_as="seconds"), power=3)
    assert "has 2 columns; power is to be in column 3" in refused("s,w\n0,200\n", columns).message
    assert refused("s,x,y\n0,1,2\n", CsvColumns(time=SECONDS, power="power")).tip == ""


@pytest.mark.parametrize(
    ("raw", "rule"),
    [
        (b"\x0e\x20\x54\x08\x00\x00\x00\x00.FIT\x00\x00", "recording-foreign"),
        (b"s,w\n0,\xff\n", "recording-not-text"),
        (b"PK\x03\x04\0\0\0\0\n", "recording-not-text"),
        (b"  \n", "recording-empty"),
        (b's,w\n0,"200\n1,201\n', "recording-not-csv"),
        (b"s,w\n0," + b"1" * 200_000 + b"\n", "recording-not-csv"),
        (b"s,w\n0,\n1,\n", "recording-no-power"),
        (b"s,w\n0,200\n", "recording-no-time"),
        (b"s,w\n", "recording-no-power"),
    ],
)
def test_foreign_and_damaged_files_are_refused_each_with_its_reason(raw, rule):
    assert refused(raw).rule == rule


def test_fewer_lines_than_are_to_be_skipped():
    assert refused("a\nb", CsvColumns(time=SECONDS, power="w", skip_lines=5)).rule == "recording-empty"


def test_the_place_of_bytes_that_are_no_text():
    assert refused(b"s,w\n0,200\n1,\xfe\n").place.line == 3
    assert refused(b"s,w\n0,200\n\0,1\n").place.line == 3


def test_a_byte_order_mark_says_nothing():
    recording, problems = read("\ufeffs,w\n0,200\n1,201\n")
    assert problems == []
    assert recording.power_w.tolist() == [200, 201]
    utf16 = CsvColumns(time=SECONDS, power="w", encoding="utf-16")
    recording, _ = read("s,w\n0,200\n1,201\n".encode("utf-16"), utf16)
    assert recording.power_w.tolist() == [200, 201]


def test_a_file_is_read_from_the_disk(tmp_path):
    path = tmp_path / "a.csv"
    path.write_text("s,w\n0,200\n1,201\n")
    recording, problems = read_csv_recording(path, "a.csv", "a", PLAIN)
    assert problems == []
    assert recording.source == "a.csv"
    assert read_csv_recording(tmp_path / "b.csv", "b.csv", "b", PLAIN)[1][0].rule == "recording-missing"
