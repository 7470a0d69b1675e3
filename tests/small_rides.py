"""Small generated rides of several meters, and the demo's own, compared once for all tests."""

from functools import cache
from pathlib import Path
from typing import Any

from bench.sheets import meter_data, sheet_data
from spindlewise.answer.bench_ride import RideReport, compared, ride_report
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride
from spindlewise.catalog.reading import read_record

RIDES = Path(__file__).parents[1] / "catalog" / "bench" / "rides"
THREE, FIRST = "2025-10-18-three-meters", "2025-09-13-first-ride"
STEPS = [Stretch(240, 150, 84), Stretch(240, 260, 92), Stretch(20, 0, 0), Stretch(240, 200, 88)]


def sheet(*meters: Meter, **more: Any) -> RideSheet:
    """A sheet of these meters, each of the kind that its name says; `percent_of` is the last."""
    facts = more.pop("facts", {})
    whats = {"pedals": {}, "left": {"what": "pedals", "side": "left doubled"}}
    data = [
        meter_data(
            m.name,
            **{**whats.get(m.name, {"what": m.name, "product": "not applicable"}), **facts.get(m.name, {})},
        )
        for m in meters
    ]
    return RideSheet.model_validate(sheet_data(*data, **{"percent_of": meters[-1].name, **more}))


def report(*meters: Meter, plan: list[Stretch] | None = None, seed: int = 5, **more: Any) -> RideReport:
    """These meters' recordings of one generated ride, compared."""
    truth = ride(plan or STEPS, seed)
    return compared(sheet(*meters, **more), tuple(record(truth, meter, seed) for meter in meters))


@cache
def leaning() -> RideReport:
    """Pedals that read 5 % high at 130 W and 5 % low at 285 W: on average they agree."""
    plan = [Stretch(240, watts, 88) for watts in (130, 285, 160, 200, 240, 130, 130)]
    return report(Meter("pedals", scale=0.866, offset_w=23.9, noise_w=3.0), Meter("spider"), plan=plan)


@cache
def demo(name: str = THREE) -> RideReport:
    """A ride of the demo."""
    folder = RIDES / name
    found, _, problems = read_record(RideSheet, folder / "ride.yaml")
    assert found is not None, problems
    return ride_report(found, folder, f"bench/rides/{name}")
