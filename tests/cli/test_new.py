from pathlib import Path

import pytest

from command_line import copied, read, run


def test_a_new_catalog_checks_without_a_word_and_answers(tmp_path: Path) -> None:
    folder = tmp_path / "mine"
    result = run("new", "catalog", folder, catalog=None)
    assert result.exit_code == 0
    assert len(result.stdout.splitlines()) == 8
    checked = run("check", "--strict", catalog=folder)
    assert (checked.exit_code, checked.stdout) == (0, "")
    assert read("rank", "--buyer", "example-buyer", catalog=folder)["pick"] == "example-pedal"


def test_a_new_product_and_a_new_buyer_check(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    assert run("new", "product", "Brisk Nine", catalog=folder).exit_code == 0
    assert run("new", "buyer", "Ann O'Hill: racer", catalog=folder).exit_code == 0
    checked = run("check", catalog=folder)
    assert checked.exit_code == 0
    assert (folder / "products/brisk-nine.yaml").is_file()
    assert read("answer", "--buyer", "ann-o-hill-racer", catalog=folder)["pick"]


@pytest.mark.parametrize(
    "words",
    [
        ("new", "product", "Brisk Nine"),
        ("new", "buyer", "Ann"),
        ("price", "add", "tarnquell-liskar-duo", "500", "--seller", "Lock Cycles"),
        ("price", "repair"),
    ],
)
def test_nothing_is_written_into_the_demo(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    monkeypatch.chdir(tmp_path)
    result = run(*words, catalog=None)
    assert (result.exit_code, result.stdout) == (2, "")
    assert "there is no catalog in this folder to write into" in result.stderr


@pytest.mark.parametrize("kind", ["product", "buyer"])
def test_nothing_is_overwritten(tmp_path: Path, kind: str) -> None:
    folder = copied(tmp_path)
    assert run("new", kind, "One More", catalog=folder).exit_code == 0
    path = folder / f"{kind}s" / "one-more.yaml"
    path.write_text("mine", "utf-8")
    result = run("new", kind, "one more", catalog=folder)
    assert result.exit_code == 5
    assert path.read_text("utf-8") == "mine"


def test_a_folder_with_something_in_it_is_no_place_for_a_catalog(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", "utf-8")
    for place in (tmp_path, tmp_path / "file", tmp_path / "file" / "below"):
        assert run("new", "catalog", place, catalog=None).exit_code == 5


@pytest.mark.parametrize("name", ["", "-", "x", "重量", "two\nlines"])
def test_a_name_without_an_id_is_wrong_usage(tmp_path: Path, name: str) -> None:
    result = run("new", "product", "--catalog", copied(tmp_path), "--", name, catalog=None)
    assert result.exit_code == 2
    assert "no id can be made" in result.stderr
