"""The demo's recordings: rides drawn from seeds, with the truth that is behind them.

Nothing of them was measured. The files in the demo catalog are what `demo_files` gives, to the byte; their
sheets say that they are generated.
"""

from __future__ import annotations

from datetime import datetime

from spindlewise.bench.recording import Recording
from spindlewise.bench.recording_text import Way, recording_csv
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

THREE_METERS = "2025-10-18-three-meters"
FIRST_RIDE = "2025-09-13-first-ride"
SERIES = {
    "2024-09-24-at-0-km": (0, datetime(2024, 9, 24, 17, 40)),  # noqa: DTZ001
    "2024-12-07-at-1000-km": (1_000, datetime(2024, 12, 7, 10, 15)),  # noqa: DTZ001
    "2026-09-12-at-9000-km": (9_000, datetime(2026, 9, 12, 9, 5)),  # noqa: DTZ001
}
"""One unit at three distances: kilometres ridden before, and the local time of the start."""
SERIES_SCALE, SERIES_PCT_PER_1000_KM = 1.006, 0.25
"""The truth of the series: the scale of the new unit, and what it gains for each 1,000 km."""

_OVER_UNDER = [Stretch(40, 280, 88), Stretch(40, 235, 92)] * 4
_SHORT = [Stretch(30, 390, 98), Stretch(30, 140, 85)] * 6
_SPRINT = [Stretch(120, 150), Stretch(12, 860, 112), Stretch(8, 0, 0)]
PLANS: dict[str, list[Stretch]] = {
    THREE_METERS: [
        Stretch(240, 150, 86),
        Stretch(180, 190, 88),
        Stretch(180, 235, 92),
        Stretch(20, 0, 0),
        Stretch(420, 265, 74, climb_m=78),
        Stretch(70, 0, 0, climb_m=-40),
        Stretch(100, 145, 84),
        *_OVER_UNDER,
        Stretch(70, 135, 84),
        *_SPRINT,
        *_SPRINT,
        *_SHORT,
        Stretch(160, 120, 80),
    ],
    FIRST_RIDE: [
        Stretch(300, 160, 86),
        Stretch(300, 210, 90),
        Stretch(15, 0, 0),
        *_SPRINT,
        Stretch(445, 180, 88),
    ],
    **{
        name: [
            Stretch(240, 150, 86),
            Stretch(300, 205, 90),
            Stretch(15, 0, 0),
            Stretch(240, 250, 78),
            *[Stretch(30, 350, 98), Stretch(30, 145, 86)] * 4,
            Stretch(165, 170, 88),
        ]
        for name in SERIES
    },
}
SEEDS = {THREE_METERS: 20251018, FIRST_RIDE: 20250913} | {
    name: int(f"{start:%Y%m%d}") for name, (_, start) in SERIES.items()
}
STARTS = {THREE_METERS: datetime(2025, 10, 18, 9, 30), FIRST_RIDE: datetime(2025, 9, 13, 17, 5)} | {  # noqa: DTZ001
    name: start for name, (_, start) in SERIES.items()
}
"""Local times, as the head unit wrote them."""

METERS: dict[str, tuple[tuple[Meter, Way], ...]] = {
    THREE_METERS: (
        (
            Meter(
                "pedals",
                scale=1.002,
                noise_w=3.0,
                noise_memory=0.3,
                dropouts=(Dropout(1130.0, 5.0, "missing"),),
                tells_balance=True,
            ),
            "dated, decimal comma",
        ),
        (
            Meter(
                "spider",
                scale=0.998,
                noise_w=2.5,
                noise_memory=0.3,
                late_s=2.4,
                clock_ppm=80.0,
                laps_s=(620.0, 1040.0),
                dropouts=(Dropout(560.0, 12.0, "held"),),
            ),
            "time of day",
        ),
        (
            Meter(
                "hub",
                scale=1.004,
                loss_pct=2.6,
                noise_w=4.0,
                noise_memory=0.5,
                begins_s=14.0,
                dropouts=(Dropout(310.0, 6.0), Dropout(900.0, 9.0)),
            ),
            "elapsed seconds",
        ),
    ),
    FIRST_RIDE: (
        (
            Meter("left-pedal", 0.985, noise_w=3.5, noise_memory=0.3, side="left doubled"),
            "elapsed seconds",
        ),
        (Meter("spider", scale=0.998, noise_w=2.5, noise_memory=0.3, late_s=1.3), "time of day"),
    ),
    **{
        name: (
            (
                Meter(
                    "pedals",
                    scale=SERIES_SCALE * (1.0 + SERIES_PCT_PER_1000_KM / 100.0 * km / 1000.0),
                    noise_w=3.0,
                    noise_memory=0.3,
                ),
                "elapsed seconds",
            ),
            (Meter("spider", scale=0.998, noise_w=2.5, noise_memory=0.3, late_s=1.8), "time of day"),
        )
        for name, (km, _) in SERIES.items()
    },
}
"""The meters of each ride with their faults, and how their files are written."""


def demo_recordings(ride_id: str) -> tuple[Recording, ...]:
    """Draw the recordings of a demo ride. Raises KeyError for a ride that is not there."""
    truth = ride(PLANS[ride_id], SEEDS[ride_id])
    return tuple(record(truth, meter, SEEDS[ride_id], STARTS[ride_id]) for meter, _ in METERS[ride_id])


def demo_files(ride_id: str) -> dict[str, str]:
    """Give the files of a demo ride, name and text. Raises KeyError for a ride that is not there."""
    return {
        f"{recording.name}.csv": recording_csv(recording, way)
        for recording, (_, way) in zip(demo_recordings(ride_id), METERS[ride_id], strict=True)
    }
