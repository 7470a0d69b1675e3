"""A ride's page: what was said, the pictures, the files, and what the script draws from."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import numpy as np
import pytest

import worlds
from small_rides import FIRST, THREE, demo, leaning, report
from spindlewise.answer.bench_kept import KeptRide, kept_rides
from spindlewise.answer.desk import Desk
from spindlewise.bench.synthetic_ride import Meter, Stretch
from spindlewise.catalog.opening import open_catalog
from spindlewise.render.as_text import as_text
from spindlewise.site import ride_page as module
from spindlewise.site.ride_page import ride_page

CATALOG = Path(__file__).parents[2] / "catalog"


@pytest.fixture(scope="module")
def pages():
    catalog, problems = open_catalog(CATALOG)
    assert catalog is not None, problems
    return {
        ride.report.sheet.id: ride_page(catalog, ride)
        for ride in kept_rides(Desk(catalog, date(2026, 11, 20)))
    }


def page(found):
    return ride_page(worlds.desk([], []).catalog, KeptRide("bench/rides/a-ride", found, (), ()))


def test_the_page_of_the_demo_s_ride(pages):
    found = pages[THREE]
    assert found.path == f"bench/rides/{THREE}.html"
    assert (found.state, found.because, found.generated) == ("counts", "", True)
    assert found.products == ("osmeryd-avessin",)
    assert [section.name for section in found.opening] == ["head", "short"]
    assert [section.name for section, _, _ in found.pairs] == ["pair-1", "pair-2", "pair-3"]
    assert all(len(figures) == 2 for _, figures, _ in found.pairs)
    assert [s.name for s in found.rest] == ["three", "segments", "recordings", "noted", "product"]
    names = [picture.name for picture in found.pictures]
    assert len(names) == len(set(names)) > 12


def test_the_files_are_named_with_their_digests(pages):
    import hashlib

    for meter, file, rows, digest in pages[THREE].files:
        raw = (CATALOG / file).read_bytes()
        assert hashlib.sha256(raw).hexdigest() == digest
        assert meter in file
        assert 0 < rows <= raw.count(b"\n")


def test_a_ride_that_counts_for_nothing_says_why(pages):
    found = pages[FIRST]
    assert found.state == "bedding-in"
    assert "first half hour" in found.because


def test_the_script_draws_what_was_recorded(pages):
    zoom, aligned = pages[THREE].zoom, demo(THREE).aligned
    assert zoom["names"] == list(aligned.names)
    assert zoom["step_s"] == 1
    for row, watts in zip(aligned.power_w, zoom["watts"], strict=True):
        assert [w is None for w in watts] == np.isnan(row).tolist()
        known = [w for w in watts if w is not None]
        assert known == np.round(row[np.isfinite(row)]).astype(int).tolist()
    assert ["lap 1, 0:00:00", 0.0, 620.0] in zoom["parts"]
    assert not any("yard" in words for words, _, _ in zoom["parts"])


def test_a_very_long_ride_is_given_to_the_script_in_means(monkeypatch):
    monkeypatch.setattr(module, "MOST_NUMBERS", 500)
    zoom = page(report(Meter("pedals"), Meter("spider"), plan=[Stretch(600, 200)])).zoom
    assert zoom["step_s"] == 3
    assert sum(len(row) for row in zoom["watts"]) <= 500


def test_with_many_meters_only_pairs_with_the_reference_have_pictures():
    names = ("pedals", "crank", "hub", "trainer", "spider")
    found = page(
        report(*(Meter(name, noise_w=2) for name in names), plan=[Stretch(200, 200), Stretch(200, 260)])
    )
    assert len(found.pairs) == 10
    drawn = [section.blocks[0].text for section, figures, _ in found.pairs if figures]
    assert len(drawn) == 4
    assert all("less spider" in words for words in drawn)


def test_a_ride_of_which_nothing_could_be_read_has_a_page_without_pictures():
    empty = replace(report(Meter("pedals")), recordings=(), aligned=None, pairs=(), segments=(), three=None)
    found = page(replace(empty, unread=("pedals",)))
    assert (found.pictures, found.zoom, found.files, found.pairs) == ([], None, (), ())


def test_a_pair_of_which_too_little_is_compared_has_no_figures_of_its_own():
    found = page(report(Meter("pedals"), Meter("spider"), plan=[Stretch(15, 200)]))
    assert found.pairs == ()
    assert len(found.lines) == 1


def test_a_difference_that_leans_is_said_and_drawn_though_its_average_is_nothing():
    found = page(leaning())
    words = as_text([block for section in found.opening for block in section.blocks], 400)
    assert "pedals and spider, agreement: depends on power." in words
    assert "the average hides it" in words
    ((_, (limits, bands), _),) = found.pairs
    assert len(limits.picture.shown.slope) == 2
    assert "changes with power: +" in limits.picture.description
    assert "changes with power: +" in limits.caption
    pcts = [band.pct for band in bands.picture.shown.bands]
    assert pcts[0] > 3 > 0 > -2 > pcts[-1]
