import shutil
from pathlib import Path

import pytest

from command_line import read, run, widest
from small_rides import FIRST, RIDES, THREE
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
    assert [ride["id"] for ride in found["rides"]] == [FIRST, THREE]


def test_a_snippet_of_all_rides(tmp_path: Path) -> None:
    result = run("bench", "ride", RIDES, "--snippet", catalog=DEMO)
    assert result.exit_code == 0
    assert result.stdout.count("reading_bias_pct") == 2
    out = tmp_path / "out"
    assert run("bench", "ride", RIDES, "--write", out, catalog=DEMO).exit_code == 0
    assert len(list(out.iterdir())) == 2


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


def test_the_bar_goes_to_stderr_and_gives_every_folder(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: True, raising=False)
    folders = [Path("a"), Path("b")]
    assert list(bench_rides._watched(folders)) == folders
    assert capsys.readouterr().out == ""
