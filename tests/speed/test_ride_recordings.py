"""Five hours of three recordings: working on them takes less than three times the time of reading them.

Reading FIT takes little more than the decoder takes alone.
"""

import io
import time
from datetime import UTC, datetime

import numpy as np
import pytest

from bench import fit_bytes
from spindlewise.bench.alignment import align
from spindlewise.bench.csv_columns import CsvColumns, TimeColumn
from spindlewise.bench.csv_recording import csv_recording
from spindlewise.bench.fit_recording import fit_recording
from spindlewise.bench.gaps import find_dropouts
from spindlewise.bench.recording_text import recording_csv
from spindlewise.bench.segments import find_segments
from spindlewise.bench.stuck import find_repeats
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

HOUR = [
    Stretch(600, 150), Stretch(600, 220), Stretch(20, 0, 0), Stretch(900, 265, 75, 150), Stretch(90, 0, 0),
    *[Stretch(30, 390), Stretch(30, 150)] * 10, Stretch(12, 850), Stretch(778, 190),
]  # fmt: skip
COLUMNS = CsvColumns(
    time=TimeColumn(column="time", written_as="ISO timestamps"),
    power="power",
    cadence="cadence",
    altitude="altitude",
    delimiter=";",
    decimal=",",
)


def timed(work, rounds=3):
    best = float("inf")
    for _ in range(rounds):
        start = time.perf_counter()
        result = work()
        best = min(best, time.perf_counter() - start)
    return best, result


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

    def read():
        return [
            csv_recording(text, "a.csv", meter.name, COLUMNS)[0]
            for text, meter in zip(texts, meters, strict=True)
        ]

    def process(recordings):
        aligned = align(recordings, "pedals")
        for row, name in enumerate(aligned.names):
            others = np.arange(3) != row
            find_dropouts(
                name, aligned.seconds, aligned.power_w[row], aligned.power_w[others],
                aligned.written[row], aligned.written[others],
            )  # fmt: skip
            find_repeats(aligned.seconds, aligned.power_w[row], aligned.power_w[others])
        find_segments(aligned.seconds, aligned.power_w[0], aligned.altitude_m[0])
        return aligned

    reading_s, recordings = timed(read)
    processing_s, aligned = timed(lambda: process(recordings))
    assert aligned.drifts[1].proved
    assert processing_s < 3 * reading_s, f"{processing_s:.3f} s after {reading_s:.3f} s of reading"


@pytest.mark.slow
def test_reading_fit_takes_little_more_than_the_decoder_alone():
    fitdecode = pytest.importorskip("fitdecode")
    truth = record(ride(HOUR, 1), Meter("pedals", noise_w=3), 1)
    raw = fit_bytes.ride(
        truth.power_w.astype(int).tolist(),
        cadence=truth.cadence_rpm.astype(int).tolist(),
        altitude=((truth.altitude_m + 500) * 5).astype(int).tolist(),
    )

    def decoder_alone():
        with fitdecode.FitReader(io.BytesIO(raw)) as reader:
            return sum(1 for _ in reader)

    decoding_s, frames = timed(decoder_alone)
    ours_s, (recording, problems) = timed(lambda: fit_recording(raw, "a.fit", "a"))
    assert problems == []
    assert frames > len(recording.times_s) == len(truth.times_s)
    assert ours_s < 1.3 * decoding_s, f"{ours_s:.3f} s against {decoding_s:.3f} s"
