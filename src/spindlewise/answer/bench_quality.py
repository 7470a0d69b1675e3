"""What each recording of a ride is worth: its clock, its lag, its dropouts, its stuck values."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.alignment import Aligned
from spindlewise.bench.between_rows import power_between_rows
from spindlewise.bench.clock import ClockReport
from spindlewise.bench.drift import Drift
from spindlewise.bench.gaps import Dropouts, find_dropouts
from spindlewise.bench.lag import Lag
from spindlewise.bench.recording import Recording
from spindlewise.bench.segments import Segment, counted
from spindlewise.bench.stuck import Repeats, find_repeats

FloatArray = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class RecordingQuality:
    """One recording beside the others; lag and drift are against the reference's clock."""

    name: str
    source: str
    sha256: str
    rows: int
    duration_s: float
    clock: ClockReport
    lag: Lag
    drift: Drift | None
    dropouts: Dropouts
    repeats: Repeats

    @property
    def blanked_s(self) -> int:
        """Seconds that are compared with nothing: told as lost, or held while the rider moved."""
        return self.dropouts.dropout_s + self.repeats.stuck_s


def recording_qualities(aligned: Aligned, recordings: tuple[Recording, ...]) -> tuple[RecordingQuality, ...]:
    """Tell each recording's quality, by the evidence of all others."""
    found = []
    for row, recording in enumerate(recordings):
        others = np.arange(len(recordings)) != row
        dropouts = find_dropouts(
            recording.name,
            aligned.seconds,
            aligned.power_w[row],
            aligned.power_w[others],
            aligned.written[row],
            aligned.written[others],
            max(aligned.edge_s),
            aligned.clocks[row].interval_s,
        )
        found.append(
            RecordingQuality(
                name=recording.name,
                source=recording.source,
                sha256=recording.sha256,
                rows=len(recording.times_s),
                duration_s=recording.duration_s,
                clock=aligned.clocks[row],
                lag=aligned.lags[row],
                drift=aligned.drifts[row],
                dropouts=dropouts,
                repeats=find_repeats(aligned.seconds, aligned.power_w[row], aligned.power_w[others]),
            )
        )
    return tuple(found)


def comparable_power_w(
    aligned: Aligned,
    recordings: tuple[Recording, ...],
    qualities: tuple[RecordingQuality, ...],
    segments: tuple[Segment, ...],
) -> FloatArray:
    """The powers, a row a recording, with NaN where nothing is compared.

    Left out are the seconds of bedding-in and void segments, what was told as a dropout, and what was held
    while the rider moved, each with a second on either side. What cannot be told stays.
    """
    read_off = power_between_rows(aligned, recordings)
    power = np.where(counted(aligned.seconds, segments), read_off, np.nan)
    first = aligned.seconds[0]
    for row, quality in enumerate(qualities):
        lost = [(s.start_s, s.length_s) for s in quality.dropouts.of_kind("dropout")]
        held = [(run.start_s, run.length_s) for run in quality.repeats.runs if run.stuck]
        for start_s, length_s in (*lost, *held):
            begin = int(start_s - first)
            power[row, max(begin - 1, 0) : begin + length_s + 1] = np.nan
    return power
