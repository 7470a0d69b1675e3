"""Lines of the bench about recordings: a ride's report, a decoder, an archive of many hours."""

import io
import shutil
import time
from datetime import UTC, datetime
from pathlib import Path

from bench import fit_bytes
from bench.sheets import meter_data, sheet_data
from speed.timing import ROOT, Line, by_turns, command, shown, workshop
from spindlewise.bench.csv_columns import CsvColumns, TimeColumn
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
METERS = (
    Meter("pedals", noise_w=3),
    Meter("spider", noise_w=3, late_s=2.4, clock_ppm=60, dropouts=(Dropout(5000, 12),)),
    Meter("hub", noise_w=4, loss_pct=2.5, late_s=-7, dropouts=(Dropout(9000, 20, "missing"),)),
)
ARCHIVED = ROOT / "catalog" / "bench" / "rides" / "2025-10-18-three-meters"
ARCHIVE_RIDES = (60, 300)
"""Rides of forty minutes: 40 hours, and 200."""


def ride_report() -> list[Line]:
    """Five hours of three meters: aligned, mended, cut into segments and compared, against reading them."""
    from spindlewise.answer.bench_ride import compared
    from spindlewise.bench.csv_recording import csv_recording
    from spindlewise.bench.recording_text import recording_csv
    from spindlewise.bench.ride_sheet import RideSheet

    truth, start = ride(HOUR * 5, 1), datetime(2025, 10, 18, 9, tzinfo=UTC)
    texts = [recording_csv(record(truth, m, 1, start), "dated, decimal comma").encode() for m in METERS]
    meters = [meter_data(m.name, what="pedals" if m.name == "pedals" else m.name) for m in METERS]
    sheet = RideSheet.model_validate(sheet_data(*meters))

    def read() -> tuple:
        return tuple(
            csv_recording(text, "a.csv", meter.name, COLUMNS)[0]
            for text, meter in zip(texts, METERS, strict=True)
        )

    recordings = read()

    def whole() -> None:
        if compared(sheet, read()).three is None:
            raise SystemExit("three meters should be compared")

    if None in recordings:
        raise SystemExit("the recordings should be read")
    mine, peer = by_turns(whole, read, 5, clock=time.process_time)
    what = "report of a ride, 5 h x 3 recordings, reading included"
    return [Line(what, shown(mine), f"reading and decoding {shown(peer)}", f"{mine / peer:.2f}", "3")]


def fit_reading() -> list[Line]:
    """An hour as FIT, against the decoder that it is read with, which makes no recording of its frames."""
    import fitdecode

    from spindlewise.bench.fit_recording import fit_recording

    truth = record(ride(HOUR, 1), Meter("pedals", noise_w=3), 1)
    raw = fit_bytes.ride(
        truth.power_w.astype(int).tolist(),
        cadence=truth.cadence_rpm.astype(int).tolist(),
        altitude=((truth.altitude_m + 500) * 5).astype(int).tolist(),
    )

    def decoder_alone() -> None:
        with fitdecode.FitReader(io.BytesIO(raw)) as reader:
            sum(1 for _ in reader)

    def ours() -> None:
        if fit_recording(raw, "a.fit", "a")[1]:
            raise SystemExit("the recording should be read")

    mine, peer = by_turns(ours, decoder_alone, 5, clock=time.process_time)
    what = "reading FIT, an hour"
    return [Line(what, shown(mine), f"the decoder alone {shown(peer)}", f"{mine / peer:.2f}", "1.3")]


def archived(folder: Path, rides: int) -> Path:
    """So many copies of a ride, each under a name of its own."""
    sheet = (ARCHIVED / "ride.yaml").read_text("utf-8")
    for number in range(rides):
        to = Path(shutil.copytree(ARCHIVED, folder / f"ride-{number:03}"))
        named = sheet.replace(f"\nid: {ARCHIVED.name}\n", f"\nid: ride-{number:03}\n")
        if named == sheet:
            raise SystemExit("the sheet's id should have been changed")
        (to / "ride.yaml").write_text(named, "utf-8")
    return folder


def archive() -> list[Line]:
    """A folder of rides by one command: five times as many hours in the same memory."""
    found = []
    for rides in ARCHIVE_RIDES:
        folder = archived(workshop() / f"archive-{rides}", rides)
        found.append(command("--catalog", str(ROOT / "catalog"), "bench", "ride", str(folder))())
        shutil.rmtree(folder)
    few, many = found
    return [
        Line(
            f"`bench ride` of {ARCHIVE_RIDES[1]} rides x 3 recordings, 200 h",
            f"{shown(many.seconds)}, {many.memory_mib:.0f} MiB",
            f"{ARCHIVE_RIDES[0]} of them {shown(few.seconds)}, {few.memory_mib:.0f} MiB",
            f"{many.seconds / few.seconds:.2f} x the time, "
            f"{many.memory_mib / few.memory_mib:.2f} x the memory",
            "5 x, 1 x",
        )
    ]
