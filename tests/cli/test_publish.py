import json
from pathlib import Path

import pytest

from command_line import copied, read, run

CHEAPER = "2026-11-20,tarnquell-liskar-duo,EU,EUR,549.00,in,offer,Tollhouse Spokes,2026-12-24,shop page\n"


def test_a_second_publish_changes_nothing(tmp_path: Path) -> None:
    out = tmp_path / "site"
    first = read("publish", "--out", out)
    assert first["schema"] == "spindlewise publish 1"
    assert "index.html" in first["changed"]
    assert len(first["changed"]) == first["files"]
    second = run("publish", "--out", out)
    assert second.exit_code == 0
    assert "0 files changed" in second.stdout.splitlines()[-1]


def test_buyers_with_errors_are_not_published(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    path = folder / "buyers/club-racer.yaml"
    path.write_text(path.read_text("utf-8").replace("region: EU", "region: EUX"), "utf-8")
    result = run("publish", "--out", tmp_path / "site", catalog=folder)
    assert result.exit_code == 3
    assert not (tmp_path / "site").exists()


def test_a_file_in_the_way_exits_5(tmp_path: Path) -> None:
    (tmp_path / "site").write_text("mine", "utf-8")
    result = run("publish", "--out", tmp_path / "site")
    assert result.exit_code == 5
    assert (tmp_path / "site").read_text("utf-8") == "mine"


def test_check_says_whether_the_site_is_out_of_date_and_writes_nothing(tmp_path: Path) -> None:
    folder, out = copied(tmp_path), tmp_path / "site"
    nothing_there = run("publish", "--check", "--out", out, catalog=folder)
    assert nothing_there.exit_code == 3
    assert "nothing of the site stands there yet" in nothing_there.stdout.splitlines()[-1]
    assert not out.exists()
    run("publish", "--out", out, catalog=folder)
    fresh = run("publish", "--check", "--out", out, catalog=folder)
    assert fresh.exit_code == 0
    assert "up to date" in fresh.stdout
    prices = folder / "prices.csv"
    prices.write_text(prices.read_text("utf-8") + CHEAPER, "utf-8")
    before = {path: path.read_bytes() for path in out.rglob("*") if path.is_file()}
    stale = run("publish", "--check", "--out", out, catalog=folder)
    assert stale.exit_code == 3
    assert f"changes  products/{CHEAPER.split(',')[1]}.html" in stale.stdout.splitlines()
    assert "out of date" in stale.stdout.splitlines()[-1]
    assert {path: path.read_bytes() for path in out.rglob("*") if path.is_file()} == before
    told = run("publish", "--check", "--json", "--out", out, catalog=folder)
    assert told.exit_code == 3
    assert json.loads(told.stdout)["written"] is False
    published = run("publish", "--out", out, catalog=folder).stdout.splitlines()
    assert [line.split()[1] for line in published[:-1]] == [
        line.split()[1] for line in stale.stdout.splitlines()[:-1]
    ]
    assert run("publish", "--check", "--out", out, catalog=folder).exit_code == 0


def test_a_page_that_is_no_longer_wanted_makes_a_site_out_of_date(tmp_path: Path) -> None:
    folder, out = copied(tmp_path), tmp_path / "site"
    run("publish", "--out", out, catalog=folder)
    (folder / "buyers/club-racer.yaml").unlink()
    stale = run("publish", "--check", "--out", out, catalog=folder)
    assert stale.exit_code == 3
    assert "goes     buyers/club-racer.html" in stale.stdout.splitlines()


def test_a_site_in_the_folder_one_stands_in_is_written_file_by_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    done = run("publish", "--out", ".")
    assert done.exit_code == 0
    assert "file by file" in done.stderr
    assert (tmp_path / "index.html").is_file()
    assert run("publish", "--check", "--out", ".").exit_code == 0


def test_the_whole_site_as_one_file(tmp_path: Path) -> None:
    file = tmp_path / "all.html"
    first = run("publish", "--single-file", file)
    assert first.exit_code == 0
    assert first.stdout.splitlines()[0] == "changed  all.html"
    stamp = file.stat().st_mtime_ns, file.stat().st_ino
    again = read("publish", "--single-file", file)
    assert (again["changed"], again["files"]) == ([], 1)
    assert (file.stat().st_mtime_ns, file.stat().st_ino) == stamp
    assert run("publish", "--single-file", file, "--check").exit_code == 0
    file.write_text("something else", "utf-8")
    assert run("publish", "--single-file", file, "--check").exit_code == 3
    assert file.read_text("utf-8") == "something else"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["all.html"]


def test_one_file_and_a_folder_at_once_is_wrong_usage(tmp_path: Path) -> None:
    both = run("publish", "--single-file", tmp_path / "all.html", "--out", tmp_path / "site")
    assert both.exit_code == 2
    assert list(tmp_path.iterdir()) == []


def test_one_file_over_a_folder_exits_5(tmp_path: Path) -> None:
    assert run("publish", "--single-file", tmp_path).exit_code == 5
