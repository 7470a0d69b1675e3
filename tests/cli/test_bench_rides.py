import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from command_line import read, run, widest
from small_rides import FIRST, RIDES, THREE
from spindlewise.bench.demo_rides import SERIES
from spindlewise.cli import bench_rides

DEMO = RIDES.parents[1]


def test_a_folder_of_rides_gives_a_line_a_ride() -> None:
    result = run("bench", "ride", RIDES)
    assert result.exit_code == 0
    assert widest(result.stdout) <= 80
    told = " ".join(result.stdout.split())
    assert f"{FIRST} counts for nothing" in told
    assert told.index("2025-09-13") < told.index("2025-10-18")


@pytest.mark.parametrize("form", ["text", "markdown"])
def test_as_text_and_markdown(form: str) -> None:
    assert "As sessions" in run("bench", "ride", RIDES, "--format", form).stdout


def test_json_has_every_ride() -> None:
    found = read("bench", "ride", RIDES)
    assert found["schema"] == "spindlewise bench rides 1"
    assert [ride["id"] for ride in found["rides"]] == [*list(SERIES)[:2], FIRST, THREE, list(SERIES)[2]]


def test_a_snippet_of_all_rides(tmp_path: Path) -> None:
    result = run("bench", "ride", RIDES, "--snippet", catalog=DEMO)
    assert result.exit_code == 0
    assert result.stdout.count("reading_bias_pct") == 3
    out = tmp_path / "out"
    assert run("bench", "ride", RIDES, "--write", out, catalog=DEMO).exit_code == 0
    assert len(list(out.iterdir())) == 3


def test_what_is_written_of_the_long_series_is_what_the_demo_keeps(tmp_path: Path) -> None:
    """The catalog's file came out of this very command, and is not behind it."""
    name = "brellowick-ferrowen"
    assert run("bench", "ride", RIDES, "--product", name, "--write", tmp_path, catalog=DEMO).exit_code == 0
    (written,) = tmp_path.iterdir()
    assert written.read_bytes() == (DEMO / "bench" / "observations" / written.name).read_bytes()
    assert "drifts by +0.25 % for each 1,000 km" in written.read_text("utf-8")


def test_what_is_written_into_the_catalog_is_ranked_at_once(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(DEMO, tmp_path / "catalog"))
    (kept,) = (folder / "bench" / "observations").iterdir()
    kept.unlink()
    product = "brellowick-ferrowen"

    def reading() -> Any:
        order = read("rank", "--buyer", "club-racer", catalog=folder)["order"]
        return next(each for each in order if each["product"] == product)["merits"]["reading_uncertainty"]

    before = reading()
    written = folder / "bench" / "observations"
    result = run("bench", "history", product, "--write", written, catalog=folder)
    assert result.exit_code == 0, result.output
    assert reading()["value"] < before["value"]
    assert run("check", catalog=folder).exit_code == 0


def test_rides_that_lie_elsewhere_are_not_written_into_a_catalog(tmp_path: Path) -> None:
    """Their recordings could not be found from there, and every question after it would be refused."""
    folder = Path(shutil.copytree(DEMO, tmp_path / "catalog"))
    elsewhere = Path(shutil.copytree(RIDES, tmp_path / "elsewhere"))
    written = folder / "bench" / "observations"
    before = sorted(written.iterdir())
    result = run("bench", "ride", elsewhere, "--write", written, catalog=folder)
    assert result.exit_code == 2
    assert "does not lie in the catalog; put the ride into its bench/rides" in result.stderr
    assert sorted(written.iterdir()) == before
    assert run("bench", "ride", elsewhere, "--write", tmp_path / "out", catalog=folder).exit_code == 0


def test_three_rides_alone_make_an_observation_that_check_passes(tmp_path: Path) -> None:
    """A new catalog has no file of sessions: the rides are all that there is, and the source."""
    folder = tmp_path / "mine"
    assert run("new", "catalog", folder, catalog=None).exit_code == 0
    for name in SERIES:
        ride = Path(shutil.copytree(RIDES / name, folder / "bench" / "rides" / name)) / "ride.yaml"
        ride.write_text(ride.read_text("utf-8").replace("brellowick-ferrowen", "example-pedal"), "utf-8")
    out = folder / "bench" / "observations"
    day = ("--as-of", "2026-11-20")
    written = run("bench", "ride", folder / "bench" / "rides", "--write", out, *day, catalog=folder)
    assert written.exit_code == 0, written.output
    (record,) = out.iterdir()
    first, *_, last = SERIES
    source = f"bench/rides/{first}/pedals.csv, {first[:10]} to {last[:10]}"
    assert f"source: {source}\n" in record.read_text("utf-8")
    assert run("check", *day, catalog=folder).exit_code == 0
    measured = read("rank", "--buyer", "example-buyer", *day, catalog=folder)["order"][0]["merits"]
    assert measured["reading_uncertainty"]["note"] == "largest: bench bias"


def test_a_broken_ride_is_told_and_the_others_are_listed(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(RIDES, tmp_path / "rides"))
    (folder / FIRST / "ride.yaml").write_text("schema: nothing\n", "utf-8")
    (folder / THREE / "hub.csv").unlink()
    result = run("bench", "ride", folder)
    assert result.exit_code == 3
    assert "recording-missing" in result.stderr
    assert "pedals, spider" in result.stdout
    assert "not read: hub" in result.stdout


def test_a_folder_without_rides_has_no_answer(tmp_path: Path) -> None:
    result = run("bench", "ride", tmp_path)
    assert result.exit_code == 4
    assert "no ride.yaml in" in result.stderr


def test_broken_off_it_says_how_far_it_came(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    whole = bench_rides._lines

    def broken_off(*given: Any) -> Iterator[Any]:
        lines = whole(*given)
        yield next(lines)
        yield next(lines)
        raise KeyboardInterrupt

    monkeypatch.setattr(bench_rides, "_lines", broken_off)
    result = run("bench", "ride", RIDES, "--write", tmp_path / "out")
    assert result.exit_code == 130
    assert result.stdout == ""
    assert "Stopped: 2 of 5 rides had been compared. Nothing was written.\n" in result.stderr
    assert not (tmp_path / "out").exists()


def test_the_bar_goes_to_stderr_and_gives_every_folder(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: True, raising=False)
    folders = [Path("a"), Path("b")]
    assert list(bench_rides._watched(folders)) == folders
    assert capsys.readouterr().out == ""
