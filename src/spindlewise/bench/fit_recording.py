"""A recording out of a FIT file, through the decoder of the extra `fit`, or what is wrong with the file."""

from __future__ import annotations

import io
import struct
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from importlib import import_module
from pathlib import Path
from typing import Any

import numpy as np

from spindlewise.bench.file_bytes import read_bytes, sha256_of
from spindlewise.bench.finished import Rows, finish
from spindlewise.bench.recording import FloatArray, Recording
from spindlewise.problems import Place, Problem

_EPOCH = datetime(1989, 12, 31, tzinfo=UTC)
_FIRST_DATE_S = 0x10000000  # below it a time counts from when the device was switched on
_RIGHT_SIDE_KNOWN = 0x80
_SHARE_BITS = 0x7F
_DAMAGE = (
    ValueError, LookupError, TypeError, ArithmeticError, AttributeError, AssertionError, struct.error
)  # fmt: skip
"""What the decoder lets through where a damaged definition makes no sense."""


def read_fit_recording(
    path: Path, shown: str, name: str, power_field: str = "power"
) -> tuple[Recording | None, list[Problem]]:
    """The recording in the file and the problems with it; None where there is nothing to compare.

    `power_field` is the field of the records that holds this meter's power: `power`, or a developer field
    where one device wrote several meters. Never raises for what is in the file: of a truncated or damaged
    file the records before the damage are kept, and it is said.
    """
    raw, problems = read_bytes(path, shown)
    if raw is None:
        return None, problems
    return fit_recording(raw, shown, name, power_field)


def fit_recording(
    raw: bytes, shown: str, name: str, power_field: str = "power"
) -> tuple[Recording | None, list[Problem]]:
    """The same for the bytes of a file."""
    if len(raw) < 12 or raw[8:12] != b".FIT":
        return None, [
            _said(shown, "error", "fit-header", "has no FIT header", "write format: CSV if it is one")
        ]
    try:
        fitdecode: Any = import_module("fitdecode")
    except ImportError:
        tip = "pip install 'spindlewise[fit]'"
        return None, [_said(shown, "error", "fit-reader", "FIT files need the extra `fit`", tip)]
    rows = _Rows(power_field)
    problems = []
    try:
        for frame in _messages(fitdecode, raw):
            rows.take(frame)
    except fitdecode.FitHeaderError as error:
        problems.append(_said(shown, "error", "fit-header", f"the header cannot be read: {error}"))
    except fitdecode.FitEOFError:
        told = f"breaks off after {len(rows.times)} records"
        tip = "copy it again if there is more of it"
        problems.append(_said(shown, "warning", "recording-truncated", told, tip))
    except fitdecode.FitCRCError:
        problems.append(
            _said(
                shown, "warning", "fit-checksum", "the checksum is not that of the content", "copy it again"
            )
        )
    except (fitdecode.FitError, *_DAMAGE):
        told = f"is damaged after {len(rows.times)} records; what follows is left out"
        problems.append(_said(shown, "warning", "fit-damaged", told, "copy it again"))
    if not rows.times:
        none = _said(
            shown, "error", "recording-no-power", "holds no records", "name the file of the ride itself"
        )
        return None, [*problems, none]
    started_at, found = rows.finished()
    return finish(found, name, started_at, shown, sha256_of(raw), problems)


def _messages(fitdecode: Any, raw: bytes) -> Iterator[Any]:
    """The data messages alone, as the file has them: nothing is turned into objects that nobody reads."""
    with fitdecode.FitReader(
        io.BytesIO(raw),
        processor=None,
        check_crc=fitdecode.CrcCheck.RAISE,
        error_handling=fitdecode.ErrorHandling.IGNORE,
    ) as reader:
        for frame in reader:
            if frame.frame_type == fitdecode.FIT_FRAME_DATA:
                yield frame


class _Rows:
    """The records as they come: the fields that a recording has, and where laps end."""

    def __init__(self, power_field: str) -> None:
        self.power_field = power_field
        self.times: list[float | None] = []
        self.columns: dict[str, list[float | None]] = {
            column: []
            for column in (power_field, "cadence", "fractional_cadence", "left_right_balance", "altitude")
        }
        self.lap_starts: list[float] = []

    def take(self, message: Any) -> None:
        """Note a record or the beginning of a lap; any other message says nothing here."""
        kind = message.name
        if kind == "record":
            found = {field.name: field for field in message.fields}
            self.times.append(_number(found, "timestamp"))
            for column, values in self.columns.items():
                values.append(_number(found, column))
            if self.columns["altitude"][-1] is None:
                self.columns["altitude"][-1] = _number(found, "enhanced_altitude")
        elif kind == "lap":
            start = _number({field.name: field for field in message.fields}, "start_time")
            if start is not None:
                self.lap_starts.append(start)

    def finished(self) -> tuple[datetime | None, Rows]:
        """The start where the file knows the date, and the rows in seconds from it."""
        times_s = np.array(self.times, dtype=np.float64)
        dated = times_s >= _FIRST_DATE_S
        known = dated if dated.sum() * 2 >= np.isfinite(times_s).sum() else np.isfinite(times_s) & ~dated
        first = float(times_s[known][0]) if known.any() else 0.0
        started_at = _EPOCH + timedelta(seconds=first) if first >= _FIRST_DATE_S else None
        cadence = self._column("cadence")
        cadence = cadence + np.nan_to_num(self._column("fractional_cadence"))
        lap_begins = [
            int(np.searchsorted(times_s[known], start)) for start in sorted(self.lap_starts) if start > first
        ]
        where = np.flatnonzero(known)
        return started_at, Rows(
            times_s=np.where(known, times_s, np.nan) - first,
            power_w=self._column(self.power_field),
            cadence_rpm=cadence,
            left_share=_left_share(self._column("left_right_balance")),
            altitude_m=self._column("altitude"),
            lap_begins=[int(where[i]) for i in lap_begins if i < len(where)],
        )

    def _column(self, name: str) -> FloatArray:
        return np.array(self.columns[name], dtype=np.float64)


def _number(fields: dict[str, Any], name: str) -> float | None:
    """The field's number after scale and offset; None where it is absent, invalid, or no number."""
    field = fields.get(name)
    if field is None:
        return None
    value = field.raw_value if name == "left_right_balance" else field.value
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def _left_share(balance: FloatArray) -> FloatArray:
    """The left share from the balance byte: the top bit says that the percent are the right pedal's.

    Without that bit the file does not know whose the percent are, and neither does anybody else: NaN.
    """
    known = np.isfinite(balance)
    bits = np.where(known, balance, 0).astype(np.int64)
    right = (bits & _SHARE_BITS) / 100.0
    return np.where(known & (bits & _RIGHT_SIDE_KNOWN > 0) & (right <= 1.0), 1.0 - right, np.nan)


def _said(shown: str, level: str, rule: str, message: str, tip: str = "") -> Problem:
    return Problem(Place(shown, 1, 1), "error" if level == "error" else "warning", rule, message, tip)
