"""Files appended to and replaced: what is written, what is refused, and what the refusal says."""

import errno
import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest
from filelock import FileLock

from spindlewise.catalog import durable
from spindlewise.catalog.durable import (
    CannotWrite,
    append_line,
    create_file,
    create_files,
    reason,
    remove_leftovers,
    replace_file,
)


def _seen(folder: Path) -> list[str]:
    """What stands in the folder, apart from locks."""
    return sorted(p.name for p in folder.iterdir() if p.suffix != ".lock")


def test_a_new_log_begins_with_its_header_and_later_lines_follow(tmp_path: Path) -> None:
    log = tmp_path / "prices.csv"
    append_line(log, b"first\n", header=b"header\n")
    append_line(log, b"second\n", header=b"header\n")
    assert log.read_bytes() == b"header\nfirst\nsecond\n"
    assert _seen(tmp_path) == ["prices.csv"]


def test_an_empty_file_left_by_a_crash_gets_its_header(tmp_path: Path) -> None:
    log = tmp_path / "prices.csv"
    log.touch()
    append_line(log, b"first\n", header=b"header\n")
    assert log.read_bytes() == b"header\nfirst\n"


@pytest.mark.parametrize("line", [b"", b"\n", b"no end", b"two\nlines\n", b"end within\n and more"])
def test_only_one_whole_line_is_appended_at_a_time(tmp_path: Path, line: bytes) -> None:
    with pytest.raises(ValueError, match="one line that is not empty"):
        append_line(tmp_path / "prices.csv", line)
    assert _seen(tmp_path) == []


def test_a_torn_log_is_refused_and_stays_as_it_is(tmp_path: Path) -> None:
    log = tmp_path / "prices.csv"
    log.write_bytes(b"header\n2026-11-1")
    with pytest.raises(CannotWrite, match=r"prices\.csv: its last line is torn; run `spindlewise price rep"):
        append_line(log, b"next\n")
    assert log.read_bytes() == b"header\n2026-11-1"


def test_a_missing_folder_is_named_and_not_made(tmp_path: Path) -> None:
    for write in (append_line, replace_file):
        with pytest.raises(CannotWrite, match=r"none/prices\.csv: the folder is not there"):
            write(tmp_path / "none" / "prices.csv", b"line\n")
    assert _seen(tmp_path) == []


def test_a_file_in_place_of_the_folder_is_named(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(CannotWrite, match="the folder is not a folder"):
        replace_file(tmp_path / "file" / "page.html", b"")


def test_a_folder_in_place_of_the_file_is_named(tmp_path: Path) -> None:
    (tmp_path / "prices.csv").mkdir()
    for write in (append_line, replace_file):
        with pytest.raises(CannotWrite, match="a folder stands there"):
            write(tmp_path / "prices.csv", b"line\n")
    assert _seen(tmp_path) == ["prices.csv"]


@pytest.mark.parametrize("there", [True, False])
def test_a_link_is_not_followed(tmp_path: Path, there: bool) -> None:
    elsewhere = tmp_path / "elsewhere"
    if there:
        elsewhere.write_bytes(b"kept\n")
    (tmp_path / "prices.csv").symlink_to(elsewhere)
    for write in (append_line, replace_file):
        with pytest.raises(CannotWrite, match="it is a link, and links are not followed"):
            write(tmp_path / "prices.csv", b"line\n")
    assert elsewhere.exists() == there
    assert not there or elsewhere.read_bytes() == b"kept\n"


def test_a_log_held_by_another_program_is_waited_for_and_then_given_up(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(durable, "LOCK_SECONDS", 0.05)
    log = tmp_path / "prices.csv"
    append_line(log, b"first\n")
    with (
        FileLock(tmp_path / ".prices.csv.lock"),
        pytest.raises(CannotWrite, match=r"another program has held it for 0\.05 s"),
    ):
        append_line(log, b"second\n")
    assert log.read_bytes() == b"first\n"
    append_line(log, b"second\n")
    assert log.read_bytes() == b"first\nsecond\n"


def test_a_lock_that_cannot_be_made_is_a_refusal(tmp_path: Path) -> None:
    (tmp_path / ".prices.csv.lock").mkdir()
    with pytest.raises(CannotWrite, match=r"prices\.csv: "):
        append_line(tmp_path / "prices.csv", b"line\n")


def test_replacing_keeps_the_permissions_and_leaves_nothing_beside(tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    replace_file(page, b"old")
    page.chmod(0o640)
    replace_file(page, b"new" * 100_000)
    assert page.read_bytes() == b"new" * 100_000
    assert stat.S_IMODE(page.stat().st_mode) == 0o640
    assert _seen(tmp_path) == ["page.html"]


def test_a_new_file_has_the_permissions_that_the_user_gives_new_files(tmp_path: Path) -> None:
    (tmp_path / "usual").touch()
    replace_file(tmp_path / "page.html", b"")
    append_line(tmp_path / "prices.csv", b"line\n")
    usual = (tmp_path / "usual").stat().st_mode
    assert (tmp_path / "page.html").stat().st_mode == usual
    assert (tmp_path / "prices.csv").stat().st_mode == usual


def test_an_authors_file_is_never_overwritten(tmp_path: Path) -> None:
    create_file(tmp_path / "new.yaml", b"mine")
    (tmp_path / "link.yaml").symlink_to(tmp_path / "nowhere")
    for name in ("new.yaml", "link.yaml"):
        with pytest.raises(CannotWrite, match="stands there already and is not overwritten"):
            create_file(tmp_path / name, b"yours")
    assert (tmp_path / "new.yaml").read_bytes() == b"mine"
    assert _seen(tmp_path) == ["link.yaml", "new.yaml"]


def test_several_files_are_made_together_or_not_at_all(tmp_path: Path) -> None:
    (tmp_path / "c.yaml").write_bytes(b"mine")
    with pytest.raises(CannotWrite, match=r"c\.yaml: stands there already"):
        create_files({tmp_path / f"{name}.yaml": b"yours" for name in "abc"})
    assert _seen(tmp_path) == ["c.yaml"]
    create_files({tmp_path / f"{name}.yaml": b"yours" for name in "ab"})
    assert [(tmp_path / f"{name}.yaml").read_bytes() for name in "abc"] == [b"yours", b"yours", b"mine"]


def test_of_two_who_make_one_file_at_once_the_second_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real, path = os.link, tmp_path / "new.yaml"

    def somebody_was_quicker(*args: Path, follow_symlinks: bool = True) -> None:
        path.write_bytes(b"theirs")
        real(*args, follow_symlinks=follow_symlinks)

    monkeypatch.setattr(os, "link", somebody_was_quicker)
    with pytest.raises(CannotWrite, match=r"new\.yaml: stands there already and is not overwritten"):
        create_file(path, b"mine")
    assert path.read_bytes() == b"theirs"
    assert _seen(tmp_path) == ["new.yaml"]


@pytest.mark.parametrize(("number", "made"), [(errno.EPERM, True), (errno.ENOTSUP, True), (errno.EIO, False)])
def test_a_file_system_without_second_names_makes_files_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, made: bool
) -> None:
    def refused(*args: Path, follow_symlinks: bool = True) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "link", refused)
    if made:
        create_file(tmp_path / "new.yaml", b"mine")
        assert (tmp_path / "new.yaml").read_bytes() == b"mine"
    else:
        with pytest.raises(CannotWrite, match=r"new\.yaml: the disk reports an error"):
            create_file(tmp_path / "new.yaml", b"mine")
    assert _seen(tmp_path) == (["new.yaml"] if made else [])


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EROFS, "the file system is read-only"),
        (errno.EACCES, "writing is not permitted"),
        (errno.ENAMETOOLONG, os.strerror(errno.ENAMETOOLONG)),
    ],
)
def test_the_systems_reasons_are_told_in_plain_words(number: int, told: str) -> None:
    assert reason(OSError(number, os.strerror(number))) == told


def test_a_reason_without_a_number_is_told_as_it_is() -> None:
    assert reason(OSError("the cable is out")) == "the cable is out"


def test_what_a_killed_program_left_goes_and_what_a_running_one_writes_stays(tmp_path: Path) -> None:
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    gone = [f".index.html.{ended.pid}.new", ".a.999999999.new"]
    stay = [
        f".index.html.{os.getpid()}.new",
        ".index.html.1.new",
        ".index.html.new",
        "index.html",
        ".x.12.old",
    ]
    for name in gone + stay:
        (tmp_path / name).write_text(name)
    remove_leftovers(tmp_path)
    assert sorted(p.name for p in tmp_path.iterdir()) == sorted(stay)
    remove_leftovers(tmp_path / "none")


def test_a_process_of_somebody_else_is_running(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object) -> None:
        raise PermissionError(errno.EPERM, "not yours")

    monkeypatch.setattr(os, "kill", refused)
    (tmp_path / ".a.12.new").touch()
    remove_leftovers(tmp_path)
    assert [p.name for p in tmp_path.iterdir()] == [".a.12.new"]
