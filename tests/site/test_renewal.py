import errno
import os
from pathlib import Path

import pytest

from spindlewise.catalog.durable import CannotWrite
from spindlewise.site import renewal
from spindlewise.site.renewal import NotAtOneStroke, exchange, renew

FILES = {"index.html": b"new", "products/heron.html": b"heron"}


def contents(folder: Path) -> dict[str, bytes]:
    return {
        p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()
    }


def only(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_folder_that_is_not_there_yet_appears_whole(tmp_path):
    renew(tmp_path / "deep" / "site", FILES, ())
    assert contents(tmp_path / "deep" / "site") == FILES
    assert only(tmp_path / "deep") == ["site"]


def test_old_and_new_change_places_and_the_old_one_goes(tmp_path):
    out = tmp_path / "site"
    renew(out, {**FILES, "old/page.html": b"old"}, ())
    before = out.stat().st_ino
    renew(out, {**FILES, "index.html": b"newer"}, ("old/page.html",))
    assert contents(out) == {"index.html": b"newer", "products/heron.html": b"heron"}
    assert out.stat().st_ino != before
    assert not (out / "old").exists()
    assert only(tmp_path) == ["site"]


def test_a_reader_sees_the_old_site_or_the_new_one(tmp_path, monkeypatch):
    """Whatever a reader finds just before and just after the two change places is one whole site."""
    out, seen = tmp_path / "site", []
    renew(out, FILES, ())

    def watched(one, other):
        seen.append(contents(out))
        exchange(one, other)
        seen.append(contents(out))

    monkeypatch.setattr(renewal, "exchange", watched)
    renew(out, {"index.html": b"newer", "about.html": b"about"}, ("products/heron.html",))
    assert seen == [FILES, {"index.html": b"newer", "about.html": b"about"}]


def test_what_somebody_else_put_there_stays_the_same_file(tmp_path):
    out = tmp_path / "site"
    renew(out, FILES, ())
    (out / "notes").mkdir()
    (out / "notes" / "mine.txt").write_text("mine")
    (out / "empty").mkdir()
    (out / "elsewhere").symlink_to("/nowhere")
    out.chmod(0o750)
    (out / "index.html").chmod(0o640)
    stamps = {p: (p.stat().st_ino, p.stat().st_mtime_ns) for p in out.rglob("*") if p.is_file()}
    renew(out, {**FILES, "index.html": b"newer"}, ())
    for path, stamp in stamps.items():
        same = (path.stat().st_ino, path.stat().st_mtime_ns) == stamp
        assert same == (path.name != "index.html"), path
    assert (out / "elsewhere").readlink() == Path("/nowhere")
    assert (out / "empty").is_dir()
    assert out.stat().st_mode & 0o7777 == 0o750
    assert (out / "index.html").stat().st_mode & 0o7777 == 0o640


def test_a_file_that_comes_in_meanwhile_is_taken_over(tmp_path, monkeypatch):
    out = tmp_path / "site"
    renew(out, FILES, ())

    def late(one, other):
        (other / "late").mkdir()
        (other / "late" / "note.txt").write_text("mine")
        exchange(one, other)

    monkeypatch.setattr(renewal, "exchange", late)
    renew(out, {**FILES, "index.html": b"newer"}, ())
    assert contents(out)["late/note.txt"] == b"mine"
    assert only(tmp_path) == ["site"]


def test_of_two_publishers_at_once_the_last_one_stands_whole(tmp_path, monkeypatch):
    out = tmp_path / "site"
    renew(out, FILES, ())
    theirs = {"index.html": b"theirs", "products/heron.html": b"theirs"}
    ours = {"index.html": b"newer", "products/heron.html": b"heron"}
    begin = renewal._begin

    def overtaken(out, beside):
        monkeypatch.setattr(renewal, "_begin", begin)
        renew(out, theirs, ())
        begin(out, beside)

    monkeypatch.setattr(renewal, "_begin", overtaken)
    renew(out, ours, ())
    assert contents(out) == ours


def test_a_link_to_a_folder_stays_a_link(tmp_path):
    (tmp_path / "real").mkdir()
    (tmp_path / "site").symlink_to(tmp_path / "real")
    renew(tmp_path / "site", FILES, ())
    assert (tmp_path / "site").is_symlink()
    assert contents(tmp_path / "real") == FILES


def test_what_a_program_of_the_same_number_left_is_cleared_away(tmp_path):
    left = tmp_path / f".site.{os.getpid()}.new"
    left.mkdir()
    (left / "half.html").write_text("half")
    renew(tmp_path / "site", FILES, ())
    assert contents(tmp_path / "site") == FILES
    assert only(tmp_path) == ["site"]


def test_a_file_in_the_way_is_left_alone(tmp_path):
    (tmp_path / "site").write_text("mine")
    with pytest.raises(CannotWrite, match="site: the folder is not a folder"):
        renew(tmp_path / "site", FILES, ())
    assert (tmp_path / "site").read_text() == "mine"


def refusing(number):
    def refuse(*_args, **_values):
        raise OSError(number, os.strerror(number))

    return refuse


@pytest.mark.parametrize("number", [errno.EBUSY, errno.EXDEV, errno.EINVAL, errno.ENOSYS])
def test_where_names_cannot_be_exchanged_it_says_so_and_changes_nothing(tmp_path, monkeypatch, number):
    out = tmp_path / "site"
    renew(out, FILES, ())
    monkeypatch.setattr(renewal, "exchange", refusing(number))
    with pytest.raises(NotAtOneStroke, match="cannot be renamed"):
        renew(out, {"index.html": b"newer"}, ())
    assert contents(out) == FILES
    assert only(tmp_path) == ["site"]


def test_where_files_have_one_name_only_it_says_so(tmp_path, monkeypatch):
    out = tmp_path / "site"
    renew(out, FILES, ())
    monkeypatch.setattr(os, "link", refusing(errno.EPERM))
    with pytest.raises(NotAtOneStroke, match="one name only"):
        renew(out, {**FILES, "index.html": b"newer"}, ())
    assert contents(out) == FILES


def test_where_nothing_may_be_made_beside_it_says_so(tmp_path, monkeypatch):
    out = tmp_path / "site"
    renew(out, FILES, ())
    monkeypatch.setattr(os, "mkdir", refusing(errno.EACCES))
    with pytest.raises(NotAtOneStroke, match="nothing can be made beside"):
        renew(out, {**FILES, "index.html": b"newer"}, ())
    assert contents(out) == FILES


def test_a_folder_that_cannot_be_listed_is_not_replaced(tmp_path, monkeypatch):
    """What is not seen would be lost."""
    out = tmp_path / "site"
    renew(out, FILES, ())
    monkeypatch.setattr(os, "scandir", refusing(errno.EACCES))
    with pytest.raises(CannotWrite, match="not permitted"):
        renew(out, {**FILES, "index.html": b"newer"}, ())
    monkeypatch.undo()
    assert contents(out) == FILES


def test_without_the_call_three_renames_do(tmp_path, monkeypatch):
    monkeypatch.setattr(renewal.os, "name", "elsewhere")
    (tmp_path / "a").mkdir()
    (tmp_path / "b").mkdir()
    (tmp_path / "a" / "one").touch()
    exchange(tmp_path / "a", tmp_path / "b")
    assert only(tmp_path / "b") == ["one"]
    assert only(tmp_path) == ["a", "b"]


def test_a_second_rename_that_fails_puts_the_first_one_back(tmp_path, monkeypatch):
    monkeypatch.setattr(renewal.os, "name", "elsewhere")
    (tmp_path / "b").mkdir()
    with pytest.raises(FileNotFoundError):
        exchange(tmp_path / "none", tmp_path / "b")
    assert only(tmp_path) == ["b"]


def test_an_exchange_that_the_system_refuses_is_an_error(tmp_path):
    (tmp_path / "b").mkdir()
    with pytest.raises(FileNotFoundError):
        exchange(tmp_path / "none", tmp_path / "b")


def test_an_old_folder_that_cannot_be_removed_is_named(tmp_path, monkeypatch):
    out = tmp_path / "site"
    renew(out, FILES, ())
    monkeypatch.setattr(renewal.shutil, "rmtree", refusing(errno.EACCES))
    with pytest.raises(CannotWrite, match="the site is published, but the old one stays here"):
        renew(out, {**FILES, "index.html": b"newer"}, ())
    assert contents(out)["index.html"] == b"newer"
