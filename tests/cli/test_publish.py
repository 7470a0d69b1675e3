from pathlib import Path

from command_line import copied, read, run


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
