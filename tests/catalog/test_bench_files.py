from pathlib import Path

from spindlewise.catalog.bench_files import bench_files


def test_files_at_any_depth_are_named_from_the_catalog_on(tmp_path: Path) -> None:
    (tmp_path / "bench" / "rides").mkdir(parents=True)
    (tmp_path / "bench" / "weighings.csv").write_text("", "utf-8")
    (tmp_path / "bench" / "rides" / "hill.yaml").write_text("", "utf-8")
    assert bench_files(tmp_path) == {"bench/weighings.csv", "bench/rides/hill.yaml"}


def test_a_catalog_without_a_bench_has_none(tmp_path: Path) -> None:
    assert bench_files(tmp_path) == frozenset()
