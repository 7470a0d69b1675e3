from datetime import date
from pathlib import Path

import pytest
import typer

from spindlewise.answer.bench_observation import BenchObservation
from spindlewise.catalog.durable import CannotWrite
from spindlewise.cli.bench_out import hand_over, print_snippet, write_observations


def weight(product: str, day: date = date(2026, 3, 12)) -> BenchObservation:
    return BenchObservation(product, "weight_g", day, "bench", "", 404.0, 1.0, {"count": "pair"})


def test_one_file_a_product_named_after_the_newest(tmp_path: Path) -> None:
    write_observations([weight("one"), weight("two"), weight("one", date(2026, 4, 1))], tmp_path, "weight")
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "one-weight-2026-04-01.yaml",
        "two-weight-2026-03-12.yaml",
    ]


def test_of_several_files_none_is_written_where_one_stands_there(tmp_path: Path) -> None:
    (tmp_path / "two-weight-2026-03-12.yaml").write_text("mine", "utf-8")
    with pytest.raises(CannotWrite, match="stands there already"):
        write_observations([weight("one"), weight("two")], tmp_path, "weight")
    assert [path.name for path in tmp_path.iterdir()] == ["two-weight-2026-03-12.yaml"]


def test_a_catalogs_own_folders_are_refused(tmp_path: Path) -> None:
    (tmp_path / "catalog.yaml").write_text("", "utf-8")
    with pytest.raises(typer.Exit):
        write_observations([weight("one")], tmp_path / "buyers", "weight")
    assert not (tmp_path / "buyers").exists()


def test_a_snippet_goes_to_stdout(capsys: pytest.CaptureFixture[str]) -> None:
    print_snippet([weight("one")])
    assert capsys.readouterr().out.startswith("# Add each entry")


def test_without_an_observation_nothing_is_handed_over(tmp_path: Path) -> None:
    with pytest.raises(typer.Exit):
        hand_over([], True, tmp_path, "weight", "two readings are needed")
    hand_over([weight("one")], False, tmp_path, "weight", "")
    assert len(list(tmp_path.iterdir())) == 1
