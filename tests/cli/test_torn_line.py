from pathlib import Path

import pytest

from spindlewise.catalog import durable
from spindlewise.catalog.durable import CannotWrite, append_line, locked
from spindlewise.cli.torn_line import Repaired, repair_torn_line


def _log(folder: Path, data: bytes) -> Path:
    path = folder / "prices.csv"
    path.write_bytes(data)
    return path


def test_a_torn_line_is_taken_out_and_the_log_as_it_was_is_kept(tmp_path: Path) -> None:
    log = _log(tmp_path, b"header\nfirst\n2026-11-1")
    assert repair_torn_line(log) == Repaired("2026-11-1", tmp_path / "prices.csv.torn-1")
    assert log.read_bytes() == b"header\nfirst\n"
    assert (tmp_path / "prices.csv.torn-1").read_bytes() == b"header\nfirst\n2026-11-1"
    append_line(log, b"next\n")
    assert log.read_bytes() == b"header\nfirst\nnext\n"


def test_an_earlier_copy_is_never_overwritten(tmp_path: Path) -> None:
    log = _log(tmp_path, b"header\nhalf")
    (tmp_path / "prices.csv.torn-1").write_bytes(b"earlier")
    found = repair_torn_line(log)
    assert found is not None
    assert found.copy == tmp_path / "prices.csv.torn-2"
    assert (tmp_path / "prices.csv.torn-1").read_bytes() == b"earlier"


@pytest.mark.parametrize("data", [b"", b"header\n", b"header\nfirst\n"])
def test_a_whole_log_is_not_touched(tmp_path: Path, data: bytes) -> None:
    log = _log(tmp_path, data)
    before = log.stat().st_mtime_ns
    assert repair_torn_line(log) is None
    assert (log.read_bytes(), log.stat().st_mtime_ns) == (data, before)
    assert [p.name for p in tmp_path.iterdir() if not p.name.startswith(".")] == ["prices.csv"]


def test_a_letter_cut_in_two_is_shown_as_far_as_it_goes(tmp_path: Path) -> None:
    found = repair_torn_line(_log(tmp_path, "header\n2026,é".encode()[:-1]))
    assert found is not None
    assert found.removed == "2026,\N{REPLACEMENT CHARACTER}"


def test_what_cannot_be_mended_is_told(tmp_path: Path) -> None:
    with pytest.raises(CannotWrite, match=r"prices\.csv: is not there"):
        repair_torn_line(tmp_path / "prices.csv")
    (tmp_path / "folder").mkdir()
    with pytest.raises(CannotWrite, match="a folder stands there"):
        repair_torn_line(tmp_path / "folder")
    log = _log(tmp_path, b"half")
    (tmp_path / "other.csv").symlink_to(log)
    with pytest.raises(CannotWrite, match="it is a link"):
        repair_torn_line(tmp_path / "other.csv")
    assert log.read_bytes() == b"half"


def test_nobody_appends_while_a_log_is_mended(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(durable, "LOCK_SECONDS", 0.05)
    log = _log(tmp_path, b"header\nhalf")
    with locked(log), pytest.raises(CannotWrite, match="another program has held it"):
        repair_torn_line(log)
    assert log.read_bytes() == b"header\nhalf"


def test_a_copy_that_cannot_be_kept_leaves_the_log_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    log = _log(tmp_path, b"header\nhalf")

    def full(path: Path, data: bytes) -> None:
        raise CannotWrite(f"{path}: the disk is full")

    monkeypatch.setattr("spindlewise.cli.torn_line.create_file", full)
    with pytest.raises(CannotWrite, match="the disk is full"):
        repair_torn_line(log)
    assert log.read_bytes() == b"header\nhalf"
