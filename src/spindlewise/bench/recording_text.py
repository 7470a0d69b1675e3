"""A recording as CSV text, in the three ways of writing that the demo's recordings show."""

from __future__ import annotations

from datetime import timedelta
from typing import Literal

import numpy as np

from spindlewise.bench.recording import FloatArray, Recording

Way = Literal["elapsed seconds", "dated, decimal comma", "time of day"]


def recording_csv(recording: Recording, way: Way = "elapsed seconds") -> str:
    """Write the recording as CSV with a header, a line a row, nothing where a value is missing.

    - elapsed seconds: `seconds,power_w,cadence_rpm,left_pct,altitude_m`, parted by commas;
    - dated, decimal comma: `time;power;cadence;left;altitude` with ISO timestamps, parted by semicolons;
    - time of day: two lines of remarks, then `clock`, `watts`, `rpm` and `lap`, parted by tabs.

    Raises ValueError where the way needs a start and the recording has none.
    """
    if way == "elapsed seconds":
        columns = [
            ("seconds", _figures(recording.times_s, 3)),
            ("power_w", _figures(recording.power_w, 0)),
            ("cadence_rpm", _figures(recording.cadence_rpm, 0)),
            ("left_pct", _figures(recording.left_share * 100.0, 0)),
            ("altitude_m", _figures(recording.altitude_m, 1)),
        ]
        return _lines(columns, ",")
    if recording.started_at is None:
        raise ValueError(f"{recording.name} has no start, and its times are to be written as moments")
    moments = [recording.started_at + timedelta(seconds=second) for second in recording.times_s.tolist()]
    if way == "dated, decimal comma":
        columns = [
            ("time", [moment.isoformat(timespec="milliseconds") for moment in moments]),
            ("power", [text.replace(".", ",") for text in _figures(recording.power_w, 1)]),
            ("cadence", _figures(recording.cadence_rpm, 0)),
            ("left", [text.replace(".", ",") for text in _figures(recording.left_share * 100.0, 1)]),
            ("altitude", [text.replace(".", ",") for text in _figures(recording.altitude_m, 1)]),
        ]
        return _lines(columns, ";")
    lap = 1 + np.searchsorted(np.array(recording.laps_s), recording.times_s, side="right")
    columns = [
        ("clock", [moment.strftime("%H:%M:%S") for moment in moments]),
        ("watts", _figures(recording.power_w, 0)),
        ("rpm", _figures(recording.cadence_rpm, 0)),
        ("lap", [str(number) for number in lap.tolist()]),
    ]
    return "recorder of the bench\nclock set by hand\n" + _lines(columns, "\t")


def _figures(values: FloatArray, digits: int) -> list[str]:
    """Each value with at most so many digits after the point, without trailing zeros; nothing for NaN."""
    written = []
    for value in values.tolist():
        text = "" if value != value else f"{value:.{digits}f}"
        written.append(text.rstrip("0").rstrip(".") if "." in text else text)
    return written


def _lines(columns: list[tuple[str, list[str]]], mark: str) -> str:
    rows = zip(*(texts for _, texts in columns), strict=True)
    head = mark.join(name for name, _ in columns)
    return "\n".join([head, *(mark.join(row) for row in rows)]) + "\n"
