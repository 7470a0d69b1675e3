"""Each system call of writing bench observations fails once, or kills the program: all files or none."""

import errno
import multiprocessing
import os
from datetime import date
from pathlib import Path

import pytest

from faults.interrupted import CALLS, Act, Interrupted, denied, killed, no_space
from spindlewise.answer.bench_observation import BenchObservation
from spindlewise.catalog.durable import CannotWrite
from spindlewise.cli.bench_out import write_observations
from spindlewise.render.yaml_snippet import record_yaml

WATCHED = [*CALLS, "mkdir"]
WEIGHED = [
    BenchObservation(name, "weight_g", date(2026, 3, 12), "bench", "", grams, 1.0, {"count": "pair"})
    for name, grams in (("heron", 404.0), ("siskin", 318.5), ("wren", 290.0))
]
WHOLE = {f"{each.product}-weight-2026-03-12.yaml": record_yaml(each.product, [each]) for each in WEIGHED}


def _write(folder: Path) -> None:
    write_observations(WEIGHED, folder / "bench" / "observations", "weight")


def _found(folder: Path) -> dict[str, str]:
    return {path.name: path.read_text() for path in folder.rglob("*") if path.is_file()}


def _calls(folder: Path) -> list[str]:
    folder.mkdir()
    with pytest.MonkeyPatch.context() as patch:
        watched = Interrupted(patch, folder, -1, killed, WATCHED)
        _write(folder)
    assert _found(folder) == WHOLE
    return watched.seen


def test_an_undisturbed_write_makes_all_kinds_of_calls(tmp_path: Path) -> None:
    calls = _calls(tmp_path / "whole")
    assert [calls.count(name) for name in ("write", "link", "fsync")] == [3, 3, 4]
    assert {"mkdir", "open", "close"} < set(calls)


@pytest.mark.parametrize("act", [no_space, denied])
def test_a_failing_call_leaves_nothing_behind_or_says_that_all_stands(tmp_path: Path, act: Act) -> None:
    for nth, name in enumerate(_calls(tmp_path / "whole")):
        folder = tmp_path / f"{nth}-{name}"
        folder.mkdir()
        told = ""
        with pytest.MonkeyPatch.context() as patch:
            Interrupted(patch, folder, nth, act, WATCHED)
            try:
                _write(folder)
            except CannotWrite as refused:
                told = str(refused)
        if not told:
            assert (name, _found(folder)) == ("mkdir", WHOLE)  # it asks, and then makes the folders above
            continue
        assert told.startswith(f"{folder}/")
        assert "the disk is full" in told or "writing is not permitted" in told
        assert _found(folder) == (WHOLE if "was written" in told else {}), (nth, name, told)
        if "was written" not in told:
            assert list(folder.iterdir()) == [], (nth, name)
            _write(folder)


def test_a_program_that_dies_at_any_call_leaves_only_whole_files(tmp_path: Path) -> None:
    fork = multiprocessing.get_context("fork")
    for nth, name in enumerate(_calls(tmp_path / "whole")):
        folder = tmp_path / f"{nth}-{name}"
        folder.mkdir()

        def dies(folder: Path = folder, nth: int = nth) -> None:
            Interrupted(pytest.MonkeyPatch(), folder, nth, killed, WATCHED)
            _write(folder)

        child = fork.Process(target=dies)
        child.start()
        child.join(20)
        assert child.exitcode == 9, (nth, name)
        named = {path: text for path, text in _found(folder).items() if not path.startswith(".")}
        assert named.items() <= WHOLE.items(), (nth, name)


def test_where_another_takes_a_name_in_between_his_file_stands_and_ours_do_not(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = os.link

    def overtaken(source: Path, target: Path, **more: bool) -> None:
        if Path(target).name.startswith("wren"):
            Path(target).write_text("mine")
        real(source, target, **more)

    monkeypatch.setattr(os, "link", overtaken)
    with pytest.raises(CannotWrite, match=r"wren-weight-2026-03-12\.yaml: stands there already"):
        _write(tmp_path)
    assert _found(tmp_path) == {"wren-weight-2026-03-12.yaml": "mine"}


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise OSError(errno.EROFS, os.strerror(errno.EROFS))

    monkeypatch.setattr(os, "mkdir", refuse)
    with pytest.raises(CannotWrite, match="observations: the file system is read-only"):
        _write(tmp_path)
