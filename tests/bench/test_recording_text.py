from datetime import UTC, date, datetime

import numpy as np
import pytest

from spindlewise.bench.csv_columns import BalanceColumn, CsvColumns, TimeColumn
from spindlewise.bench.csv_recording import csv_recording
from spindlewise.bench.recording import recording_of
from spindlewise.bench.recording_text import recording_csv

nan = float("nan")
ONE = recording_of(
    "a",
    [0, 1, 2.5],
    [200, nan, 1000],
    cadence_rpm=[90, 91, 100],
    left_share=[0.48, nan, 0.5],
    altitude_m=[240, 240.5, 241],
    started_at=datetime(2025, 10, 18, 9, 30, tzinfo=UTC),
    laps_s=(1.0,),
)


def test_elapsed_seconds():
    assert recording_csv(ONE) == (
        "seconds,power_w,cadence_rpm,left_pct,altitude_m\n0,200,90,48,240\n1,,91,,240.5\n2.5,1000,100,50,241\n"
    )


def test_dated_with_decimal_commas():
    assert recording_csv(ONE, "dated, decimal comma") == (
        "time;power;cadence;left;altitude\n"
        "2025-10-18T09:30:00.000+00:00;200;90;48;240\n"
        "2025-10-18T09:30:01.000+00:00;;91;;240,5\n"
        "2025-10-18T09:30:02.500+00:00;1000;100;50;241\n"
    )


def test_time_of_day_with_laps():
    assert recording_csv(ONE, "time of day") == (
        "recorder of the bench\nclock set by hand\n"
        "clock\twatts\trpm\tlap\n09:30:00\t200\t90\t1\n09:30:01\t\t91\t2\n09:30:02\t1000\t100\t2\n"
    )


@pytest.mark.parametrize("way", ["dated, decimal comma", "time of day"])
def test_moments_need_a_start(way):
    with pytest.raises(ValueError, match="has no start"):
        recording_csv(recording_of("a", [0], [1]), way)


def test_what_is_written_is_read_again():
    columns = CsvColumns(
        time=TimeColumn(column="time", written_as="ISO timestamps"),
        power="power",
        cadence="cadence",
        altitude="altitude",
        balance=BalanceColumn(column="left", written_as="left percent"),
        delimiter=";",
        decimal=",",
    )
    read, problems = csv_recording(recording_csv(ONE, "dated, decimal comma").encode(), "a.csv", "a", columns)
    assert problems == []
    assert read.started_at == ONE.started_at
    for column in ("times_s", "power_w", "cadence_rpm", "left_share", "altitude_m"):
        np.testing.assert_allclose(getattr(read, column), getattr(ONE, column))
    columns = CsvColumns(
        time=TimeColumn(column="clock", written_as="time of day"),
        power="watts",
        lap="lap",
        delimiter="tab",
        skip_lines=2,
    )
    read, _ = csv_recording(recording_csv(ONE, "time of day").encode(), "a", "a", columns, date(2025, 10, 18))
    assert read.laps_s == (34201.0,)
