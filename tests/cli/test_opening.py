from datetime import date
from pathlib import Path

import pytest
import typer

from command_line import SMALL, copied, run
from small_answers import desk
from spindlewise.cli.opening import buyer_path, catalog_folder, demo_folder, reading_day, today


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
