from datetime import date
from pathlib import Path

import pytest
import typer

from command_line import SMALL, copied, run
from small_answers import desk
from spindlewise.cli.opening import buyer_path, catalog_folder, demo_folder, reading_day, shelf, today


def test_the_folder_stated_then_here_then_the_demo(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert catalog_folder(Path("x")) == Path("x")
    assert catalog_folder(None) == demo_folder()
    copied(tmp_path)
    assert catalog_folder(None) == Path("catalog")


def test_the_demo_is_a_catalog() -> None:
    assert (demo_folder() / "catalog.yaml").is_file()


def test_the_day_stated_then_the_pinned_one_then_today() -> None:
    catalog = desk().catalog
    assert reading_day(catalog, date(2026, 1, 1)) == date(2026, 1, 1)
    assert reading_day(catalog, None) == date(2026, 11, 20)


def test_a_catalog_of_today_is_read_today(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    path = folder / "catalog.yaml"
    path.write_text(path.read_text("utf-8").replace("as_of: 2026-11-20", "as_of: today"), "utf-8")
    before = today()
    result = run("rank", "--buyer", "club-racer", "--json", catalog=folder)
    assert f'"as_of": "{before}"' in result.stdout or f'"as_of": "{today()}"' in result.stdout


def test_a_buyer_is_a_path_or_an_id() -> None:
    path = SMALL / "buyers" / "club-racer.yaml"
    assert buyer_path("club-racer", SMALL) == buyer_path(str(path), SMALL) == path


@pytest.mark.parametrize(("name", "code"), [("../club-racer", 5), ("nobody", 2), ("nobody.yaml", 5)])
def test_no_such_buyer(name: str, code: int) -> None:
    with pytest.raises(typer.Exit) as ended:
        buyer_path(name, SMALL)
    assert ended.value.exit_code == code


QUESTIONS = (
    ("rank", "--buyer", "hill-counter", "--explain"),
    ("rank", "--buyer", "club-racer", "--json"),
    ("ladder", "--buyer", "hill-counter"),
    ("swap", "lommerside-lethery", "brellowick-ferrowen-2"),
    ("price", "history", "brellowick-ferrowen-2"),
    ("answer", "--buyer", "club-racer"),
)
"""Asked of the demo."""


def answers() -> list[tuple[int, str, str]]:
    found = [run(*words, catalog=demo_folder()) for words in QUESTIONS]
    return [(each.exit_code, each.stdout, each.stderr) for each in found]


def test_a_kept_catalog_answers_to_the_byte_as_one_that_is_read(tmp_path, monkeypatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.setenv("SPINDLEWISE_KEEP", "no")
    read = answers()
    assert [code for code, *_ in read] == [0] * len(QUESTIONS)
    assert list(tmp_path.iterdir()) == []
    monkeypatch.delenv("SPINDLEWISE_KEEP")
    assert answers() == read
    assert len(list((tmp_path / "spindlewise").iterdir())) == 1
    monkeypatch.setattr("spindlewise.catalog.opening.open_catalog", None)  # so that reading would fail
    assert answers() == read


def test_where_nothing_can_be_kept_the_answer_is_the_same(tmp_path, monkeypatch) -> None:
    (tmp_path / "cache").write_text("in the way", "utf-8")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    first = run("rank", "--buyer", "club-racer", catalog=demo_folder())
    assert (first.exit_code, first.stderr) == (0, "")
    assert run("rank", "--buyer", "club-racer", catalog=demo_folder()).stdout == first.stdout


@pytest.mark.parametrize(
    ("stated", "home", "folder"),
    [
        ("/var/cache/rider", "/home/rider", "/var/cache/rider/spindlewise"),
        ("", "/home/rider", "/home/rider/.cache/spindlewise"),
        ("relative/cache", "/home/rider", "/home/rider/.cache/spindlewise"),
        ("", "", None),
        ("", "not/absolute", None),
    ],
)
def test_the_shelf_stands_in_the_cache_folder_of_the_user(stated, home, folder, monkeypatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", stated)
    monkeypatch.setenv("HOME", home)
    found = shelf()
    assert (found.folder.as_posix() if found else None) == folder


def test_no_shelf_where_it_is_not_wanted_or_nobody_owns_files(monkeypatch) -> None:
    monkeypatch.setenv("HOME", "/home/rider")
    monkeypatch.setenv("SPINDLEWISE_KEEP", "no")
    assert shelf() is None
    monkeypatch.delenv("SPINDLEWISE_KEEP")
    assert shelf() is not None
    monkeypatch.delattr("os.geteuid")
    assert shelf() is None
