"""Each system call of a publish fails once, or kills the program: the site is the old or the new one, whole.

Where the system cannot put a folder in place at one stroke, pages are whole, and the next publish mends all.
"""

import multiprocessing
from pathlib import Path

import pytest

import worlds
from faults.interrupted import CALLS, Act, Interrupted, denied, killed, no_space
from faults.quick_sites import gathering
from spindlewise.catalog.durable import CannotWrite
from spindlewise.site import build
from spindlewise.site.manifest import NAME, read_manifest, sha256
from spindlewise.site.renewal import NotAtOneStroke

OLD = {"index.html": b"old", "same.html": b"same", "stale/page.html": b"stale"}
NEW = {"index.html": b"new", "new/page.html": b"new page", "same.html": b"same"}
WATCHED = [*CALLS, "unlink", "rmdir", "mkdir", "rename", "chmod", "scandir"]


@pytest.fixture(params=["at one stroke", "file by file"])
def way(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """How the site is put in place: as the system allows."""
    if request.param == "file by file":

        def refuse(*_: object) -> None:
            raise NotAtOneStroke("planted")

        monkeypatch.setattr(build, "renew", refuse)
    return str(request.param)


def published(pages: dict[str, bytes], out: Path, patch: pytest.MonkeyPatch) -> None:
    patch.setattr(build, "gather_whole", gathering(pages))
    build.publish(worlds.catalog([], []), {}, worlds.DAY, out)


def prepared(out: Path) -> Path:
    with pytest.MonkeyPatch.context() as patch:
        published(OLD, out, patch)
    return out


def calls_of(out: Path) -> list[str]:
    with pytest.MonkeyPatch.context() as patch:
        watched = Interrupted(patch, out.parent, -1, killed, WATCHED)
        published(NEW, out, patch)
    return watched.seen


def found(out: Path) -> dict[str, bytes]:
    return {
        p.relative_to(out).as_posix(): p.read_bytes()
        for p in sorted(out.rglob("*"))
        if p.is_file() and not p.name.startswith(".")
    }


def held(out: Path, way: str, told: str = "") -> None:
    """One whole site stands there, or page for page whole ones; the next publish mends all."""
    pages = found(out)
    manifest = read_manifest(pages.pop(NAME))
    assert manifest is not None
    if way == "at one stroke":
        assert pages in (OLD, NEW)
        assert {name: sha256(data) for name, data in pages.items()} == manifest.outputs
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
    left = [p for p in out.parent.rglob(".*") if p.suffix == ".new"]
    assert (
        left == [] or str(left[0]) in told
    )  # said to the user, and cleared away once this program has ended
    assert not (out / "stale").exists()


def test_an_undisturbed_publish_makes_all_kinds_of_calls(tmp_path: Path, way: str) -> None:
    calls = calls_of(prepared(tmp_path / "site"))
    own = {"link", "chmod", "scandir"} if way == "at one stroke" else {"unlink"}
    assert {"open", "write", "fsync", "replace", "rmdir", "mkdir", *own} <= set(calls)
    assert (tmp_path / "site" / NAME).read_bytes().count(sha256(b"new").encode()) == 1


@pytest.mark.parametrize("act", [no_space, denied])
def test_a_failing_call_leaves_whole_pages_and_is_told(tmp_path: Path, act: Act, way: str) -> None:
    calls = calls_of(prepared(tmp_path / "whole" / "site"))
    told: list[str] = []
    silent = set()
    for nth, name in enumerate(calls):
        out = prepared(tmp_path / str(nth) / "site")
        with pytest.MonkeyPatch.context() as patch:
            Interrupted(patch, out.parent, nth, act, WATCHED)
            try:
                published(NEW, out, patch)
                silent.add(name)
                told.append("")
            except CannotWrite as refused:
                told.append(str(refused))
        held(out, way, told[-1])
    assert all(not one or (str(tmp_path) in one and "Errno" not in one) for one in told)
    # the folder is there, the unfinished file is gone already, what was left over is looked for anew;
    # where nothing may be made beside the site, it is written file by file
    assert silent <= {"mkdir", "unlink", "scandir", "chmod"}


def test_a_program_that_dies_at_any_call_leaves_whole_pages(tmp_path: Path, way: str) -> None:
    fork = multiprocessing.get_context("fork")
    for nth, name in enumerate(calls_of(prepared(tmp_path / "whole" / "site"))):
        out = prepared(tmp_path / str(nth) / "site")

        def dies(out: Path = out, nth: int = nth) -> None:
            patch = pytest.MonkeyPatch()
            Interrupted(patch, out.parent, nth, killed, WATCHED)
            published(NEW, out, patch)

        child = fork.Process(target=dies)
        child.start()
        child.join(20)
        assert child.exitcode == 9, (nth, name)
        held(out, way)
