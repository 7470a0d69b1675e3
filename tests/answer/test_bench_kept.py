"""What the demo keeps on its bench, and what it keeps by an earlier day."""

import shutil
from datetime import date
from pathlib import Path

import pytest

import worlds
from small_rides import FIRST, THREE
from spindlewise.answer.bench_kept import (
    KeptRide,
    UnreadRide,
    kept_hours,
    kept_rides,
    kept_sessions,
    kept_weighings,
)
from spindlewise.answer.desk import Desk
from spindlewise.catalog.opening import open_catalog

CATALOG = Path(__file__).parents[2] / "catalog"


@pytest.fixture(scope="module")
def catalog():
    found, problems = open_catalog(CATALOG)
    assert found is not None, problems
    return found


def test_the_rides_of_the_demo_come_with_their_sessions(catalog):
    kept = {ride.report.sheet.id: ride for ride in kept_rides(Desk(catalog, date(2026, 11, 20)))}
    assert {FIRST, THREE} <= set(kept)
    three = kept[THREE]
    assert three.folder == f"bench/rides/{THREE}"
    assert three.report.recordings[0].source == f"bench/rides/{THREE}/pedals.csv"
    (record,) = three.records
    assert (record.product, len(record.counted)) == ("osmeryd-avessin", 4)


def test_nothing_dated_later_is_kept(catalog):
    desk = Desk(catalog, date(2025, 9, 30))
    assert [ride.report.sheet.id for ride in kept_rides(desk)][-1] == FIRST
    assert THREE not in [ride.report.sheet.id for ride in kept_rides(desk)]
    assert list(kept_rides(Desk(catalog, date(2024, 1, 1)))) == []


def test_sessions_and_weighings_are_those_of_the_files(catalog):
    desk = Desk(catalog, date(2026, 11, 20))
    assert len(kept_sessions(desk)) > 20
    assert len(kept_weighings(desk).weighed) > 20


def test_a_sheet_that_cannot_be_read_is_named_and_the_others_are_read(tmp_path):
    shutil.copytree(CATALOG, tmp_path / "catalog")
    sheet = tmp_path / "catalog" / "bench" / "rides" / FIRST / "ride.yaml"
    sheet.write_text(sheet.read_text("utf-8").replace("crank_mm: 172.5", "crank_mm: long"), "utf-8")
    found, problems = open_catalog(tmp_path / "catalog")
    assert found is not None, problems
    rides = list(kept_rides(Desk(found, date(2026, 11, 20))))
    (first,) = (ride for ride in rides if isinstance(ride, UnreadRide))
    assert first.folder == f"bench/rides/{FIRST}"
    assert "crank_mm" in first.problems[0].message
    assert THREE in [ride.report.sheet.id for ride in rides if isinstance(ride, KeptRide)]


def test_a_catalog_without_a_bench_keeps_nothing():
    desk = worlds.desk([worlds.product("heron")], [])
    assert list(kept_rides(desk)) == []
    assert kept_sessions(desk) == []
    assert kept_weighings(desk).weighed == ()
    assert kept_hours(desk).ran == ()
