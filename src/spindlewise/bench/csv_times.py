"""Times as recordings write them: seconds, clocks and ISO timestamps to seconds from one start."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime, time, timedelta

import numpy as np

from spindlewise.bench.csv_columns import TimeKind
from spindlewise.bench.recording import FloatArray

_CLOCK = re.compile(r"(?:(\d{1,4}):)?(\d{1,4}):(\d{2}(?:\.\d{1,9})?)", re.ASCII)
_NUMBER = re.compile(r"[+-]?\d{1,18}(?:\.\d{0,12})?", re.ASCII)
_DAY_S = 86400.0
_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_LATEST_UNIX_S = 4102444800.0  # the year 2100


def times_of(
    texts: Sequence[str], kind: TimeKind, day: date | None = None
) -> tuple[FloatArray, datetime | None, list[int]]:
    """Seconds from the start, the start where it is known, and the rows whose time cannot be read.

    The seconds are NaN in the rows that cannot be read. `seconds`, `milliseconds` and `elapsed` count from
    wherever the file counts, and know no start. `time of day` counts from midnight of `day`, goes on past
    midnight, and has a start (without a time zone) only where the day is given. The first ISO timestamp that
    can be read decides whether they carry a time zone; a row that differs in that cannot be read.

    >>> times_of(["23:59:59", "0:00:01"], "time of day")[0].tolist()
    [86399.0, 86401.0]
    """
    if kind == "ISO timestamps":
        return _iso(texts)
    if kind in ("elapsed", "time of day"):
        seconds, bad = _each(texts, _clock_s)
        if kind == "elapsed":
            return seconds, None, bad
        start = None if day is None else datetime.combine(day, time())
        return _past_midnight(seconds), start, bad
    seconds, bad = _each(texts, _number)
    if kind == "milliseconds":
        return seconds / 1000.0, None, bad
    if kind == "Unix seconds":
        return _from_unix(seconds, bad)
    return seconds, None, bad


def _each(texts: Sequence[str], read: Callable[[str], float | None]) -> tuple[FloatArray, list[int]]:
    values = [read(text) for text in texts]
    return np.array(values, dtype=np.float64), [row for row, value in enumerate(values) if value is None]


def _number(text: str) -> float | None:
    return float(text) if _NUMBER.fullmatch(text) else None


def _clock_s(text: str) -> float | None:
    found = _CLOCK.fullmatch(text)
    if found is None:
        return None
    hours, minutes, seconds = int(found[1] or 0), int(found[2]), float(found[3])
    if seconds >= 60 or (found[1] is not None and minutes >= 60):
        return None
    return hours * 3600.0 + minutes * 60.0 + seconds


def _past_midnight(seconds: FloatArray) -> FloatArray:
    """A step back by more than half a day is a midnight."""
    known = np.flatnonzero(np.isfinite(seconds))
    nights = np.cumsum(np.diff(seconds[known], prepend=seconds[known[:1]]) < -_DAY_S / 2)
    gone_on = seconds.copy()
    gone_on[known] += _DAY_S * nights
    return gone_on


def _from_unix(seconds: FloatArray, bad: list[int]) -> tuple[FloatArray, datetime | None, list[int]]:
    outside = (seconds < 0) | (seconds > _LATEST_UNIX_S)
    bad = sorted({*bad, *np.flatnonzero(outside).tolist()})
    seconds = np.where(outside, np.nan, seconds)
    known = np.flatnonzero(np.isfinite(seconds))
    if not len(known):
        return seconds, None, bad
    first = float(seconds[known[0]])
    return seconds - first, _EPOCH + timedelta(seconds=first), bad


def _iso(texts: Sequence[str]) -> tuple[FloatArray, datetime | None, list[int]]:
    start: datetime | None = None
    seconds: list[float | None] = []
    for text in texts:
        try:
            moment = datetime.fromisoformat(text)
            start = moment if start is None else start
            seconds.append((moment - start).total_seconds())
        except (ValueError, TypeError, OverflowError):
            seconds.append(None)
    return (
        np.array(seconds, dtype=np.float64),
        None if start is None else _in_utc(start),
        [row for row, value in enumerate(seconds) if value is None],
    )


def _in_utc(moment: datetime) -> datetime | None:
    if moment.tzinfo is None:
        return moment
    try:
        return moment.astimezone(UTC)
    except OverflowError:
        return None
