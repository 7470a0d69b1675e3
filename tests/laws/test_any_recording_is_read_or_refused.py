"""Law: whatever bytes a recording has, there is a recording or a problem, never an exception."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.bench.alignment import align
from spindlewise.bench.csv_columns import CsvColumns, TimeColumn
from spindlewise.bench.csv_recording import csv_recording
from spindlewise.bench.csv_times import times_of
from spindlewise.bench.fit_recording import fit_recording
from spindlewise.bench.recording import recording_of
from spindlewise.bench.row_order import row_order

KINDS = ["seconds", "milliseconds", "elapsed", "time of day", "ISO timestamps", "Unix seconds"]
FIELDS = st.sampled_from(
    ["", "0", "1", "2", "12.5", "1e9", "-3", "x", '"', "0:01", "23:59:59", "2025-10-18T09:30:00Z"]
)


def read(raw, kind="seconds"):
    columns = CsvColumns(time=TimeColumn(column=1, written_as=kind), power=2, cadence=3, header=False)
    return csv_recording(raw, "a.csv", "a", columns)


@settings(deadline=None, max_examples=150)
@given(st.binary(max_size=60), st.sampled_from(KINDS))
def test_any_bytes(raw, kind):
    for recording, problems in (read(raw, kind), fit_recording(raw, "a.fit", "a")):
        assert recording is not None or any(p.level == "error" for p in problems)
        assert all(p.place.line >= 1 and p.place.column >= 1 for p in problems)


@settings(deadline=None, max_examples=200)
@given(st.lists(st.lists(FIELDS, max_size=4), max_size=12), st.sampled_from(KINDS))
def test_any_rows(rows, kind):
    recording, problems = read("\n".join(",".join(row) for row in rows).encode(), kind)
    assert recording is not None or any(p.level == "error" for p in problems)
    if recording is not None:
        assert len(align([recording], "a").seconds) >= 1


@settings(deadline=None)
@given(st.lists(st.text(max_size=12), max_size=5), st.sampled_from(KINDS))
def test_any_times(texts, kind):
    times, _, bad = times_of(texts, kind)
    assert np.flatnonzero(~np.isfinite(times)).tolist() == bad


@settings(deadline=None)
@given(st.lists(st.floats(-1e6, 1e6) | st.just(float("nan")), max_size=30))
def test_the_rows_kept_are_in_order(times):
    times = np.array(times, dtype=float)
    kept = row_order(times).kept
    in_order = times[kept]
    assert (np.diff(in_order) >= 0).all()
    recording_of("a", in_order, in_order)
