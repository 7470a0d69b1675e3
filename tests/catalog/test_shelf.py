"""Things kept between runs: there again as they were, or not at all."""

import os
import stat
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spindlewise.catalog.shelf import MOST_FILES, Shelf

PARTS = [b"settings", b"", b"products" * 1000]
FRAME_BYTES = 40
"""A part's length and digest, which stand before it."""


@pytest.fixture
def shelf(tmp_path: Path) -> Shelf:
    return Shelf(tmp_path / "cache" / "spindlewise")


def test_what_was_put_is_there_again_and_for_its_owner_only(shelf: Shelf) -> None:
    assert shelf.take("one") is None
    assert shelf.put("one", PARTS)
    assert shelf.take("one") == PARTS
    assert [path.name for path in shelf.folder.iterdir()] == ["one"]
    assert stat.S_IMODE(shelf.folder.stat().st_mode) == 0o700
    assert stat.S_IMODE((shelf.folder / "one").stat().st_mode) == 0o600


def test_the_same_name_holds_what_was_put_last(shelf: Shelf) -> None:
    shelf.put("one", PARTS)
    shelf.put("one", [b"newer"])
    assert shelf.take("one") == [b"newer"]


@given(at=st.integers(0, 8000), bit=st.integers(0, 7))
def test_a_single_bit_that_has_changed_is_found(tmp_path_factory, at: int, bit: int) -> None:
    shelf = Shelf(tmp_path_factory.mktemp("shelf") / "own")
    shelf.put("one", PARTS)
    path = shelf.folder / "one"
    data = bytearray(path.read_bytes())
    data[at] ^= 1 << bit
    path.write_bytes(data)
    assert shelf.take("one") is None


def test_a_torn_file_is_as_good_as_none(shelf: Shelf) -> None:
    shelf.put("one", PARTS)
    path = shelf.folder / "one"
    whole = path.read_bytes()
    for length in (0, 1, 30, len(whole) // 2, len(whole) - 1):
        path.write_bytes(whole[:length])
        assert shelf.take("one") is None, length
    path.write_bytes(whole + b"\0")
    assert shelf.take("one") is None


def test_a_file_that_stands_under_another_name_is_not_taken_for_it(shelf: Shelf) -> None:
    shelf.put("one", PARTS)
    (shelf.folder / "one").rename(shelf.folder / "two")
    assert shelf.take("two") is None


@pytest.mark.parametrize("mode", [0o620, 0o602])
def test_what_others_may_write_is_not_trusted(shelf: Shelf, mode: int) -> None:
    shelf.put("one", PARTS)
    (shelf.folder / "one").chmod(mode)
    assert shelf.take("one") is None


@pytest.mark.parametrize("mode", [0o720, 0o702, 0o1777])
def test_a_folder_that_others_may_write_is_neither_read_nor_written(shelf: Shelf, mode: int) -> None:
    shelf.put("one", PARTS)
    shelf.folder.chmod(mode)
    assert shelf.take("one") is None
    assert not shelf.put("one", [b"newer"])


def test_what_belongs_to_somebody_else_is_not_trusted(shelf: Shelf, monkeypatch) -> None:
    shelf.put("one", PARTS)
    me = os.geteuid()
    monkeypatch.setattr(os, "geteuid", lambda: me + 1)
    assert shelf.take("one") is None
    assert not shelf.put("one", PARTS)


def test_a_link_is_not_followed_and_a_pipe_not_waited_for(shelf: Shelf, tmp_path: Path) -> None:
    shelf.put("one", PARTS)
    (shelf.folder / "link").symlink_to(shelf.folder / "one")
    assert shelf.take("link") is None
    os.mkfifo(shelf.folder / "pipe", 0o600)
    assert shelf.take("pipe") is None
    elsewhere = tmp_path / "elsewhere"
    elsewhere.symlink_to(shelf.folder, target_is_directory=True)
    assert Shelf(elsewhere).take("one") is None
    assert not Shelf(elsewhere).put("two", PARTS)


def test_a_shelf_that_cannot_be_made_keeps_nothing_and_says_nothing(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", "utf-8")
    shelf = Shelf(tmp_path / "file" / "spindlewise")
    assert not shelf.put("one", PARTS)
    assert shelf.take("one") is None


def test_a_write_that_fails_leaves_what_stood_there(shelf: Shelf, monkeypatch) -> None:
    shelf.put("one", PARTS)

    def full(*_args: object, **_more: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    assert not shelf.put("one", [b"newer"])
    monkeypatch.undo()
    assert shelf.take("one") == PARTS
    assert [path.name for path in shelf.folder.iterdir()] == ["one"]


def test_more_than_a_file_may_hold_is_not_kept(shelf: Shelf, monkeypatch) -> None:
    monkeypatch.setattr("spindlewise.catalog.shelf.LARGEST_BYTES", 1000)
    assert not shelf.put("one", PARTS)
    assert shelf.put("one", [b"little"])
    monkeypatch.setattr("spindlewise.catalog.shelf.LARGEST_BYTES", 60)
    assert shelf.take("one") is None


def test_those_not_used_for_longest_go_first(shelf: Shelf) -> None:
    for number in range(MOST_FILES):
        shelf.put(f"file-{number}", PARTS)
        os.utime(shelf.folder / f"file-{number}", (number, number))
    assert shelf.take("file-0") == PARTS  # used once more
    shelf.put("newest", PARTS)
    left = {path.name for path in shelf.folder.iterdir()}
    assert left == {"newest", "file-0", *(f"file-{n}" for n in range(2, MOST_FILES))}


def put_and_take(folder: Path, word: bytes) -> int:
    """How often what was taken was neither nothing nor one of the two that are put by turns."""
    shelf, strange = Shelf(folder), 0
    for _ in range(100):
        shelf.put("one", [word * 20_000])
        found = shelf.take("one")
        strange += found not in ([b"ours" * 20_000], [b"that" * 20_000])
    return strange


def test_two_programs_that_keep_the_same_never_meet_half_a_file(shelf: Shelf) -> None:
    with ProcessPoolExecutor(2) as programs:
        found = list(programs.map(put_and_take, [shelf.folder] * 2, [b"ours", b"that"]))
    assert found == [0, 0]
    assert [path.name for path in shelf.folder.iterdir()] == ["one"]
