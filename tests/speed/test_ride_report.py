"""The whole report of five hours and three recordings takes less than three times what reading them takes."""

from datetime import UTC, datetime

import pytest

from bench.sheets import meter_data, sheet_data
from speed.test_ride_recordings import COLUMNS, HOUR, timed
from spindlewise.answer.bench_ride import compared
from spindlewise.bench.csv_recording import csv_recording
from spindlewise.bench.recording_text import recording_csv
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.bench.synthetic_ride import Dropout, Meter, record, ride


@pytest.mark.slow
def test_a_five_hour_ride_of_three_recordings():
    truth = ride(HOUR * 5, 1)
    meters = [
        Meter("pedals", noise_w=3),
        Meter("spider", noise_w=3, late_s=2.4, clock_ppm=60, dropouts=(Dropout(5000, 12),)),
        Meter("hub", noise_w=4, loss_pct=2.5, late_s=-7, dropouts=(Dropout(9000, 20, "missing"),)),
    ]
    start = datetime(2025, 10, 18, 9, tzinfo=UTC)
    texts = [
        recording_csv(record(truth, meter, 1, start), "dated, decimal comma").encode() for meter in meters
    ]
    data = [meter_data(m.name, what="pedals" if m.name == "pedals" else m.name) for m in meters]
    sheet = RideSheet.model_validate(sheet_data(*data))

    def read():
        return tuple(
            csv_recording(text, "a.csv", meter.name, COLUMNS)[0]
            for text, meter in zip(texts, meters, strict=True)
        )

    reading_s, recordings = timed(read, 5)
    report_s, report = timed(lambda: compared(sheet, recordings), 5)
    assert report.three is not None
    assert report_s < 3 * reading_s, f"{report_s:.3f} s after {reading_s:.3f} s of reading"
