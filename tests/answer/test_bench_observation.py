from pathlib import Path

from spindlewise.answer.bench_observation import LONGEST_NOTE, bench_source, note_of


def test_a_file_of_the_catalog_is_named_from_its_folder(tmp_path: Path) -> None:
    assert bench_source(tmp_path / "bench" / "w.csv", tmp_path) == "bench/w.csv"
    assert bench_source(tmp_path / "x" / ".." / "bench" / "w.csv", tmp_path) == "bench/w.csv"
    assert bench_source(tmp_path / "w.csv", tmp_path / "catalog") == "w.csv"


def test_a_note_is_never_longer_than_the_catalog_takes() -> None:
    assert note_of([]) == ""
    assert note_of(["a", "b"]) == "a; b"
    long = note_of(["x" * 300, "y" * 298, "z"])
    assert long == f"{'x' * 300}; {'y' * 298}"
    assert len(long) == LONGEST_NOTE
