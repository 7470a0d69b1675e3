"""A recording: what one meter wrote down of one ride, second by second, and what is wrong with it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

import numpy as np
from numpy.typing import NDArray

from spindlewise.problems import Problem

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

LARGEST_BYTES = 64 * 1024 * 1024
"""One recording is at most 64 MiB: more than two days at four rows a second."""

PLAUSIBLE = {
    "power_w": (-500.0, 4000.0),
    "cadence_rpm": (0.0, 300.0),
    "left_share": (0.0, 1.0),
    "altitude_m": (-500.0, 9000.0),
}
"""Design choice, no source: what lies outside is a fault of the file, never a rider."""


@dataclass(frozen=True, slots=True, eq=False)
class Recording:
    """One meter's rows of one ride, in the order of time; NaN where a row does not say.

    All arrays have the same length and cannot be written to. `times_s` are seconds from `started_at`, finite
    and never going backwards; two rows may share a time. `started_at` has a time zone where the file states
    one, is without where it does not, and is None where the file knows only how long the ride lasted.
    `left_share` is 0 to 1. `laps_s` are the times at which a lap was begun, the first not counted. `source`
    is the file's name as shown, `sha256` that of its bytes in hexadecimal; both empty where there is no file.

    Raises ValueError for arrays of unlike length, and for times that are not finite or go backwards.
    """

    name: str
    started_at: datetime | None
    times_s: FloatArray
    power_w: FloatArray
    cadence_rpm: FloatArray
    left_share: FloatArray
    altitude_m: FloatArray
    laps_s: tuple[float, ...] = ()
    source: str = ""
    sha256: str = ""
    problems: tuple[Problem, ...] = ()

    def __post_init__(self) -> None:
        columns = (self.times_s, self.power_w, self.cadence_rpm, self.left_share, self.altitude_m)
        lengths = [len(column) for column in columns]
        if len(set(lengths)) != 1:
            raise ValueError(f"the columns of {self.name} have {lengths} rows; they need the same number")
        if not np.isfinite(self.times_s).all() or (np.diff(self.times_s) < 0).any():
            raise ValueError(f"the times of {self.name} must be finite and never go backwards")
        for column in columns:
            column.flags.writeable = False

    @property
    def duration_s(self) -> float:
        """Seconds from the first row to the last; 0 for a recording without rows."""
        return float(self.times_s[-1] - self.times_s[0]) if len(self.times_s) else 0.0


def recording_of(
    name: str,
    times_s: object,
    power_w: object,
    *,
    cadence_rpm: object = None,
    left_share: object = None,
    altitude_m: object = None,
    started_at: datetime | None = None,
    laps_s: tuple[float, ...] = (),
    source: str = "",
    sha256: str = "",
    problems: tuple[Problem, ...] = (),
) -> Recording:
    """Make a recording of plain sequences, which are copied; a column that is left out is NaN throughout.

    Raises ValueError as `Recording` does.

    >>> recording_of("pedals", [0, 1, 2], [200, 210, 190]).duration_s
    2.0
    """
    times = np.array(times_s, dtype=np.float64)

    def column(values: object) -> FloatArray:
        return np.full(len(times), np.nan) if values is None else np.array(values, dtype=np.float64)

    return Recording(
        name=name,
        started_at=started_at,
        times_s=times,
        power_w=column(power_w),
        cadence_rpm=column(cadence_rpm),
        left_share=column(left_share),
        altitude_m=column(altitude_m),
        laps_s=laps_s,
        source=source,
        sha256=sha256,
        problems=problems,
    )


def implausible(column: str, values: FloatArray) -> BoolArray:
    """Mark the values that no ride has: outside the plausible range, or infinite. NaN is not marked.

    Raises KeyError for a column that has no range.

    >>> implausible("left_share", np.array([0.5, 47.0, np.nan])).tolist()
    [False, True, False]
    """
    low, high = PLAUSIBLE[column]
    return np.asarray((values < low) | (values > high), dtype=np.bool_)
