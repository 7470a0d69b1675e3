"""Each system call of a write fails once, or kills the program: the file is the old one or the new one."""

import errno
import multiprocessing
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from faults.interrupted import Act, Interrupted, denied, killed, no_space
from spindlewise.catalog.durable import CannotWrite, append_line, create_file, replace_file

HEADER = b"date,amount\n"
OLD = HEADER + b"2026-11-17,899.00\n"
LINE = b"2026-11-18,849.00\n"
PAGE = b"<!doctype html>" + b"new" * 500
Write = Callable[[Path], None]


def _append(path: Path) -> None:
    append_line(path, LINE, header=HEADER)


def _replace(path: Path) -> None:
    replace_file(path, PAGE)


def _create(path: Path) -> None:
    create_file(path, PAGE)


def _calls_of(write: Write, folder: Path, old: bytes | None) -> list[str]:
    """The system calls of an undisturbed write."""
    path = _prepared(folder, old)
    with pytest.MonkeyPatch.context() as patch:
        watched = Interrupted(patch, folder, -1, killed)
        write(path)
    return watched.seen


def _prepared(folder: Path, old: bytes | None) -> Path:
    folder.mkdir()
    path = folder / "file"
    if old is not None:
        path.write_bytes(old)
    return path


def _content(path: Path) -> bytes | None:
    return path.read_bytes() if path.exists() else None


CASES = {
    "append to a log": (_append, OLD, OLD + LINE),
    "begin a log": (_append, None, HEADER + LINE),
    "replace a file": (_replace, OLD, PAGE),
    "make a file": (_replace, None, PAGE),
    "make an author's file": (_create, None, PAGE),
}


@pytest.mark.parametrize(
    ("case", "syncs"),
    [
        ("append to a log", 1),
        ("begin a log", 2),
        ("replace a file", 2),
        ("make a file", 2),
        ("make an author's file", 2),
    ],
)
def test_a_new_name_in_the_folder_is_synced_as_well_as_the_data(
    tmp_path: Path, case: str, syncs: int
) -> None:
    write, old, _ = CASES[case]
    assert _calls_of(write, tmp_path / "whole", old).count("fsync") == syncs


def _again(write: Write, path: Path) -> None:
    """The next write finds nothing in its way, but for an author's file that stands whole by now."""
    if write is _create and path.exists():
        with pytest.raises(CannotWrite, match="stands there already"):
            write(path)
    else:
        write(path)


@pytest.mark.parametrize("act", [no_space, denied])
@pytest.mark.parametrize("case", CASES)
def test_a_failing_call_leaves_the_old_file_or_says_that_the_new_one_stands(
    tmp_path: Path, case: str, act: Act
) -> None:
    write, old, new = CASES[case]
    calls = _calls_of(write, tmp_path / "whole", old)
    assert {"open", "write", "fsync", "close"} <= set(calls)
    for nth, name in enumerate(calls):
        folder = tmp_path / f"{nth}-{name}"
        path = _prepared(folder, old)
        told = "nothing"
        with pytest.MonkeyPatch.context() as patch:
            Interrupted(patch, folder, nth, act)
            try:
                write(path)
            except CannotWrite as refused:
                told = str(refused)
        if (nth, name) == (len(calls) - 1, "close") and write is _append:
            assert told == "nothing"  # the line is on the disk by then
            assert _content(path) == new
            continue
        assert told.startswith(f"{path}: "), (nth, name)
        assert ("the disk is full" in told) or ("writing is not permitted" in told)
        expected = new if "was written" in told else old
        assert _content(path) == expected, (nth, name, told)
        left = {p.name for p in folder.iterdir()} - {".file.lock"}
        assert left == ({"file"} if expected is not None else set()), (nth, name)
        _again(write, path)
        assert (_content(path) or b"").endswith(LINE if write is _append else PAGE)


@pytest.mark.parametrize("case", CASES)
def test_a_program_that_dies_at_any_call_leaves_the_old_file_or_the_new_one(
    tmp_path: Path, case: str
) -> None:
    write, old, new = CASES[case]
    fork = multiprocessing.get_context("fork")
    for nth, name in enumerate(_calls_of(write, tmp_path / "whole", old)):
        folder = tmp_path / f"{nth}-{name}"
        path = _prepared(folder, old)

        def dies(path: Path = path, folder: Path = folder, nth: int = nth) -> None:
            Interrupted(pytest.MonkeyPatch(), folder, nth, killed)
            write(path)

        child = fork.Process(target=dies)
        child.start()
        child.join(20)
        assert child.exitcode == 9, (nth, name)
        begun = b"" if case == "begin a log" else old
        assert _content(path) in (old, begun, new), (nth, name)
        died_as = _content(path)
        _again(write, path)
        if write is not _append:
            assert _content(path) == PAGE
        else:
            assert _content(path) == (died_as or HEADER) + LINE


@pytest.mark.parametrize("old", [OLD, None])
def test_a_write_that_comes_back_short_is_taken_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, old: bytes | None
) -> None:
    path = _prepared(tmp_path / "log", old)
    real = os.write

    def short(handle: int, data: bytes) -> int:
        return real(handle, data[: len(data) // 2])

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", short)
        with pytest.raises(CannotWrite, match=r"file: the disk is full$"):
            _append(path)
    assert _content(path) == old


def test_a_short_write_that_cannot_be_taken_back_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = _prepared(tmp_path / "log", OLD)
    real = os.write

    def refuse(_handle: int, _size: int) -> None:
        raise OSError(errno.EIO, os.strerror(errno.EIO))

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", lambda handle, data: real(handle, data[:5]))
        patch.setattr(os, "ftruncate", refuse)
        with pytest.raises(CannotWrite, match="part of the line may stand there, run `spindlewise check`"):
            _append(path)
    assert _content(path) == OLD + LINE[:5]
    with pytest.raises(CannotWrite, match="its last line is torn"):
        _append(path)


def test_replacing_goes_on_after_a_short_write(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = _prepared(tmp_path / "site", OLD)
    real = os.write
    monkeypatch.setattr(os, "write", lambda handle, data: real(handle, data[:100]))
    replace_file(path, PAGE)
    assert _content(path) == PAGE
