"""All that the bench's pages show, in the demo and in a catalog that keeps little."""

import shutil
from datetime import date
from pathlib import Path

import pytest

import worlds
from small_rides import FIRST, THREE
from spindlewise.answer.desk import Desk
from spindlewise.catalog.opening import open_catalog
from spindlewise.render.blocks import Heading, Table
from spindlewise.site.bench_pages import bench_pages

CATALOG = Path(__file__).parents[2] / "catalog"
DAY = date(2026, 11, 20)


@pytest.fixture(scope="module")
def bench():
    catalog, problems = open_catalog(CATALOG)
    assert catalog is not None, problems
    return bench_pages(Desk(catalog, DAY))


def test_the_newest_ride_stands_first(bench):
    days = [ride.date for ride in bench.rides]
    assert days == sorted(days, reverse=True)
    assert {FIRST, THREE} <= {ride.id for ride in bench.rides}
    assert bench.unread == ()


def test_a_product_knows_its_rides_and_whether_it_has_sessions(bench):
    assert THREE in [ride.id for ride in bench.by_product["osmeryd-avessin"]]
    assert "osmeryd-avessin" in bench.with_sessions
    assert "lommerside-trasket" not in bench.by_product


def test_each_product_s_sessions_are_all_there_void_ones_too(bench):
    shown = next(each for each in bench.sessions if each.product == "tarnquell-liskar-duo")
    (table,) = (block for block in shown.section.blocks if isinstance(block, Table))
    assert any("void: no zero offset" in cell for row in table.rows for cell in row)


def test_weighings_are_headed_once_and_do_not_repeat_the_notice(bench):
    blocks = bench.weighings.blocks
    assert [block.text for block in blocks if isinstance(block, Heading) and block.level == 1] == [
        "What was weighed"
    ]
    assert not any("is on no map" in getattr(block, "text", "") for block in blocks)


def test_a_sheet_that_cannot_be_read_is_named(tmp_path):
    shutil.copytree(CATALOG, tmp_path / "catalog")
    (tmp_path / "catalog" / "bench" / "rides" / FIRST / "ride.yaml").write_text("schema: another\n")
    catalog, problems = open_catalog(tmp_path / "catalog")
    assert catalog is not None, problems
    found = bench_pages(Desk(catalog, DAY))
    assert found.unread == (f"bench/rides/{FIRST}",)
    assert THREE in [ride.id for ride in found.rides]


def test_a_catalog_without_a_bench():
    found = bench_pages(worlds.desk([worlds.product("heron")], []))
    assert (found.rides, found.sessions, found.weighings, found.hours) == ((), (), None, None)
    assert found.pictures == []
    assert found.by_product == {}
