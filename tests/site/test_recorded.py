"""Flipped bits in logs, recordings and pages are found against the manifest; lines may be added to a log."""

import json
import os
import random
import shutil
from pathlib import Path

import pytest

from spindlewise.catalog.file_digest import digests
from spindlewise.site.manifest import NAME, Manifest, sha256
from spindlewise.site.recorded import held_to_record

SMALL = Path(__file__).parents[1] / "data" / "small_catalog"
RIDES = Path(__file__).parents[2] / "catalog" / "bench" / "rides"
FLIPS = 500


@pytest.fixture
def published(tmp_path):
    """A copy of the small catalog with a ride, and a site of two pages with the manifest of both."""
    catalog, out = tmp_path / "catalog", tmp_path / "site"
    shutil.copytree(SMALL, catalog)
    ride = catalog / "bench" / "rides" / "first"
    ride.mkdir(parents=True)
    for path in sorted(next(iter(sorted(RIDES.iterdir()))).iterdir()):
        (ride / path.name).write_bytes(path.read_bytes()[:20_000])
    pages = {"index.html": b"<p>one</p>", "products/two.html": b"<p>two</p>"}
    for name, data in pages.items():
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        (out / name).write_bytes(data)
    manifest = Manifest("2026-11-20", digests(catalog), {k: sha256(v) for k, v in pages.items()})
    (out / NAME).write_bytes(manifest.to_bytes())
    return catalog, out


def rules(catalog, out):
    return [problem.rule for problem in held_to_record(catalog, out)]


def flip(path: Path, bit: int) -> None:
    with path.open("r+b") as file:
        file.seek(bit // 8)
        old = file.read(1)[0]
        file.seek(bit // 8)
        file.write(bytes([old ^ 1 << bit % 8]))


def test_what_is_as_it_was_has_nothing_to_say(published):
    assert rules(*published) == []


def test_each_of_500_flipped_bits_is_found(published):
    catalog, out = published
    draw = random.Random(20261120)
    names = [name for name in digests(catalog) if name.endswith(".csv")]
    assert {"prices.csv", "bench/sessions.csv", "bench/weighings.csv"} < set(names)
    assert any(name.startswith("bench/rides/") for name in names)
    paths = [catalog / name for name in names]
    for _ in range(FLIPS):
        path = draw.choice(paths)
        bit = draw.randrange(8 * path.stat().st_size)
        flip(path, bit)
        found = held_to_record(catalog, out)
        assert [(p.place.file, p.level) for p in found if p.place] == [(path.as_posix(), "error")], bit
        flip(path, bit)
    assert rules(catalog, out) == []


def test_a_log_may_grow_and_may_not_shrink(published):
    catalog, out = published
    log = catalog / "prices.csv"
    whole = log.read_bytes()
    log.write_bytes(whole + b"one line more\n")
    assert rules(catalog, out) == []
    log.write_bytes(whole[: whole.rindex(b"\n", 0, -1) + 1])
    assert rules(catalog, out) == ["log-shortened"]
    log.write_bytes(b"x" + whole)
    assert rules(catalog, out) == ["log-changed"]
    log.unlink()
    assert rules(catalog, out) == ["input-missing"]


def test_a_recording_may_not_even_grow(published):
    catalog, out = published
    recording = next((catalog / "bench" / "rides").rglob("*.csv"))
    recording.write_bytes(recording.read_bytes() + b"1,2,3\n")
    assert rules(catalog, out) == ["recording-changed"]


def test_what_authors_edit_is_a_warning(published):
    catalog, out = published
    product = next((catalog / "products").iterdir())
    product.write_text(product.read_text() + "# seen again\n")
    assert [(p.rule, p.level) for p in held_to_record(catalog, out)] == [("input-changed", "warning")]
    product.unlink()
    assert [(p.rule, p.level) for p in held_to_record(catalog, out)] == [("input-missing", "warning")]


def test_a_page_that_is_not_the_one_that_was_written(published):
    catalog, out = published
    flip(out / "products" / "two.html", 9)
    (out / "index.html").unlink()
    assert rules(catalog, out) == ["page-missing", "page-changed"]


@pytest.mark.parametrize(
    ("manifest", "expected"),
    [
        (None, [("unreadable-file", "error")]),
        ("{}", [("no-manifest", "error")]),
        ({"schema": "spindlewise manifest 7"}, [("newer-schema", "error")]),
        ({"schema": "spindlewise manifest 1"}, [("older-manifest", "warning")]),
    ],
)
def test_what_is_there_in_place_of_a_manifest(published, manifest, expected):
    catalog, out = published
    (out / NAME).unlink()
    if manifest is not None:
        (out / NAME).write_text(manifest if isinstance(manifest, str) else json.dumps(manifest))
    assert [(p.rule, p.level) for p in held_to_record(catalog, out)] == expected


def test_a_file_that_cannot_be_read_is_said(published, monkeypatch):
    catalog, out = published

    def fails(path, *_):
        raise PermissionError(13, os.strerror(13), str(path))

    monkeypatch.setattr("spindlewise.site.recorded.digest_of", fails)
    (found,) = held_to_record(catalog, out)
    assert found.rule == "unreadable-file"
    assert "Permission denied" in found.message
