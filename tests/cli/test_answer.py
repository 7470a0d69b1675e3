from pathlib import Path

import pytest

from command_line import read, run, widest

BUYERS = ("club-racer", "phone-only")


@pytest.mark.parametrize("name", BUYERS)
def test_a_reply_ready_to_paste_says_all_that_it_must(name: str) -> None:
    result = run("answer", "--buyer", name, "--format", "text")
    assert (result.exit_code, result.stderr) == (0, "")
    prose, link = result.stdout.rstrip("\n").rsplit("\n", 1)
    assert widest(prose) <= 78
    # an address is a word and stays whole, however long
    assert link.startswith("weigh.html#v=1&region=EU&")
    assert "mass" not in link
    text = " ".join(result.stdout.split())
    for must in (
        "Our pick: ",
        "As of 2026-11-20",
        "Safety notices",
        "A batch of spindles may crack",
        "against the pick",
        "What you will see",
        "What would change this",
        "would score as much as the pick at",
        "Disclosure",
        "None of this moves a place",
        "Before you ride",
        "claimed: by the maker",
        "Everything here is invented",
    ):
        assert must in text, must


def test_the_bikes_changes_are_in_it() -> None:
    text = " ".join(run("answer", "--buyer", "club-racer", "--format", "text").stdout.split())
    for must in (
        "Saddle: up ",
        "by common practice",
        "Stance width: ",
        "Weight: ",
        "Tools: ",
        "Fitting torque: ",
    ):
        assert must in text, must


def test_a_doubled_side_comes_with_its_error() -> None:
    text = " ".join(run("answer", "--buyer", "phone-only", "--format", "text").stdout.split())
    assert "shows one leg's power doubled over Bluetooth" in text
    assert "Doubling one leg" in text


def test_json_holds_the_ranking_and_the_rest() -> None:
    found = read("answer", "--buyer", "club-racer")
    assert found["schema"] == "spindlewise answer 1"
    assert found["swap"]["saddle_mm"]["practice"] is not None
    assert found["ladder"]["baseline"] == "lommerside-lethery"
    assert found["against_pick"][0]["parts"]
    assert found["safety_notices"][0]["product"] == "yttervane-koldrane"
    assert {each["product"] for each in found["disclosures"]} >= {found["pick"]}


def test_nothing_to_recommend_exits_4_and_names_near_misses() -> None:
    result = run("answer", "--buyer", "nothing-for-it", "--format", "text")
    assert result.exit_code == 4
    text = " ".join(result.stdout.split())
    assert "No recommendation: nothing in the catalog meets all the needs." in text
    assert "over the budget" in text


@pytest.mark.parametrize(("name", "begins"), [("a.md", "# "), ("a.txt", "Which"), ("a.json", "{")])
def test_output_goes_to_a_file_in_the_form_of_its_ending(tmp_path: Path, name: str, begins: str) -> None:
    path = tmp_path / name
    result = run("answer", "--buyer", "club-racer", "--output", path)
    assert (result.exit_code, result.stdout) == (0, "")
    assert f"{path} written." in result.stderr
    assert path.read_text("utf-8").startswith(begins)


def test_a_folder_that_is_not_there_cannot_be_written(tmp_path: Path) -> None:
    result = run("answer", "--buyer", "club-racer", "--output", tmp_path / "no" / "a.txt")
    assert result.exit_code == 5
    assert "the folder is not there" in result.stderr


def test_output_to_a_dash_is_stdout() -> None:
    assert run("answer", "--buyer", "club-racer", "-o", "-").stdout.startswith("Which")


def test_an_unknown_format_is_wrong_usage() -> None:
    assert run("answer", "--buyer", "club-racer", "--format", "csv").exit_code == 2


def test_the_same_question_has_the_same_bytes() -> None:
    first, second = (run("answer", "--buyer", "club-racer", "--format", "markdown").stdout for _ in range(2))
    assert first == second
