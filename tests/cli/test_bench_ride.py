import shutil
from pathlib import Path

import pytest

from command_line import as_expected, copied, read, run, widest
from small_rides import FIRST, RIDES, THREE
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.cli.bench_ride import loss_range

RIDE = RIDES / THREE
SESSIONS = "2026-01-0{},osmeryd-avessin,60,0.{},0.7,counts\n"


def ride_copy(to: Path) -> Path:
    return Path(shutil.copytree(RIDE, to / "ride"))


def demo_catalog(to: Path) -> Path:
    return Path(shutil.copytree(RIDES.parents[1], to / "demo"))


def test_the_demo_ride_at_80_columns() -> None:
    result = run("bench", "ride", RIDE)
    assert result.exit_code == 0
    assert result.stderr == ""
    assert widest(result.stdout) <= 80
    as_expected("bench_ride.txt", result.stdout)


def test_the_sheet_itself_may_be_named_and_json_asked_for() -> None:
    found = read("bench", "ride", RIDE / "ride.yaml")
    assert found["schema"] == "spindlewise bench ride 1"
    assert [pair["verdicts"][0]["says"] for pair in found["pairs"]] == ["differ", "agree", "agree"]


@pytest.mark.parametrize(
    ("form", "begin"), [("markdown", "# Forty minutes"), ("text", "Forty minutes"), ("json", "{")]
)
def test_it_is_written_as_text_and_markdown_too(form: str, begin: str) -> None:
    result = run("bench", "ride", RIDE, "--format", form)
    assert result.exit_code == 0
    assert result.stdout.startswith(begin)


def test_a_void_ride_says_so_and_is_no_failure() -> None:
    result = run("bench", "ride", RIDES / FIRST)
    assert result.exit_code == 0
    assert "counts for nothing" in result.stdout


def test_a_broken_file_is_a_problem_and_the_others_are_compared(tmp_path: Path) -> None:
    folder = ride_copy(tmp_path)
    (folder / "hub.csv").write_bytes(b"\xff\xfe\x00")
    result = run("bench", "ride", folder)
    assert result.exit_code == 3
    assert f"{folder.as_posix()}/hub.csv:1:1: error: " in result.stderr
    assert "Could not be read: hub. The others are compared." in " ".join(result.stdout.split())
    assert "pedals and spider, agreement: agree" in " ".join(result.stdout.split())


def test_a_file_that_was_exchanged_is_not_compared(tmp_path: Path) -> None:
    folder = ride_copy(tmp_path)
    path = folder / "hub.csv"
    path.write_bytes(path.read_bytes().replace(b"14,141,", b"14,142,", 1))
    result = run("bench", "ride", folder)
    assert result.exit_code == 3
    assert "recording-changed" in result.stderr


def test_one_meter_alone_has_nobody_to_be_compared_with(tmp_path: Path) -> None:
    folder = ride_copy(tmp_path)
    text = (folder / "ride.yaml").read_text("utf-8")
    alone = (
        text[: text.index("  - id: pedals")] + text[text.index("  - id: spider") : text.index("  - id: hub")]
    )
    (folder / "ride.yaml").write_text(alone, "utf-8")
    assert run("bench", "ride", folder).exit_code == 4


def test_observations_need_three_sessions(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    sessions = folder / "bench" / "sessions.csv"
    lines = [line for line in sessions.read_text("utf-8").splitlines(True) if ",osmeryd-avessin," not in line]
    sessions.write_text("".join(lines), "utf-8")
    result = run("bench", "ride", RIDE, "--snippet", catalog=folder)
    assert result.exit_code == 4
    assert "three sessions that count are needed" in result.stderr
    assert result.stdout == ""
    more = [SESSIONS.format(day, day) for day in (1, 2)]
    sessions.write_text("".join(lines + more), "utf-8")
    assert run("bench", "ride", RIDE, "--snippet", catalog=folder).exit_code == 0


def test_a_snippet_of_the_demo_can_be_pasted_and_moves_the_uncertainty(tmp_path: Path) -> None:
    folder = demo_catalog(tmp_path)

    def uncertainty() -> float:
        order = read("rank", "--buyer", "coach", catalog=folder)["order"]
        value: float = next(r for r in order if r["product"] == "osmeryd-avessin")["merits"][
            "reading_uncertainty"
        ]["value"]
        return value

    before = uncertainty()
    snippet = run("bench", "ride", folder / "bench" / "rides" / THREE, "--snippet", catalog=folder).stdout
    document, problems = read_yaml_text(snippet, "snippet")
    assert problems == []
    assert document is not None
    path = folder / "products" / "osmeryd-avessin.yaml"
    text = path.read_text("utf-8")
    for key, end in (("reading_bias_pct", "  reading_spread_pct:"), ("reading_spread_pct", None)):
        entry = snippet.split(f"  {key}:\n")[1]
        entry = entry.split(end)[0] if end else entry
        text = text.replace(f"  {key}:\n", f"  {key}:\n{entry}", 1)
    path.write_text(text, "utf-8")
    assert run("check", catalog=folder).exit_code == 0
    assert uncertainty() != before


def test_observations_are_written_as_a_new_file(tmp_path: Path) -> None:
    out = tmp_path / "observations"
    result = run("bench", "ride", RIDE, "--write", out, catalog=RIDES.parents[1])
    assert result.exit_code == 0
    (path,) = out.iterdir()
    assert path.name == "osmeryd-avessin-reading-2025-10-18.yaml"
    assert "In short" in result.stdout
    assert run("bench", "ride", RIDE, "--write", out, catalog=RIDES.parents[1]).exit_code == 5


def test_a_catalog_without_sessions_has_none(tmp_path: Path) -> None:
    folder = demo_catalog(tmp_path)
    (folder / "bench" / "sessions.csv").unlink()
    for path in [*(folder / "products").glob("*.yaml"), *(folder / "bench" / "observations").iterdir()]:
        path.write_text(
            path.read_text("utf-8").replace("source: bench/sessions.csv", "source: own bench"), "utf-8"
        )
    result = run("bench", "ride", RIDE, catalog=folder)
    assert "with 2 more there will be an observation" in " ".join(result.stdout.split())


def test_sessions_that_are_wrong_end_the_command(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    (folder / "bench" / "sessions.csv").write_text("date\n", "utf-8")
    assert run("bench", "ride", RIDE, catalog=folder).exit_code == 3


def test_a_loss_may_be_stated() -> None:
    narrow = read("bench", "ride", RIDE, "--loss", "7-8")
    across = next(pair for pair in narrow["pairs"] if pair["first"] == "pedals" and pair["chain_between"])
    assert across["verdicts"][2]["says"] == "implausible"
    assert loss_range("0-0") == (0.0, 0.0)


@pytest.mark.parametrize("loss", ["2", "a-b", "4-2", "-1-2", "5-100", "1-2-3"])
def test_what_is_no_range_of_loss_is_wrong_usage(loss: str) -> None:
    result = run("bench", "ride", RIDE, f"--loss={loss}")
    assert result.exit_code == 2
    assert "write it as 1.4-4" in result.stderr


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("nowhere",), 5, "there is no such file"),
        ((RIDE, "--format", "pdf"), 2, "choose one of terminal, text, markdown, json"),
    ],
)
def test_what_cannot_be_done_says_why(words: tuple[str, ...], code: int, told: str) -> None:
    result = run("bench", "ride", *words)
    assert result.exit_code == code
    assert told in result.stderr


def test_a_sheet_with_a_mistake_is_told_at_its_line(tmp_path: Path) -> None:
    folder = ride_copy(tmp_path)
    path = folder / "ride.yaml"
    path.write_text(path.read_text("utf-8").replace("what: hub", "what: wheel"), "utf-8")
    result = run("bench", "ride", folder)
    assert result.exit_code == 3
    assert "ride.yaml:" in result.stderr
    assert "wheel" in result.stderr
