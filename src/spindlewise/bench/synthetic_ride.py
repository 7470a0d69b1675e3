"""Rides of which the truth is known: a rider drawn from a seed, and meters with stated faults.

This is the source of the demo's recordings, and what the tests of this room recover. Nothing here is
measured. The rider's power is a plan of stretches, smoothed, with a variability that has a memory; a meter
reads it with a scale, an offset, noise with a memory, a late or early clock that runs fast or slow,
dropouts, a doubled side, a drivetrain loss, a rate and a step of its figures. Same seed, same ride,
whatever else is drawn.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

import numpy as np

from spindlewise.bench.recording import BoolArray, FloatArray, Recording, recording_of

FINE_HZ = 10
"""The rider's truth has ten points a second, so that a lag need not be whole seconds."""

DropoutKind = Literal["zero", "missing", "held"]


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of the plan: so many seconds at so much power and cadence; no power is coasting."""

    length_s: float
    power_w: float
    cadence_rpm: float = 90.0
    climb_m: float = 0.0
    """Metres gained over the stretch."""


@dataclass(frozen=True, slots=True)
class Dropout:
    """A time, in true seconds, at which the meter's reading does not arrive, and what is recorded instead."""

    start_s: float
    length_s: float
    recorded_as: DropoutKind = "zero"


@dataclass(frozen=True, slots=True)
class Meter:
    """A meter's faults, all known; as it stands without arguments it reads the truth once a second.

    Reading = truth times the side's part times (1 - loss) times scale, plus offset and noise while the rider
    pedals. `late_s`: what happens at second t is stamped t + late_s. `clock_ppm`: the clock gains so many
    microseconds a second. `noise_memory` is the correlation of the noise from one second to the next.
    """

    name: str
    scale: float = 1.0
    offset_w: float = 0.0
    noise_w: float = 0.0
    noise_memory: float = 0.0
    late_s: float = 0.0
    clock_ppm: float = 0.0
    side: Literal["both", "left doubled", "right doubled"] = "both"
    loss_pct: float = 0.0
    rate_hz: float = 1.0
    step_w: float = 1.0
    """The step in which powers are given; 0 for none."""
    dropouts: tuple[Dropout, ...] = ()
    begins_s: float = 0.0
    """The true second at which recording begins; its rows count from there where the file states no start."""
    pauses: tuple[tuple[float, float], ...] = ()
    """Times at which nothing is recorded at all: start and length in true seconds."""
    tells_balance: bool = False
    laps_s: tuple[float, ...] = ()
    """The true seconds at which the lap button is pressed."""


@dataclass(frozen=True, slots=True, eq=False)
class Truth:
    """What the rider did, ten points a second: power at the pedals, cadence, the left share, altitude."""

    seconds: FloatArray
    power_w: FloatArray
    cadence_rpm: FloatArray
    left_share: FloatArray
    altitude_m: FloatArray
    pedalling: BoolArray


def ride(
    plan: Sequence[Stretch],
    seed: int,
    *,
    variability: float = 0.06,
    rise_s: float = 1.5,
    left_share: float = 0.48,
    share_wander: float = 0.008,
    start_altitude_m: float = 240.0,
) -> Truth:
    """Draw a ride along a plan. `variability` is the rider's own spread as a part of the power.

    Each change of power is approached with the time constant `rise_s`; the variability has a memory of 4 s,
    the balance wanders about `left_share` with a memory of five minutes. Raises ValueError for an empty
    plan.

    >>> truth = ride([Stretch(60, 200)], seed=1, variability=0)
    >>> float(truth.power_w[-1].round(6))
    200.0
    """
    counts = [round(stretch.length_s * FINE_HZ) for stretch in plan]
    if not sum(counts):
        raise ValueError("the plan has no seconds; give at least one stretch with a length")
    random = np.random.default_rng([seed, 1])
    target = np.repeat([stretch.power_w for stretch in plan], counts)
    pedalling = target > 0
    wobble = 1.0 + variability * _wander(random, len(target), 4.0)
    power = np.where(pedalling, _approached(target, rise_s) * wobble, 0.0)
    cadence_target = np.repeat([stretch.cadence_rpm for stretch in plan], counts)
    cadence = np.where(pedalling, cadence_target * (1.0 + 0.02 * _wander(random, len(target), 8.0)), 0.0)
    share = np.clip(left_share + share_wander * _wander(random, len(target), 300.0), 0.3, 0.7)
    gains = np.repeat([stretch.climb_m / max(n, 1) for stretch, n in zip(plan, counts, strict=True)], counts)
    return Truth(
        seconds=np.arange(len(target)) / FINE_HZ,
        power_w=np.maximum(power, 0.0),
        cadence_rpm=cadence,
        left_share=share,
        altitude_m=start_altitude_m + np.cumsum(gains),
        pedalling=pedalling,
    )


def record(truth: Truth, meter: Meter, seed: int, started_at: datetime | None = None) -> Recording:
    """What the meter writes down of the ride. Its rows are stamped by its own clock, in seconds.

    A row is the mean of the truth over the time from the last row to the next, halved. The noise depends on
    the seed and the meter's name only. Raises ValueError for a rate that is not positive.

    >>> truth = ride([Stretch(60, 200)], seed=1, variability=0)
    >>> float(record(truth, Meter("hub", loss_pct=2.5), seed=1).power_w[-1])
    195.0
    """
    if not meter.rate_hz > 0:
        raise ValueError(f"the rate is {meter.rate_hz} rows a second; it is more than zero")
    length_s = len(truth.seconds) / FINE_HZ
    stamps = np.arange(int(length_s * meter.rate_hz)) / meter.rate_hz
    happened_s = (stamps - meter.late_s) / (1.0 + meter.clock_ppm * 1e-6)
    inside = (happened_s >= max(meter.begins_s, 0.0)) & (happened_s <= length_s)
    for start, length in meter.pauses:
        inside &= ~((happened_s >= start) & (happened_s < start + length))
    stamps, happened_s = stamps[inside], happened_s[inside]
    power = _row_means(_at_the_meter(truth, meter), happened_s, meter.rate_hz)
    turning = _row_means(truth.pedalling.astype(np.float64), happened_s, meter.rate_hz)
    random = np.random.default_rng([seed, 2, *meter.name.encode()])
    noise = meter.noise_w * _wander_step(random, len(stamps), meter.noise_memory ** (1.0 / meter.rate_hz))
    power = np.maximum(power * meter.scale + (meter.offset_w + noise) * turning, 0.0)
    if meter.step_w > 0:
        power = np.round(power / meter.step_w) * meter.step_w
    cadence = np.round(_row_means(truth.cadence_rpm, happened_s, meter.rate_hz))
    share = _row_means(truth.left_share, happened_s, meter.rate_hz)
    share = np.where(turning > 0.5, np.round(share, 2), np.nan) if meter.tells_balance else share * np.nan
    for dropout in meter.dropouts:
        gone = (happened_s >= dropout.start_s) & (happened_s < dropout.start_s + dropout.length_s)
        power[gone] = _recorded_instead(power, gone, dropout.recorded_as)
        share[gone] = np.nan
    altitude = np.round(_row_means(truth.altitude_m, happened_s, meter.rate_hz), 1)
    return recording_of(
        meter.name,
        stamps,
        power,
        cadence_rpm=cadence,
        left_share=share,
        altitude_m=altitude,
        started_at=started_at,
        laps_s=tuple(lap * (1.0 + meter.clock_ppm * 1e-6) + meter.late_s for lap in meter.laps_s),
    )


def _at_the_meter(truth: Truth, meter: Meter) -> FloatArray:
    part: FloatArray | float = 1.0
    if meter.side != "both":
        share = truth.left_share if meter.side == "left doubled" else 1.0 - truth.left_share
        part = 2.0 * share
    return np.asarray(truth.power_w * part * (1.0 - meter.loss_pct / 100.0), dtype=np.float64)


def _row_means(fine: FloatArray, happened_s: FloatArray, rate_hz: float) -> FloatArray:
    """The mean of the truth about each moment, over as long as a row lasts: exact through its running sum."""
    total = np.concatenate(([0.0], np.cumsum(fine))) / FINE_HZ
    edges = np.arange(len(total)) / FINE_HZ
    low = np.clip(happened_s - 0.5 / rate_hz, 0.0, edges[-1])
    high = np.clip(happened_s + 0.5 / rate_hz, 0.0, edges[-1])
    return np.asarray((np.interp(high, edges, total) - np.interp(low, edges, total)) / (high - low))


def _approached(target: FloatArray, rise_s: float) -> FloatArray:
    """The target through a first-order lag, with which the rider begins at the first power."""
    from scipy.signal import lfilter

    keep = float(np.exp(-1.0 / (FINE_HZ * rise_s))) if rise_s > 0 else 0.0
    return np.asarray(lfilter([1.0 - keep], [1.0, -keep], target, zi=[keep * target[0]])[0])


def _wander(random: np.random.Generator, count: int, memory_s: float) -> FloatArray:
    """A wander of unit spread on the fine clock, forgotten after `memory_s`."""
    return _wander_step(random, count, float(np.exp(-1.0 / (FINE_HZ * memory_s))))


def _wander_step(random: np.random.Generator, count: int, keep: float) -> FloatArray:
    """A first-order autoregression of unit spread that begins in its steady state."""
    from scipy.signal import lfilter

    drawn = random.standard_normal(count + 1)
    fresh = float(np.sqrt(1.0 - keep * keep))
    return np.asarray(lfilter([fresh], [1.0, -keep], drawn[1:], zi=[keep * drawn[0]])[0])


def _recorded_instead(power_w: FloatArray, gone: BoolArray, how: DropoutKind) -> float:
    if how == "missing":
        return float("nan")
    first = int(np.argmax(gone))
    return 0.0 if how == "zero" or first == 0 else float(power_w[first - 1])
