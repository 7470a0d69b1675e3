import json
from dataclasses import replace
from pathlib import Path

import pytest

import worlds
from spindlewise.catalog.durable import CannotWrite
from spindlewise.site.build import compared, publish
from spindlewise.site.manifest import sha256
from spindlewise.site.renewal import NotAtOneStroke


def two(amount=500):
    products = [worlds.product("heron"), worlds.product("siskin")]
    return worlds.catalog(products, [worlds.price("heron", amount), worlds.price("siskin", 450)])


def one():
    return worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])


def contents(folder: Path) -> dict[str, bytes]:
    return {
        p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()
    }


def test_publishing_twice_rewrites_nothing(tmp_path):
    buyers = {"tester": worlds.buyer()}
    first = publish(two(), buyers, worlds.DAY, tmp_path)
    before = contents(tmp_path)
    stamps = {path: (tmp_path / path).stat() for path in before}
    second = publish(two(), buyers, worlds.DAY, tmp_path)
    assert first.unchanged == 0
    assert (second.changed, second.removed, second.kept) == ((), (), ())
    assert second.unchanged == second.files == first.files == len(before)
    assert contents(tmp_path) == before
    for path, stamp in stamps.items():
        now = (tmp_path / path).stat()
        assert (now.st_ino, now.st_mtime_ns) == (stamp.st_ino, stamp.st_mtime_ns)


def test_two_folders_get_the_same_bytes(tmp_path):
    publish(two(), {}, worlds.DAY, tmp_path / "a")
    publish(two(), {}, worlds.DAY, tmp_path / "b")
    assert contents(tmp_path / "a") == contents(tmp_path / "b")


def test_only_pages_that_show_a_price_change_with_it(tmp_path):
    publish(two(500), {}, worlds.DAY, tmp_path)
    found = publish(two(480), {}, worlds.DAY, tmp_path)
    assert "products/heron.html" in found.changed
    assert "data/prices.csv" in found.changed
    assert {"products/siskin.html", "method.html", "cautions.html"}.isdisjoint(found.changed)
    assert found.changed[-1] == "manifest.json"


def test_stale_pages_of_ours_go_and_nothing_else(tmp_path):
    publish(two(), {"tester": worlds.buyer()}, worlds.DAY, tmp_path)
    (tmp_path / "notes.txt").write_text("mine")
    (tmp_path / "products" / "mine.html").write_text("mine")
    found = publish(one(), {}, worlds.DAY, tmp_path)
    assert found.removed == (
        "buyers/tester.html",
        "data/ranking-tester.json",
        "pairs/tester.html",
        "products/siskin.html",
    )
    assert not (tmp_path / "products" / "siskin.html").exists()
    assert (tmp_path / "notes.txt").read_text() == "mine"
    assert (tmp_path / "products" / "mine.html").read_text() == "mine"


def test_what_killed_programs_left_goes_even_where_nothing_changed(tmp_path):
    out, dead = tmp_path / "site", 2**22 + 1  # above the highest number that Linux gives a process
    publish(one(), {}, worlds.DAY, out)
    for left in (tmp_path / f".site.{dead}.new", tmp_path / f".other.{dead}.new"):
        left.mkdir()
        (left / "half.html").write_text("half")
    (out / f".index.html.{dead}.new").write_text("half")
    publish(one(), {}, worlds.DAY, out)
    assert sorted(path.name for path in tmp_path.iterdir()) == [f".other.{dead}.new", "site"]
    assert list(out.glob(".*")) == []


def test_where_it_cannot_be_put_in_place_at_one_stroke_it_is_written_file_by_file(tmp_path, monkeypatch):
    def refuse(*_):
        raise NotAtOneStroke("planted")

    publish(two(), {"tester": worlds.buyer()}, worlds.DAY, tmp_path / "whole")
    monkeypatch.setattr("spindlewise.site.build.renew", refuse)
    first = publish(one(), {}, worlds.DAY, tmp_path / "site")
    assert first.file_by_file == "planted"
    publish(two(), {"tester": worlds.buyer()}, worlds.DAY, tmp_path / "site")
    assert contents(tmp_path / "site") == contents(tmp_path / "whole")
    found = publish(one(), {}, worlds.DAY, tmp_path / "site")
    assert found.removed == (
        "buyers/tester.html",
        "data/ranking-tester.json",
        "pairs/tester.html",
        "products/siskin.html",
    )
    (tmp_path / "site" / "index.html").write_text("changed by somebody, and the manifest is as it was")
    assert publish(one(), {}, worlds.DAY, tmp_path / "site").changed == ("index.html",)
    assert b"changed by somebody" not in contents(tmp_path / "site")["index.html"]


def test_compared_says_what_publish_would_do_and_does_nothing(tmp_path):
    out = tmp_path / "site"
    assert compared(two(), {}, worlds.DAY, out).unchanged == 0
    assert not out.exists()
    publish(two(), {"tester": worlds.buyer()}, worlds.DAY, out)
    before = contents(out)
    found = compared(one(), {}, worlds.DAY, out)
    assert contents(out) == before
    assert publish(one(), {}, worlds.DAY, out) == found
    assert compared(one(), {}, worlds.DAY, out).changed == ()


def european_only():
    catalog = one()
    regions = {"EU": catalog.settings.regions["EU"]}
    return replace(catalog, settings=catalog.settings.model_copy(update={"regions": regions}))


def test_a_folder_that_becomes_empty_goes_too(tmp_path):
    publish(one(), {}, worlds.DAY, tmp_path)
    publish(european_only(), {}, worlds.DAY, tmp_path)
    assert not (tmp_path / "regions").exists()


def test_nothing_is_removed_through_a_linked_folder(tmp_path):
    out, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    publish(one(), {}, worlds.DAY, out)
    (out / "regions").rename(elsewhere)
    (out / "regions").symlink_to(elsewhere, target_is_directory=True)
    publish(european_only(), {}, worlds.DAY, out)
    assert sorted(path.name for path in elsewhere.iterdir()) == ["jp.html", "us.html"]


def test_a_stale_page_that_somebody_changed_is_kept_and_named(tmp_path):
    publish(two(), {}, worlds.DAY, tmp_path)
    (tmp_path / "products" / "siskin.html").write_text("mine now")
    found = publish(one(), {}, worlds.DAY, tmp_path)
    assert found.kept == ("products/siskin.html",)
    assert (tmp_path / "products" / "siskin.html").read_text() == "mine now"


def test_a_stale_page_that_is_gone_already_is_no_matter(tmp_path):
    publish(two(), {}, worlds.DAY, tmp_path)
    (tmp_path / "products" / "siskin.html").unlink()
    assert publish(one(), {}, worlds.DAY, tmp_path).removed == ()


def test_the_manifest_has_the_hash_of_every_other_file(tmp_path):
    publish(two(), {}, worlds.DAY, tmp_path)
    manifest = json.loads((tmp_path / "manifest.json").read_text())
    files = contents(tmp_path)
    del files["manifest.json"]
    assert manifest["outputs"] == {path: sha256(data) for path, data in files.items()}
    assert manifest["as_of"] == "2026-11-20"
    assert manifest["inputs"] == {}  # this catalog has no files


def test_a_site_of_a_newer_program_is_left_alone(tmp_path):
    manifest = tmp_path / "manifest.json"
    manifest.write_text('{"schema": "spindlewise manifest 3", "outputs": {}}')
    with pytest.raises(
        CannotWrite, match=r"manifest\.json: was written for a newer Spindlewise: .*; update Sp"
    ):
        publish(two(), {}, worlds.DAY, tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["manifest.json"]


def test_a_manifest_that_names_files_outside_removes_none_of_them(tmp_path):
    out, outside = tmp_path / "site", tmp_path / "outside.txt"
    outside.write_text("mine")
    publish(one(), {}, worlds.DAY, out)
    manifest = json.loads((out / "manifest.json").read_text())
    manifest["outputs"]["../outside.txt"] = sha256(b"mine")
    (out / "manifest.json").write_text(json.dumps(manifest))
    publish(one(), {}, worlds.DAY, out)
    assert outside.read_text() == "mine"


def test_a_stale_page_that_is_now_a_link_is_left_alone(tmp_path):
    out = tmp_path / "site"
    publish(two(), {"tester": worlds.buyer()}, worlds.DAY, out)
    stale = out / "data" / "ranking-tester.json"
    stale.rename(tmp_path / "kept.json")
    stale.symlink_to(tmp_path / "kept.json")
    publish(two(), {}, worlds.DAY, out)
    assert stale.is_symlink()
    assert (tmp_path / "kept.json").exists()


def test_a_linked_folder_is_refused_before_anything_is_written(tmp_path):
    out, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    out.mkdir()
    elsewhere.mkdir()
    (out / "products").symlink_to(elsewhere, target_is_directory=True)
    with pytest.raises(CannotWrite, match="it is a link"):
        publish(one(), {}, worlds.DAY, out)
    assert [path.name for path in out.iterdir()] == ["products"]
    assert list(elsewhere.iterdir()) == []


def test_a_file_where_a_folder_should_be_is_said_in_words(tmp_path):
    (tmp_path / "site").write_text("a file")
    with pytest.raises(CannotWrite, match=r"site"):
        publish(one(), {}, worlds.DAY, tmp_path / "site")
    (tmp_path / "other").mkdir()
    (tmp_path / "other" / "index.html").mkdir()
    with pytest.raises(CannotWrite, match=r"index\.html: a folder stands there"):
        publish(one(), {}, worlds.DAY, tmp_path / "other")


def test_a_page_that_cannot_be_made_leaves_the_old_site_whole(tmp_path, monkeypatch):
    publish(one(), {}, worlds.DAY, tmp_path)
    before = contents(tmp_path)

    def fails(*_args, **_values):
        raise RuntimeError("planted")

    monkeypatch.setattr("spindlewise.site.download_jobs.prices_csv", fails)
    with pytest.raises(RuntimeError, match="planted"):
        publish(two(400), {}, worlds.DAY, tmp_path)
    assert contents(tmp_path) == before


def not_again(picture):
    raise AssertionError(f"{picture.title} was drawn again")


def test_pictures_that_stand_in_the_pages_are_not_drawn_again(tmp_path, monkeypatch):
    publish(two(), {"tester": worlds.buyer()}, worlds.DAY, tmp_path)
    before = contents(tmp_path)
    assert b'data-drawn="' in before["index.html"]
    monkeypatch.setattr("spindlewise.site.picture.drawn", not_again)
    publish(two(), {"tester": worlds.buyer()}, worlds.DAY, tmp_path)
    assert contents(tmp_path) == before


SHOWN_IN = ("index.html", "weigh.html")


def test_a_picture_in_a_page_that_somebody_changed_is_drawn_again(tmp_path, monkeypatch):
    publish(two(), {}, worlds.DAY, tmp_path)
    before = contents(tmp_path)
    # the same picture stands in both
    pages = {name: before[name].replace(b"</svg>", b"<text>mine</text></svg>") for name in SHOWN_IN}
    for name, page in pages.items():
        (tmp_path / name).write_bytes(page)
    found = publish(two(), {}, worlds.DAY, tmp_path)
    assert found.changed == SHOWN_IN
    assert contents(tmp_path) == before
    for name, page in pages.items():
        (tmp_path / name).write_bytes(page)
    monkeypatch.setattr("spindlewise.site.picture.drawn", not_again)
    with pytest.raises(AssertionError, match="drawn again"):
        publish(two(), {}, worlds.DAY, tmp_path)
