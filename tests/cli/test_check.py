import json
import re
import shutil
from pathlib import Path

import pytest

from command_line import copied, run
from spindlewise.catalog.file_digest import digests
from spindlewise.site.manifest import Manifest

DEMO = Path(__file__).resolve().parents[2] / "catalog"


def spoil(folder: Path, name: str, old: str, new: str) -> None:
    path = folder / name
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")


def test_a_sound_catalog_has_warnings_only_and_exits_0() -> None:
    result = run("check")
    assert result.exit_code == 0
    assert ": warning: " in result.stdout
    assert ": error: " not in result.stdout
    assert re.search(
        r": \d+ warnings; read 7 products, \d+ buyers, \d+ prices and \d+ bench files?\.$", result.stderr
    )


def test_a_clean_catalog_is_said_to_be_clean_and_how_much_was_read(tmp_path: Path) -> None:
    folder = tmp_path / "mine"
    run("new", "catalog", folder, catalog=None)
    result = run("check", catalog=folder)
    assert (result.exit_code, result.stdout) == (0, "")
    assert result.stderr == (
        f"{folder}: nothing is wrong; read 1 product, 1 buyer, 1 price and 0 bench files.\n"
    )


def test_what_could_not_be_read_is_not_counted(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    spoil(folder, "products/tarnquell-liskar-duo.yaml", "kind: power pedal", "kind: power pedl")
    spoil(folder, "products/tarnquell-liskar-mono.yaml", "kind: power pedal", "kind: power pedl")
    result = run("check", catalog=folder)
    assert "2 errors and " in result.stderr
    assert "; read" not in result.stderr


def test_a_recording_that_is_not_the_one_that_was_measured_from_is_an_error(tmp_path: Path) -> None:
    folder = tmp_path / "demo"
    shutil.copytree(DEMO, folder)
    assert run("check", catalog=folder).exit_code == 0
    spoil(folder, "bench/rides/2026-09-12-at-9000-km/pedals.csv", "\n60,", "\n60.0,")
    result = run("check", "--format", "plain", catalog=folder)
    assert result.exit_code == 3
    assert "-reading-2026-09-12.yaml:16:13: error: recordings[4].sha256" in result.stdout


def test_against_a_site_a_changed_log_is_an_error_and_a_grown_one_is_none(tmp_path: Path) -> None:
    folder, site = copied(tmp_path), tmp_path / "site"
    site.mkdir()
    (site / "manifest.json").write_bytes(Manifest("2026-11-20", digests(folder)).to_bytes())
    assert run("price", "add", "tarnquell-liskar-duo", "650", "--seller", "A", catalog=folder).exit_code == 0
    assert run("check", "--against", site, catalog=folder).exit_code == 0
    spoil(folder, "prices.csv", "699.00", "698.00")
    result = run("check", "--against", site, "--format", "plain", catalog=folder)
    assert result.exit_code == 3
    assert "bytes are not as when the site was published" in result.stdout
    assert run("check", catalog=folder).exit_code == 0
    assert run("check", "--against", tmp_path / "none", catalog=folder).exit_code == 5


def test_with_strict_a_warning_is_an_error() -> None:
    assert run("check", "--strict").exit_code == 3


def test_all_problems_are_said_with_file_line_and_column(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    spoil(folder, "products/tarnquell-liskar-duo.yaml", "kind: power pedal", "kind: power pedl")
    spoil(folder, "buyers/club-racer.yaml", "currency: EUR", "currency: euro")
    spoil(folder, "prices.csv", "699.00", "69x.00")
    result = run("check", "--format", "plain", catalog=folder)
    assert result.exit_code == 3
    errors = [line for line in result.stdout.splitlines() if ": error: " in line]
    assert len(errors) == 3
    assert f"{folder}/products/tarnquell-liskar-duo.yaml:7:7: error: kind: " in errors[2]
    assert "prices.csv:" in errors[1]


def test_a_buyer_is_held_against_the_catalog(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    spoil(
        folder,
        "buyers/club-racer.yaml",
        "present_pedals: lommerside-lethery",
        "present_pedals: lommerside-letery",
    )
    spoil(folder, "buyers/phone-only.yaml", "region: EU", "region: EUX")
    result = run("check", catalog=folder)
    assert result.exit_code == 3
    assert "the catalog has no product lommerside-letery; did you mean lommerside-lethery?" in result.stdout
    assert "region: the catalog has no region EUX" in result.stdout
    assert "club-racer.yaml:33:17:" in result.stdout


def test_a_buyer_whose_id_is_not_its_file_name_is_a_problem(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    spoil(folder, "buyers/club-racer.yaml", "id: club-racer", "id: club-rider")
    result = run("check", catalog=folder)
    assert result.exit_code == 3
    assert "(buyer-file-name)" in result.stdout


@pytest.mark.parametrize("words", [["--json"], ["--format", "json"]])
def test_json_counts_and_lists(words: list[str]) -> None:
    found = json.loads(run("check", *words).stdout)
    assert found["schema"] == "spindlewise problems 1"
    assert found["errors"] == 0
    assert found["warnings"] == len(found["problems"]) > 0


def test_human_ends_with_the_count_and_points_at_the_place() -> None:
    text = run("check", "--format", "human").stdout
    assert "warnings" in text.splitlines()[-1]
    assert any(line.strip() == "^" for line in text.splitlines())


def test_github_style_marks_lines() -> None:
    assert run("check", "--format", "github").stdout.startswith("::warning file=")


def test_an_unknown_format_is_wrong_usage() -> None:
    result = run("check", "--format", "xml")
    assert (result.exit_code, result.stdout) == (2, "")
    assert "choose one of plain, human, json, github" in result.stderr


def test_a_folder_without_a_catalog_cannot_be_read(tmp_path: Path) -> None:
    result = run("check", catalog=tmp_path / "nowhere")
    assert result.exit_code == 5
    assert "no catalog.yaml" in result.stdout
