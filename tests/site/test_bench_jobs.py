"""The bench's pages as bytes: an index always, the others where there is something to show."""

import json
import re
from datetime import date
from pathlib import Path

import pytest

import worlds
from small_rides import THREE
from spindlewise.answer.desk import Desk
from spindlewise.site.bench_jobs import bench_jobs
from spindlewise.site.bench_pages import bench_pages
from spindlewise.site.frame import frame_of

MIB = 1 << 20


def made(desk):
    drawn = {picture.key: "<svg></svg>" for picture in bench_pages(desk).pictures}
    return {job.path: job.make().decode() for job in bench_jobs(bench_pages(desk), frame_of(desk, {}), drawn)}


def test_a_catalog_without_a_bench_has_an_index_that_says_so():
    found = made(worlds.desk([worlds.product("heron")], []))
    assert list(found) == ["bench/index.html"]
    assert "No ride of several meters is kept here" in found["bench/index.html"]


@pytest.fixture(scope="module")
def pages(site):
    return {p.relative_to(site.folder).as_posix(): p for p in site.pages() if "bench" in p.parts}


def test_every_ride_of_the_demo_has_a_page_below_one_mib(site, pages):
    rides = sorted(p.name for p in (Path(site.catalog.folder) / "bench" / "rides").iterdir())
    assert len(rides) >= 2
    for ride in rides:
        assert 10_000 < pages[f"bench/rides/{ride}.html"].stat().st_size < MIB


def test_the_index_leads_to_every_page_of_the_bench(pages):
    index = pages["bench/index.html"].read_text("utf-8")
    for path in pages:
        if path != "bench/index.html":
            assert f'href="{path.removeprefix("bench/")}"' in index, path


def test_the_product_s_page_leads_to_its_ride_and_back(site, pages):
    product = (site.folder / "products" / "osmeryd-avessin.html").read_text("utf-8")
    assert f'href="../bench/rides/{THREE}.html"' in product
    assert 'href="../bench/sessions.html#sessions-osmeryd-avessin"' in product
    assert 'href="../../products/osmeryd-avessin.html"' in pages[f"bench/rides/{THREE}.html"].read_text(
        "utf-8"
    )


def test_the_page_says_that_nothing_of_it_was_measured(pages):
    assert "Drawn by a program: nothing of it was measured" in pages[f"bench/rides/{THREE}.html"].read_text(
        "utf-8"
    )


def test_the_data_for_the_script_can_be_read_and_end_no_element(pages):
    text = pages[f"bench/rides/{THREE}.html"].read_text("utf-8")
    (raw,) = re.findall(r'<script type="application/json" id="ride-data">(.*?)</script>', text, re.S)
    assert "<" not in raw
    assert json.loads(raw)["names"] == ["pedals", "spider", "hub"]


def test_a_ride_of_a_later_day_is_on_no_page(site):
    early = made(Desk(site.catalog, date(2025, 9, 30)))
    assert f"bench/rides/{THREE}.html" not in early
    assert THREE not in early["bench/index.html"]
