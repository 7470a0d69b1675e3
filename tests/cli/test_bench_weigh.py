from pathlib import Path

import pytest

from command_line import SMALL, as_expected, copied, read, run, widest
from spindlewise.catalog.yaml_text import read_yaml_text

HEAD = "date,product,what,batteries,cleats,reading_g,scale,resolution_g"
LINE = "2026-03-12,tarnquell-liskar-duo,pair,in,off,329,scale C,1"


def csv(folder: Path, *lines: str) -> Path:
    path = folder / "new.csv"
    path.write_text("\n".join([HEAD, *lines, ""]), "utf-8")
    return path


def test_the_catalogs_own_weighings_at_80_columns() -> None:
    result = run("bench", "weigh", "--product", "pellamund-orrestad")
    assert result.exit_code == 0
    assert widest(result.stdout) <= 80
    as_expected("bench_weigh.txt", result.stdout)


def test_json(tmp_path: Path) -> None:
    found = read("bench", "weigh", csv(tmp_path, LINE, LINE, LINE))
    assert found["schema"] == "spindlewise bench weigh 1"
    (one,) = found["weighed"]
    assert (one["mean_g"], one["claim"]["verdict"]) == (329.0, "proved over")


def test_a_snippet_is_yaml_that_names_the_file(tmp_path: Path) -> None:
    result = run("bench", "weigh", csv(tmp_path, LINE, LINE), "--snippet")
    assert result.exit_code == 0
    document, problems = read_yaml_text(result.stdout, "stdout")
    assert problems == []
    assert document is not None
    assert document.value(("tarnquell-liskar-duo", "weight_g", 0, "source")) == "new.csv, 2026-03-12"
    own = run("bench", "weigh", "--product", "pellamund-orrestad", "--snippet")
    assert "source: bench/weighings.csv, 2025-12-01" in own.stdout


def test_a_pasted_snippet_moves_the_ranking(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    snippet = run("bench", "weigh", csv(tmp_path, LINE, LINE), "--snippet", catalog=folder).stdout
    entry = snippet.split("  weight_g:\n")[1]
    path = folder / "products" / "tarnquell-liskar-duo.yaml"
    path.write_text(path.read_text("utf-8").replace("  weight_g:\n", f"  weight_g:\n{entry}", 1), "utf-8")
    (folder / "new.csv").write_bytes((tmp_path / "new.csv").read_bytes())
    assert run("check", catalog=folder).exit_code == 0

    def weight(where: Path) -> float:
        order = read("rank", "--buyer", "club-racer", catalog=where)["order"]
        duo = next(row for row in order if row["product"] == "tarnquell-liskar-duo")
        value: float = duo["merits"]["weight"]["value"]
        return value

    assert (weight(SMALL), weight(folder)) == (328.0, 329.0)


def test_a_new_file_is_written_and_never_rewritten(tmp_path: Path) -> None:
    source, out = csv(tmp_path, LINE, LINE), tmp_path / "out" / "observations"
    result = run("bench", "weigh", source, "--write", out)
    assert result.exit_code == 0
    (path,) = out.iterdir()
    assert path.name == "tarnquell-liskar-duo-weight-2026-03-12.yaml"
    assert "written" in result.stderr
    path.write_text("mine", "utf-8")
    again = run("bench", "weigh", source, "--write", out)
    assert again.exit_code == 5
    assert path.read_text("utf-8") == "mine"


def test_folders_of_which_every_file_is_read_are_refused(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    result = run("bench", "weigh", csv(tmp_path, LINE, LINE), "--write", folder / "products", catalog=folder)
    assert result.exit_code == 2
    assert "bench/observations" in result.stderr
    assert run("check", catalog=folder).exit_code == 0


def test_a_folder_that_is_a_file_cannot_be_written_to(tmp_path: Path) -> None:
    source = csv(tmp_path, LINE, LINE)
    result = run("bench", "weigh", source, "--write", source)
    assert result.exit_code == 5


def test_a_bad_line_is_told_and_the_others_are_weighed(tmp_path: Path) -> None:
    result = run("bench", "weigh", csv(tmp_path, LINE, LINE.replace("329", "x"), LINE))
    assert result.exit_code == 3
    assert "new.csv:3:45: error: reading_g: found 'x'" in result.stderr
    assert "329.0 ±" in result.stdout


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("nowhere.csv",), 5, "is not there"),
        (("--as-of", "2020-01-01"), 4, "nothing was weighed by 2020-01-01"),
        (("--product", "nothing-such"), 4, "nothing was weighed"),
    ],
)
def test_nothing_to_weigh(words: tuple[str, ...], code: int, told: str) -> None:
    result = run("bench", "weigh", *words)
    assert result.exit_code == code
    assert told in result.stderr
