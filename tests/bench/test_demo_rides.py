"""The demo's recordings come from the generator, say so, and give back the truth that is behind them."""

from pathlib import Path

import numpy as np
import pytest

from spindlewise.bench.alignment import align
from spindlewise.bench.demo_rides import (
    FIRST_RIDE,
    METERS,
    PLANS,
    SERIES,
    SERIES_PCT_PER_1000_KM,
    SERIES_SCALE,
    THREE_METERS,
    demo_files,
)
from spindlewise.bench.gaps import find_dropouts
from spindlewise.bench.ride_files import read_ride
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.bench.segments import find_segments
from spindlewise.bench.session_record import change_along
from spindlewise.bench.stuck import find_repeats
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import read_yaml

CATALOG = Path(__file__).resolve().parents[2] / "catalog"
RIDES = CATALOG / "bench" / "rides"


def sheet_of(ride_id):
    document, problems = read_yaml(RIDES / ride_id / "ride.yaml", "ride.yaml")
    assert problems == []
    sheet, problems = validate(RideSheet, document)
    assert problems == []
    return sheet


def aligned_of(ride_id):
    sheet = sheet_of(ride_id)
    found = read_ride(sheet, RIDES / ride_id, ride_id)
    assert (found.problems, found.unread) == ((), ())
    return align(found.recordings, sheet.percent_of, sheet.lag_within_s)


def test_every_ride_of_the_demo_is_in_the_generator_and_the_other_way_round():
    assert sorted(path.name for path in RIDES.iterdir()) == sorted(PLANS)


@pytest.mark.parametrize("ride_id", sorted(PLANS))
def test_the_files_are_what_the_generator_gives_to_the_byte(ride_id):
    for name, text in demo_files(ride_id).items():
        raw = (RIDES / ride_id / name).read_bytes()
        assert raw == text.encode()
        assert len(raw) < 200_000


@pytest.mark.parametrize("ride_id", sorted(PLANS))
def test_the_sheet_says_that_it_is_generated_and_names_products_that_are_there(ride_id):
    sheet = sheet_of(ride_id)
    assert sheet.id == ride_id
    assert sheet.made == "generated"
    assert [meter.id for meter in sheet.meters] == [meter.name for meter, _ in METERS[ride_id]]
    products = {meter.product for meter in sheet.meters} - {"not applicable"}
    assert products
    assert all((CATALOG / "products" / f"{product}.yaml").is_file() for product in products)


def test_the_truth_of_the_three_meters_is_recovered():
    aligned = aligned_of(THREE_METERS)
    pedals, spider, hub = aligned.power_w
    assert aligned.lags[aligned.row("pedals")].lag_s == pytest.approx(0.5, abs=0.2)
    assert aligned.lags[aligned.row("hub")].lag_s == pytest.approx(-14 + 0.5, abs=0.2)
    both = (pedals > 0) & (spider > 0) & (hub > 0)
    assert np.mean(pedals[both]) / np.mean(spider[both]) == pytest.approx(1.002 / 0.998, abs=0.004)
    assert np.mean(hub[both]) / np.mean(spider[both]) == pytest.approx(1.004 * 0.974 / 0.998, abs=0.004)


def test_its_dropouts_are_told_from_its_coasting():
    aligned = aligned_of(THREE_METERS)

    def lost(name):
        row = aligned.row(name)
        others = [other for other in range(3) if other != row]
        found = find_dropouts(
            name,
            aligned.seconds,
            aligned.power_w[row],
            aligned.power_w[others],
            aligned.written[row],
            aligned.written[others],
            max(aligned.edge_s),
            aligned.clocks[row].interval_s,
        )
        assert len(found.of_kind("coasting")) == 4
        return found.dropout_s

    assert (lost("pedals"), lost("spider"), lost("hub")) == (5, 0, 15)


def test_its_held_reading_is_found():
    aligned = aligned_of(THREE_METERS)
    row = aligned.row("spider")
    runs = find_repeats(aligned.seconds, aligned.power_w[row], np.delete(aligned.power_w, row, axis=0)).runs
    assert [run.stuck for run in runs] == [True]
    assert runs[0].length_s == pytest.approx(12, abs=1)


def test_its_segments_are_those_of_the_plan():
    aligned = aligned_of(THREE_METERS)
    row = aligned.row("spider")
    own = np.flatnonzero(aligned.written[row])  # as a report looks at it
    ridden = slice(own[0], own[-1] + 1)
    altitude = aligned.altitude_m[aligned.row("pedals"), ridden]
    kinds = [s.kind for s in find_segments(aligned.seconds[ridden], aligned.power_w[row, ridden], altitude)]
    assert kinds.count("sprint") == 2
    assert kinds.count("climb") == 1
    assert kinds.count("over-under") == 1
    assert "intervals" in kinds
    assert kinds.count("steady") >= 5


def test_the_doubled_side_of_the_first_ride_reads_low():
    aligned = aligned_of(FIRST_RIDE)
    left, spider = aligned.power_w
    both = (left > 0) & (spider > 0)
    assert np.mean(left[both]) / np.mean(spider[both]) == pytest.approx(0.985 * 0.96 / 0.998, abs=0.02)


def test_a_ride_that_the_demo_does_not_have():
    with pytest.raises(KeyError):
        demo_files("no-such-ride")


def test_the_long_series_is_one_unit_that_gains_what_the_truth_says():
    biases = []
    for name, (km, _) in SERIES.items():
        sheet = sheet_of(name)
        pedals = next(meter for meter in sheet.meters if meter.id == "pedals")
        assert (pedals.ridden_km, pedals.unit) == (km, "the long-term pair")
        aligned = aligned_of(name)
        power = aligned.power_w[[aligned.row("pedals"), aligned.row("spider")]]
        both = (power > 0).all(axis=0)
        biases.append(100.0 * (power[0, both].mean() / power[1, both].mean() - 1.0))
    found = change_along([km / 1000.0 for km, _ in SERIES.values()], biases)
    # the truth is told against the spider, which reads 0.998
    assert found.holds(SERIES_PCT_PER_1000_KM * SERIES_SCALE / 0.998)
    assert not found.holds(0.0)
