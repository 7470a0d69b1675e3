from pathlib import Path

from command_line import copied, run


def test_a_torn_last_line_is_taken_out_and_the_log_kept_as_it_was(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    log = folder / "prices.csv"
    whole = log.read_bytes()
    log.write_bytes(whole + b"2026-11-20,tarn")
    refused = run("rank", "--buyer", "club-racer", catalog=folder)
    assert refused.exit_code == 3
    assert "price repair" in refused.stderr
    result = run("price", "repair", catalog=folder)
    assert result.exit_code == 0
    assert "took out '2026-11-20,tarn'" in result.stdout
    assert log.read_bytes() == whole
    assert (folder / "prices.csv.torn-1").read_bytes() == whole + b"2026-11-20,tarn"
    assert run("check", catalog=folder).exit_code == 0


def test_a_whole_log_is_not_touched(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    before = (folder / "prices.csv").read_bytes()
    assert "nothing was changed" in run("price", "repair", catalog=folder).stdout
    assert (folder / "prices.csv").read_bytes() == before


def test_no_log_exits_5(tmp_path: Path) -> None:
    result = run("price", "repair", catalog=tmp_path)
    assert result.exit_code == 5
    assert "is not there" in result.stderr
