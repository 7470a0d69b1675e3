"""Finishing a recording: rows in order of time, implausible values out, and nothing left unsaid."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime

import numpy as np

from spindlewise.bench.recording import FloatArray, Recording, implausible, recording_of
from spindlewise.bench.row_order import row_order
from spindlewise.problems import Place, Problem

_SPOKEN = {
    "power_w": "power",
    "cadence_rpm": "cadence",
    "left_share": "left share",
    "altitude_m": "altitude",
}


@dataclass(slots=True)
class Rows:
    """What a file's rows say, as they stand: times in seconds, NaN for what a row does not say."""

    times_s: FloatArray
    power_w: FloatArray
    cadence_rpm: FloatArray | None = None
    left_share: FloatArray | None = None
    altitude_m: FloatArray | None = None
    lap_begins: list[int] = field(default_factory=list)
    """The rows with which a lap begins, the first lap not counted."""


def finish(
    rows: Rows,
    name: str,
    started_at: datetime | None,
    shown: str,
    sha256: str,
    problems: Sequence[Problem],
    lines: Sequence[int] | None = None,
) -> tuple[Recording | None, list[Problem]]:
    """The recording, with all problems in it as well; None where no row has a power or fewer than two a time.

    Rows are put in order as `row_order` says. `lines` gives each row's line in the file, for the places.
    """
    found = list(problems)

    def refuse(rule: str, message: str, tip: str) -> tuple[None, list[Problem]]:
        return None, [*found, Problem(Place(shown, 1, 1), "error", rule, message, tip)]

    def warn(row: int, rule: str, message: str, tip: str = "") -> None:
        line = 1 if lines is None else lines[row]
        found.append(Problem(Place(shown, line, 1), "warning", rule, message, tip))

    if not np.isfinite(rows.power_w).any():
        return refuse("recording-no-power", "holds no power", "name the column or field that has it")
    order = row_order(rows.times_s)
    if order.kept.sum() < 2:
        told = "has fewer than two rows with a time that can be read"
        return refuse("recording-no-time", told, "check how the times are written")
    lost = ~order.kept & np.isfinite(rows.times_s)
    first_lost = int(np.argmax(lost))
    if order.beyond_a_jump:
        told = f"the clock jumps by more than a day; {order.beyond_a_jump} rows beyond the jump are left out"
        warn(first_lost, "recording-clock-jump", told)
    if order.out_of_order:
        told = f"the time goes backwards; {order.out_of_order} rows are left out"
        warn(first_lost, "recording-time-backwards", told)
    kept = {}
    for column, spoken in _SPOKEN.items():
        values: FloatArray | None = getattr(rows, column)
        if values is not None:
            kept[column] = _plausible(column, spoken, values, warn)[order.kept]
    if not np.isfinite(kept["power_w"]).any():
        told = "holds no power that could be true"
        return refuse("recording-no-power", told, "check the column and its unit")
    recording = recording_of(
        name,
        rows.times_s[order.kept],
        kept["power_w"],
        cadence_rpm=kept.get("cadence_rpm"),
        left_share=kept.get("left_share"),
        altitude_m=kept.get("altitude_m"),
        started_at=started_at,
        laps_s=tuple(float(rows.times_s[i]) for i in rows.lap_begins if order.kept[i]),
        source=shown,
        sha256=sha256,
        problems=tuple(found),
    )
    return recording, found


def _plausible(
    column: str, spoken: str, values: FloatArray, warn: Callable[[int, str, str, str], None]
) -> FloatArray:
    wild = implausible(column, values)
    if not wild.any():
        return values
    told = f"{spoken}: {int(wild.sum())} values that no ride has are left out"
    warn(int(np.argmax(wild)), "recording-implausible", told, "check the column and its unit")
    return np.where(wild, np.nan, values)
