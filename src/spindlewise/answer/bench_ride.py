"""One ride that several meters recorded: laid over each other, compared pair by pair, nobody called right."""

from dataclasses import dataclass
from itertools import combinations
from pathlib import Path

import numpy as np
import numpy.typing as npt

from spindlewise.answer.bench_noted import noted_words
from spindlewise.answer.bench_pair import LOSS_PCT, PairReport, PairSeries, pair_report
from spindlewise.answer.bench_quality import RecordingQuality, comparable_power_w, recording_qualities
from spindlewise.bench.alignment import Aligned, align
from spindlewise.bench.clock import starts_s
from spindlewise.bench.recording import Recording
from spindlewise.bench.ride_files import read_ride
from spindlewise.bench.ride_sheet import Meter, RideSheet, missing
from spindlewise.bench.segments import (
    LEFT_OUT,
    Segment,
    counted,
    find_segments,
    given_segment,
    inside,
    lap_segments,
)
from spindlewise.bench.sprints import SprintReading, sprint_readings
from spindlewise.bench.steady_seconds import steady_power_w
from spindlewise.bench.three_meters import ThreeMeters, three_meters
from spindlewise.problems import Problem

FloatArray = npt.NDArray[np.float64]

DRAWS = 1000
"""Bootstrap draws for three meters: enough for two digits of an interval, and half the time of more."""


@dataclass(frozen=True, slots=True)
class SegmentReading:
    """A segment with each meter's mean over the seconds that all of them read; None where there are none.

    A sprint also has what each recording says of it.
    """

    segment: Segment
    mean_w: tuple[float | None, ...]
    sprint: tuple[SprintReading, ...]


@dataclass(frozen=True, slots=True, eq=False)
class RideReport:
    """All that is said of one ride. `aligned` is None where no recording could be read.

    `reference` is the meter whose clock the others are laid over: the sheet's denominator, or the first that
    could be read. `three` is None below three recordings, and where nothing can be told.
    """

    sheet: RideSheet
    problems: tuple[Problem, ...]
    unread: tuple[str, ...]
    not_noted: tuple[str, ...]
    reference: str
    recordings: tuple[RecordingQuality, ...]
    aligned: Aligned | None
    comparable_w: FloatArray
    segments: tuple[SegmentReading, ...]
    pairs: tuple[PairReport, ...]
    three: ThreeMeters | None

    @property
    def void(self) -> str | None:
        """Why the ride counts for nothing, or None where it counts."""
        standing = self.sheet.standing
        return None if standing.state == "counts" else standing.because


def ride_report(
    sheet: RideSheet, folder: Path, shown: str, loss_pct: tuple[float, float] = LOSS_PCT
) -> RideReport:
    """Read the recordings beside the sheet and compare all that could be read; the rest become problems."""
    read = read_ride(sheet, folder, shown)
    return compared(sheet, read.recordings, read.unread, read.problems, loss_pct)


def compared(
    sheet: RideSheet,
    recordings: tuple[Recording, ...],
    unread: tuple[str, ...] = (),
    problems: tuple[Problem, ...] = (),
    loss_pct: tuple[float, float] = LOSS_PCT,
) -> RideReport:
    """Compare recordings that have been read already, each named by its meter's id."""
    not_noted = missing(sheet)
    if not recordings:
        nothing: FloatArray = np.empty((0, 0))
        return RideReport(sheet, problems, unread, not_noted, "", (), None, nothing, (), (), None)
    names = [recording.name for recording in recordings]
    reference = sheet.percent_of if sheet.percent_of in names else names[0]
    aligned = align(recordings, reference, sheet.lag_within_s)
    qualities = recording_qualities(aligned, recordings)
    segments = _segments(sheet, aligned, recordings)
    power = comparable_power_w(aligned, recordings, qualities, segments)
    three = three_meters(steady_power_w(power), aligned.names, draws=DRAWS) if len(names) >= 3 else None
    meters = {meter.id: meter for meter in sheet.meters}
    pairs = tuple(
        _pair(meters, pair, sheet, aligned, power, segments, three, loss_pct)
        for pair in combinations(_reference_last(names, sheet.percent_of), 2)
    )
    readings = tuple(_reading(segment, aligned, power) for segment in segments)
    return RideReport(
        sheet, problems, unread, not_noted, reference, qualities, aligned, power, readings, pairs, three
    )


def _reference_last(names: list[str], percent_of: str) -> list[str]:
    """In the sheet's order, the denominator last: so that it is the second of every pair that it is in."""
    return [name for name in names if name != percent_of] + [name for name in names if name == percent_of]


def _pair(
    meters: dict[str, Meter],
    pair: tuple[str, str],
    sheet: RideSheet,
    aligned: Aligned,
    power: FloatArray,
    segments: tuple[Segment, ...],
    three: ThreeMeters | None,
    loss_pct: tuple[float, float],
) -> PairReport:
    rows = [aligned.row(name) for name in pair]
    counts = counted(aligned.seconds, segments)
    rpm = np.where(counts, aligned.cadence_rpm, np.nan)
    known = [row for row in (aligned.row(aligned.reference), *range(len(rpm))) if np.isfinite(rpm[row]).any()]
    either = aligned.written[rows].any(axis=0) & counts
    series = PairSeries(
        first_w=power[rows[0]],
        second_w=power[rows[1]],
        first_rpm=rpm[rows[0]],
        second_rpm=rpm[rows[1]],
        cadence_rpm=rpm[known[0]] if known else np.full(len(counts), np.nan),
        recorded_s=int(np.count_nonzero(either)),
        lags_known=all(aligned.lags[row].known for row in rows),
    )
    lacking = tuple(noted_words(path) for path in missing(sheet) if _about(path, pair))
    standing = sheet.standing
    void = None if standing.state == "counts" else f"{standing.state}, {standing.because}"
    return pair_report(
        meters[pair[0]],
        meters[pair[1]],
        series,
        percent_of=sheet.percent_of,
        three=three,
        missing=lacking,
        void=void,
        loss_pct=loss_pct,
    )


def _about(path: str, pair: tuple[str, str]) -> bool:
    """Whether what a sheet lacks bears on two meters: something of theirs, or of the whole ride."""
    parts = path.split(".")
    return parts[0] != "meters" or parts[1] in pair


def _segments(sheet: RideSheet, aligned: Aligned, recordings: tuple[Recording, ...]) -> tuple[Segment, ...]:
    """Those that the sheet names, the reference's laps, and those that are found outside what is left out."""
    row = aligned.row(aligned.reference)
    seconds = aligned.seconds
    own = np.flatnonzero(aligned.written[row])
    start_s, end_s = float(seconds[own[0]]), float(seconds[own[-1]]) + 1.0
    ridden = slice(int(own[0]), int(own[-1]) + 1)
    begun_s = starts_s(recordings)[0][row]
    given = [
        given_segment(
            each.kind,
            each.start_s + start_s,
            each.end_s + start_s,
            each.name,
            "" if each.because == "not applicable" else each.because,
        )
        for each in sheet.segments
    ]
    laps = lap_segments([lap + begun_s for lap in recordings[row].laps_s], start_s, end_s)
    altitudes = [aligned.altitude_m[row], *aligned.altitude_m]
    altitude = next((a for a in altitudes if np.isfinite(a).any()), None)
    found = [
        segment
        for segment in find_segments(
            seconds[ridden], aligned.power_w[row, ridden], None if altitude is None else altitude[ridden]
        )
        if not any(
            out.kind in LEFT_OUT and out.start_s < segment.end_s and segment.start_s < out.end_s
            for out in given
        )
    ]
    whole = [*given, *laps, *found]
    return tuple(sorted(whole, key=lambda each: (each.start_s, each.end_s, each.kind)))


def _reading(segment: Segment, aligned: Aligned, power: FloatArray) -> SegmentReading:
    within = inside(aligned.seconds, segment) & np.isfinite(power).all(axis=0)
    means: tuple[float | None, ...] = tuple(
        float(row[within].mean()) if within.any() else None for row in power
    )
    sprint: tuple[SprintReading, ...] = ()
    if segment.kind == "sprint":
        reference = aligned.row(aligned.reference)
        sprint = sprint_readings(
            aligned.seconds, power, aligned.names, reference, segment.start_s, segment.end_s
        )
    return SegmentReading(segment, means, sprint)
