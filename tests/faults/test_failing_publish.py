"""Each system call of a publish fails once, or kills the program: pages are whole, the next one mends."""

import multiprocessing
from pathlib import Path

import pytest

import worlds
from faults.interrupted import CALLS, Act, Interrupted, denied, killed, no_space
from spindlewise.catalog.durable import CannotWrite
from spindlewise.site import build
from spindlewise.site.manifest import NAME, read_manifest, sha256

OLD = {"index.html": b"old", "same.html": b"same", "stale/page.html": b"stale"}
NEW = {"index.html": b"new", "new/page.html": b"new page", "same.html": b"same"}
WATCHED = [*CALLS, "unlink", "rmdir", "mkdir"]


def published(pages: dict[str, bytes], out: Path, patch: pytest.MonkeyPatch) -> None:
    patch.setattr(build, "gather", lambda *_: dict(pages))
    build.publish(worlds.catalog([], []), {}, worlds.DAY, out)


def prepared(out: Path) -> Path:
    with pytest.MonkeyPatch.context() as patch:
        published(OLD, out, patch)
    return out


def calls_of(out: Path) -> list[str]:
    with pytest.MonkeyPatch.context() as patch:
        watched = Interrupted(patch, out, -1, killed, WATCHED)
        published(NEW, out, patch)
    return watched.seen


def found(out: Path) -> dict[str, bytes]:
    return {
        p.relative_to(out).as_posix(): p.read_bytes()
        for p in sorted(out.rglob("*"))
        if p.is_file() and not p.name.startswith(".")
    }


def held(out: Path) -> None:
    """Every page is whole; a manifest stands, and a new one only beside all new pages."""
    pages = found(out)
    manifest = read_manifest(pages.pop(NAME))
    assert manifest is not None
    assert set(pages) >= {"index.html", "same.html"}
    for name, data in pages.items():
        assert data in (OLD.get(name), NEW.get(name))
    if "new/page.html" in manifest.outputs:
        assert pages == NEW
    with pytest.MonkeyPatch.context() as patch:
        published(NEW, out, patch)
    mended = found(out)
    mended.pop(NAME)
    assert mended == NEW
    assert [p for p in out.rglob(".*") if p.suffix == ".new"] == []
    assert not (out / "stale").exists()


def test_an_undisturbed_publish_makes_all_kinds_of_calls(tmp_path: Path) -> None:
    calls = calls_of(prepared(tmp_path / "site"))
    assert {"open", "write", "fsync", "replace", "unlink", "rmdir", "mkdir"} <= set(calls)
    assert (tmp_path / "site" / NAME).read_bytes().count(sha256(b"new").encode()) == 1


@pytest.mark.parametrize("act", [no_space, denied])
def test_a_failing_call_leaves_whole_pages_and_is_told(tmp_path: Path, act: Act) -> None:
    calls = calls_of(prepared(tmp_path / "whole"))
    told: list[str] = []
    silent = set()
    for nth, name in enumerate(calls):
        out = prepared(tmp_path / str(nth))
        with pytest.MonkeyPatch.context() as patch:
            Interrupted(patch, out, nth, act, WATCHED)
            try:
                published(NEW, out, patch)
                silent.add(name)
            except CannotWrite as refused:
                told.append(str(refused))
        held(out)
    assert all(str(tmp_path) in one and "Errno" not in one for one in told)
    assert silent <= {"mkdir", "unlink"}  # the folder is there, and the unfinished file is gone, already


def test_a_program_that_dies_at_any_call_leaves_whole_pages(tmp_path: Path) -> None:
    fork = multiprocessing.get_context("fork")
    for nth, name in enumerate(calls_of(prepared(tmp_path / "whole"))):
        out = prepared(tmp_path / str(nth))

        def dies(out: Path = out, nth: int = nth) -> None:
            patch = pytest.MonkeyPatch()
            Interrupted(patch, out, nth, killed, WATCHED)
            published(NEW, out, patch)

        child = fork.Process(target=dies)
        child.start()
        child.join(20)
        assert child.exitcode == 9, (nth, name)
        held(out)
