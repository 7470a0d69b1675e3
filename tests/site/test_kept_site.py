import json

import pytest

from spindlewise.catalog.durable import CannotWrite
from spindlewise.catalog.shelf import Shelf
from spindlewise.site.kept_site import KeptSite, put_site, take_site
from spindlewise.site.manifest import sha256

PAGE = b"<p>a page</p>"


@pytest.fixture
def shelf(tmp_path):
    return Shelf(tmp_path / "shelf")


@pytest.fixture
def out(tmp_path):
    folder = tmp_path / "site"
    (folder / "products").mkdir(parents=True)
    (folder / "products" / "heron.html").write_bytes(PAGE)
    return folder


FILES = {"product heron": ("resting", {"products/heron.html": sha256(PAGE)})}


def put(shelf, out, files=None, **things):
    kept = KeptSite(out)
    for name, thing in things.items():
        kept.keep(name, "resting", thing)
    put_site(shelf, kept, out, FILES if files is None else files)
    return take_site(shelf, out)


def test_a_thing_is_worked_out_once_for_as_long_as_it_rests_on_the_same(shelf, out):
    kept = put(shelf, out, market="closed")
    assert kept.thing("market", "resting", lambda: "worked out") == "closed"
    assert kept.thing("market", "something else", lambda: "worked out") == "worked out"
    assert kept.last("market", "resting") == "closed"
    assert kept.last("market", "something else") is None
    assert kept.last("weather", "resting") is None


def test_what_nobody_asks_for_again_is_let_go_and_what_is_carried_stays(shelf, out):
    kept = put(shelf, out, one=1, two=2)
    assert kept.carry("one", "resting")
    assert not kept.carry("two", "something else")
    put_site(shelf, kept, out, {})
    assert set(take_site(shelf, out).things) == {"one"}


def test_a_part_stands_while_its_files_do(shelf, out):
    kept = put(shelf, out)
    page = out / "products" / "heron.html"
    assert kept.still_stand("product heron", "resting") == FILES["product heron"][1]
    assert kept.still_stand("product heron", "something else") is None
    assert kept.still_stand("product siskin", "resting") is None
    page.write_bytes(PAGE + b" ")
    assert kept.still_stand("product heron", "resting") is None
    page.unlink()
    assert kept.still_stand("product heron", "resting") is None
    (out / "elsewhere.html").write_bytes(PAGE)
    page.symlink_to(out / "elsewhere.html")
    assert kept.still_stand("product heron", "resting") is None, "a link may lead anywhere"


def test_a_folder_in_the_place_of_a_page_is_said(shelf, out):
    kept = put(shelf, out)
    (out / "products" / "heron.html").unlink()
    (out / "products" / "heron.html").mkdir()
    with pytest.raises(CannotWrite, match=r"heron\.html"):
        kept.still_stand("product heron", "resting")


def test_every_folder_has_its_own(shelf, out, tmp_path):
    put(shelf, out, market="closed")
    assert take_site(shelf, tmp_path / "other") == KeptSite(tmp_path / "other")
    assert take_site(None, out) == KeptSite(out)
    put_site(None, KeptSite(out), out, FILES)


@pytest.mark.parametrize(
    "parts",
    [
        [],
        [b"no JSON"],
        [b"[]"],
        [b'{"files": 3}'],
        [b'{"files": {"lists": 3}}'],
        [b'{"things": [["market", "resting"]]}'],
        [json.dumps({"files": {"lists": ["resting", {"../out.html": "00"}]}}).encode()],
    ],
)
def test_what_cannot_be_trusted_is_as_good_as_nothing(shelf, out, parts):
    put(shelf, out, market="closed")
    name = next(path.name for path in shelf.folder.iterdir())
    shelf.put(name, parts)
    assert take_site(shelf, out) == KeptSite(out)


def test_a_thing_that_is_no_record_is_worked_out_anew(shelf, out):
    put(shelf, out, market="closed")
    name = next(path.name for path in shelf.folder.iterdir())
    index, _ = shelf.take(name)
    shelf.put(name, [index, b"cos\nsystem\n(S'true'\ntR."])
    kept = take_site(shelf, out)
    assert kept.last("market", "resting") is None
    assert kept.thing("market", "resting", lambda: "open") == "open"


def test_pictures_are_taken_from_pages_that_stand_as_they_were_written(shelf, out):
    key = "0" * 32
    chart = f'<svg class="chart" data-drawn="{key}"><path/></svg>'
    data = f"<p>{chart}</p>".encode()
    (out / "one.html").write_bytes(data)
    (out / "two.txt").write_bytes(data)
    kept = take_site(shelf, out)
    assert kept.pictures({"one.html": sha256(data)}) == {key: chart}
    assert kept.pictures({"one.html": sha256(PAGE), "two.txt": sha256(data), "gone.html": sha256(data)}) == {}
