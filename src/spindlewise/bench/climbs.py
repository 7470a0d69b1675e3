"""Climbs: where the altitude rises steadily for long enough to be one."""

from __future__ import annotations

import numpy as np

from spindlewise.bench.recording import FloatArray

LEAST_RATE_M_S = 0.1
OVER_S = 60
JOINED_S = 60
LOST_M = 10.0
LEAST_GAIN_M = 30.0
"""Design choices, no source: 30 m and more, gained at 360 m an hour or faster over every minute, no fall of
10 m between."""


def find_climbs(altitude_m: FloatArray) -> tuple[tuple[int, int], ...]:
    """Find the climbs in one altitude a second: first index and the one after the last.

    The altitude gains at least six metres over each minute, breaks of up to a minute that lose no more than
    ten metres are ridden through, and the whole gains thirty metres. Missing altitudes are bridged by a
    straight line; none at all make no climb.

    >>> find_climbs(np.concatenate((np.full(100, 200.0), 200.0 + 0.2 * np.arange(300), np.full(100, 260.0))))
    ((100, 401),)
    """
    known = np.flatnonzero(np.isfinite(altitude_m))
    if len(altitude_m) <= OVER_S or len(known) < 2:
        return ()
    altitude = np.interp(np.arange(len(altitude_m)), known, altitude_m[known])
    gains = altitude[OVER_S:] - altitude[:-OVER_S]
    rising = gains >= LEAST_RATE_M_S * OVER_S
    steps = np.diff(rising.astype(np.int8), prepend=0, append=0)
    climbs: list[list[int]] = []
    for begin, end in zip(
        np.flatnonzero(steps > 0).tolist(), np.flatnonzero(steps < 0).tolist(), strict=True
    ):
        before = climbs[-1][1] if climbs else 0
        if climbs and begin - before <= JOINED_S and altitude[before - 1] - altitude[begin] <= LOST_M:
            climbs[-1][1] = end + OVER_S
        else:
            climbs.append([begin, end + OVER_S])
    return tuple(
        trimmed
        for trimmed in (_trimmed(altitude, begin, min(end, len(altitude))) for begin, end in climbs)
        if altitude[trimmed[1] - 1] - altitude[trimmed[0]] >= LEAST_GAIN_M
    )


def _trimmed(altitude: FloatArray, begin: int, end: int) -> tuple[int, int]:
    """Without the level parts that a minute's window takes in: from the last lowest to the first highest."""
    piece = altitude[begin:end]
    low = int(len(piece) - 1 - np.argmin(piece[::-1]))
    high = int(np.argmax(piece))
    return (begin + low, begin + high + 1) if high > low else (begin, end)
