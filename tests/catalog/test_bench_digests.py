"""A recording behind an observation of the bench is the one that was measured from, or it is said."""

import hashlib
import os

import pytest

import small_catalog
from spindlewise.catalog.bench_digests import changed_recordings
from spindlewise.catalog.bench_files import FOLDER
from spindlewise.problems import render

RAW = "bench/rides/2026-10-01-loop/pedals.csv"


@pytest.fixture
def folder(tmp_path):
    found = small_catalog.copied(tmp_path)
    (found / FOLDER).mkdir(parents=True)
    (found / RAW).parent.mkdir(parents=True)
    (found / RAW).write_text("seconds,power\n0,200\n")
    return found


def record(folder, digest, name="a.yaml", raw=RAW):
    (folder / FOLDER / name).write_text(
        "schema: spindlewise observations 1\nproduct: skerry-duo\nrecordings:\n"
        f'  - file: {raw}\n    sha256: "{digest}"\n'
        "observations:\n  reading_bias_pct:\n    - grade: measured\n      date: 2026-10-01\n"
        "      source: bench, one loop\n      value: -0.7\n      plus_minus: 0.2\n"
    )


def of(folder):
    return hashlib.sha256((folder / RAW).read_bytes()).hexdigest()


def test_the_recording_that_was_measured_from_is_passed_over(folder):
    assert changed_recordings(folder) == []  # no record at all
    record(folder, of(folder))
    assert changed_recordings(folder) == []


def test_one_changed_character_is_said_with_its_place(folder, monkeypatch):
    record(folder, of(folder))
    (folder / RAW).write_text("seconds,power\n0,201\n")
    monkeypatch.chdir(folder.parent)
    (told,) = render(changed_recordings(folder.relative_to(folder.parent)), "plain").splitlines()
    assert told == (
        "catalog/bench/observations/a.yaml:5:13: error: recordings[0].sha256: "
        "bench/rides/2026-10-01-loop/pedals.csv is not the file that was measured from; put back the "
        "recording that was measured from; of another recording make new observations (bench-digest)"
    )


def test_each_record_that_names_it_says_so(folder):
    good = of(folder)
    record(folder, good)
    record(folder, good, "b.yaml")
    record(folder, "0" * 64, "c.yaml")
    assert [problem.place.file[-6:] for problem in changed_recordings(folder)] == ["c.yaml"]
    (folder / RAW).write_text("")
    assert len(changed_recordings(folder)) == 3


def test_what_opening_says_is_not_said_twice(folder):
    record(folder, "0" * 64, raw="bench/rides/2026-10-01-loop/peddals.csv")
    (folder / FOLDER / "broken.yaml").write_text("recordings: [")
    (folder / FOLDER / "empty.yaml").write_text("schema: spindlewise observations 1\n")
    assert changed_recordings(folder) == []


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_a_recording_that_may_not_be_read_is_said(folder):
    record(folder, of(folder))
    (folder / RAW).chmod(0)
    assert [problem.rule for problem in changed_recordings(folder)] == ["unreadable-file"]


def test_a_recording_on_a_disk_that_fails_is_said(folder, monkeypatch):
    record(folder, of(folder))

    def failing(path):
        raise OSError(5, "Input/output error")

    monkeypatch.setattr("spindlewise.catalog.bench_digests.digest_of", failing)
    (problem,) = changed_recordings(folder)
    assert (problem.rule, problem.place.file.endswith("pedals.csv")) == ("unreadable-file", True)
    assert "Input/output error" in problem.message
