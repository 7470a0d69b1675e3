"""The recordings of a ride's sheet: each read by itself, so that a bad file leaves the others comparable."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from spindlewise.bench.csv_recording import read_csv_recording
from spindlewise.bench.fit_recording import read_fit_recording
from spindlewise.bench.recording import Recording
from spindlewise.bench.ride_sheet import CsvFile, Meter, RideSheet
from spindlewise.problems import Place, Problem


@dataclass(frozen=True, slots=True, eq=False)
class RideRecordings:
    """What could be read, in the order of the sheet, which meters could not, and all problems."""

    recordings: tuple[Recording, ...]
    unread: tuple[str, ...]
    problems: tuple[Problem, ...]


def read_ride(sheet: RideSheet, folder: Path, shown: str) -> RideRecordings:
    """Read the recordings beside the sheet; each is named by its meter's id.

    `shown` is the folder's name in problems. Never raises for what is in the files.
    """
    recordings, unread, problems = [], [], []
    for meter, recording, found in each_recording(sheet, folder, shown):
        problems += found
        if recording is None:
            unread.append(meter.id)
        else:
            recordings.append(recording)
    return RideRecordings(tuple(recordings), tuple(unread), tuple(problems))


def each_recording(
    sheet: RideSheet, folder: Path, shown: str
) -> Iterator[tuple[Meter, Recording | None, list[Problem]]]:
    """Read one recording after the other, so that a long ride need not be held whole."""
    for meter in sheet.meters:
        file = meter.recording
        path, name = folder / file.file, f"{shown}/{file.file}"
        if isinstance(file, CsvFile):
            recording, problems = read_csv_recording(path, name, meter.id, file.columns, sheet.date)
        else:
            recording, problems = read_fit_recording(path, name, meter.id, file.power_field)
        if recording is not None and file.sha256 not in ("unknown", recording.sha256):
            told = f"is not the file that the sheet means: its SHA-256 is {recording.sha256}"
            tip = "put the recording back, or write the new SHA-256 if it is right"
            problems = [*problems, Problem(Place(name, 1, 1), "error", "recording-changed", told, tip)]
            recording = None
        yield meter, recording, problems
