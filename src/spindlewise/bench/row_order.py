"""Row order: which rows of a recording stand in an order of time that can be believed."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

import numpy as np

from spindlewise.bench.recording import BoolArray, FloatArray

LONGEST_BREAK_S = 24 * 3600.0
"""Design choice, no source: a step of more than a day is a clock that was set, not a pause."""


@dataclass(frozen=True, slots=True, eq=False)
class RowOrder:
    """The rows to keep, and how many were left out for which reason."""

    kept: BoolArray
    without_time: int
    beyond_a_jump: int
    out_of_order: int


def row_order(times_s: FloatArray) -> RowOrder:
    """Keep the most rows whose times never go backwards, after taking out what lies beyond a jump of a day.

    A clock that jumps by more than a day (a head unit that learns the date late) parts the rows; the part
    with the most rows is kept. Where the time then still goes backwards, the longest run in which it never
    does is kept (longest non-decreasing subsequence, Schensted 1961): a clock set back by five seconds
    loses five seconds, one wild time loses one row. NaN is a row without a time.

    >>> row_order(np.array([0.0, 1.0, 900.0, 2.0, 3.0])).kept.tolist()
    [True, True, False, True, True]
    """
    timed = np.isfinite(times_s)
    rows = np.flatnonzero(timed)
    inside = _largest_part(times_s[rows])
    rows_inside = rows[inside]
    in_order = rows_inside[_longest_in_order(times_s[rows_inside])]
    kept = np.zeros(len(times_s), dtype=np.bool_)
    kept[in_order] = True
    return RowOrder(
        kept=kept,
        without_time=len(times_s) - len(rows),
        beyond_a_jump=len(rows) - len(rows_inside),
        out_of_order=len(rows_inside) - len(in_order),
    )


def _largest_part(times_s: FloatArray) -> slice:
    breaks = np.flatnonzero(np.abs(np.diff(times_s)) > LONGEST_BREAK_S) + 1
    edges = np.concatenate(([0], breaks, [len(times_s)]))
    largest = int(np.argmax(np.diff(edges)))
    return slice(int(edges[largest]), int(edges[largest + 1]))


def _longest_in_order(times_s: FloatArray) -> list[int] | slice:
    if not (np.diff(times_s) < 0).any():
        return slice(None)
    tails: list[float] = []
    tail_rows: list[int] = []
    before: list[int] = []
    for row, time in enumerate(times_s.tolist()):
        length = bisect_right(tails, time)
        before.append(tail_rows[length - 1] if length else -1)
        if length == len(tails):
            tails.append(time)
            tail_rows.append(row)
        else:
            tails[length] = time
            tail_rows[length] = row
    chain = []
    row = tail_rows[-1]
    while row >= 0:
        chain.append(row)
        row = before[row]
    return chain[::-1]
