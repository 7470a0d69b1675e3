"""How often a 95 % interval holds a truth that is known: rides are drawn, and the whole report is made.

`python tests/soak/known_truth.py [RIDES]` prints one line a figure. A share of it runs with all tests.
"""

import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import numpy as np

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from small_rides import sheet
from spindlewise.answer.bench_ride import compared
from spindlewise.bench.drift import find_drift
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.lag import find_lag
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

START = datetime(2025, 10, 18, 9, tzinfo=UTC)
PLAN = [
    Stretch(200, 150, 84), Stretch(240, 210, 90), Stretch(25, 0, 0), Stretch(240, 265, 76),
    *[Stretch(40, 290, 88), Stretch(40, 235, 92)] * 3, Stretch(90, 140, 84),
    *[Stretch(30, 360, 98), Stretch(30, 145, 86)] * 4, Stretch(150, 175, 88),
]  # fmt: skip
"""Twenty minutes of what a rider does on a bench day."""


@dataclass(frozen=True)
class Told:
    """One figure of one ride: its interval, and the truth; `claimed` is False where nothing was claimed."""

    what: str
    truth: float
    interval: Estimate | None

    @property
    def claimed(self) -> bool:
        return self.interval is not None

    @property
    def held(self) -> bool:
        return self.interval is not None and self.interval.holds(self.truth)


def told(seed: int) -> Iterator[Told]:
    """All that one ride's report says of truths that are drawn from the seed."""
    random = np.random.default_rng([seed, 77])
    scales = {"pedals": random.uniform(0.97, 1.03), "hub": random.uniform(0.97, 1.03), "spider": 0.998}
    late = {"pedals": random.uniform(-9, 9), "hub": random.uniform(-9, 9), "spider": 0.0}
    loss_pct = random.uniform(1.5, 4.0)
    starts = random.uniform(100, 1300, 2)
    dropouts = {
        "pedals": (Dropout(float(starts[0]), 6.0, "missing"),),
        "hub": (Dropout(float(starts[1]), 8.0),),
        "spider": (),
    }
    truth = ride(PLAN, seed)
    meters = [
        Meter(
            name,
            scale=scale,
            noise_w=random.uniform(2, 6),
            noise_memory=random.uniform(0.0, 0.85),
            late_s=late[name],
            loss_pct=loss_pct if name == "hub" else 0.0,
            dropouts=dropouts[name],
        )
        for name, scale in scales.items()
    ]
    found = compared(sheet(*meters), tuple(record(truth, meter, seed, START) for meter in meters))
    reads = {name: scale * (1.0 - loss_pct / 100.0 * (name == "hub")) for name, scale in scales.items()}
    for pair in found.pairs:
        names = f"{pair.first} less {pair.second}"
        agreed = pair.power.with_zeros
        one, two = reads[pair.first], reads[pair.second]
        of = (one + two) / 2.0 if pair.percent_of == "mean of both" else reads[pair.percent_of]
        yield Told(
            f"difference in percent, {names}",
            100.0 * (one - two) / of,
            None if agreed is None else agreed.difference_pct,
        )
        pedalled = pair.power.without_zeros
        yield Told(
            f"difference in percent, pedalling, {names}",
            100.0 * (one - two) / of,
            None if pedalled is None else pedalled.difference_pct,
        )
        line = pair.deming
        yield Told(f"scale, {names}", two / one, None if line is None else line.scale_interval)
        yield Told(f"offset, {names}", 0.0, None if line is None else line.offset_interval)
        for band in pair.by_power:
            yield Told(f"band of power in percent, {names}", 100.0 * (one - two) / of, band.difference_pct)
    assert found.aligned is not None
    for name, lag in zip(found.aligned.names, found.aligned.lags, strict=True):
        if name != "spider":
            known = lag.lag_s is not None and lag.plus_minus_s is not None
            reach = (
                Estimate(lag.lag_s, lag.lag_s - lag.plus_minus_s, lag.lag_s + lag.plus_minus_s)
                if known
                else None
            )
            yield Told(f"lag, {name}", late[name], reach)
    middle = float(np.prod(list(reads.values())) ** (1 / 3))
    for meter in found.three.meters if found.three else ():
        yield Told(f"watts per watt of three, {meter.name}", reads[meter.name] / middle, meter.scale)
        yield Told(f"level of three, {meter.name}", reads[meter.name] / middle, meter.level)
        yield Told(f"offset of three, {meter.name}", 0.0, meter.offset_w)
    yield from drifted(seed)


def drifted(seed: int) -> Iterator[Told]:
    """The drift of two clocks over an hour, of which every other does not drift at all."""
    random = np.random.default_rng([seed, 78])
    ppm = random.uniform(-150, 150) if seed % 2 else 0.0
    truth = ride(PLAN * 3, seed)
    noise = [{"noise_w": random.uniform(2, 6), "noise_memory": random.uniform(0.0, 0.85)} for _ in range(2)]
    one, two = (
        record(truth, Meter(name, late_s=late, clock_ppm=gains, **more), seed)
        for name, late, gains, more in (
            ("pedals", 0.0, 0.0, noise[0]),
            ("spider", random.uniform(-9, 9), ppm, noise[1]),
        )
    )
    pair = (one.times_s, one.power_w, two.times_s, two.power_w)
    found = find_drift(*pair, find_lag(*pair, 20.0), 20.0)
    known = found.ppm is not None and found.low_ppm is not None and found.high_ppm is not None
    yield Told("drift", ppm, Estimate(found.ppm, found.low_ppm, found.high_ppm) if known else None)


def shares(rides: range) -> dict[str, tuple[int, int]]:
    """By figure, how many intervals held the truth, of how many that were claimed."""
    held: Counter[str] = Counter()
    claimed: Counter[str] = Counter()
    for seed in rides:
        for each in told(seed):
            claimed[each.what] += each.claimed
            held[each.what] += each.held
    return {what: (held[what], claimed[what]) for what in claimed}


def main(words: list[str]) -> None:
    """Print how often each kind of interval held."""
    count = int(words[0]) if words else 400
    for what, (held, claimed) in sorted(shares(range(count)).items()):
        print(f"{what:54} {held:4} of {claimed:4} claimed in {count} rides: {100.0 * held / claimed:5.1f} %")


if __name__ == "__main__":
    main(sys.argv[1:])
