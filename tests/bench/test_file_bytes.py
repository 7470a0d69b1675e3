import hashlib
import os

import pytest

from spindlewise.bench.file_bytes import read_bytes, sha256_of


def rule(found):
    raw, problems = found
    assert raw is None
    return problems[0].rule


def test_bytes_are_read_whole(tmp_path):
    path = tmp_path / "a.csv"
    path.write_bytes(b"abc")
    assert read_bytes(path, "a.csv") == (b"abc", [])
    assert sha256_of(b"abc") == hashlib.sha256(b"abc").hexdigest()


def test_what_cannot_be_read_is_said_each_in_its_way(tmp_path):
    (tmp_path / "empty.csv").touch()
    (tmp_path / "large.csv").write_bytes(b"x" * 11)
    os.mkfifo(tmp_path / "pipe.csv")
    assert rule(read_bytes(tmp_path / "none.csv", "n")) == "recording-missing"
    assert rule(read_bytes(tmp_path / "empty.csv", "n")) == "recording-empty"
    assert rule(read_bytes(tmp_path / "large.csv", "n", largest=10)) == "recording-too-large"
    assert read_bytes(tmp_path / "large.csv", "n", largest=11)[0] == b"x" * 11
    assert rule(read_bytes(tmp_path, "n")) == "recording-unreadable"
    assert rule(read_bytes(tmp_path / "pipe.csv", "n")) == "recording-unreadable"
    assert rule(read_bytes(tmp_path / "a\0b.csv", "n")) == "recording-unreadable"


def test_a_file_that_the_system_refuses_is_said(tmp_path, monkeypatch):
    path = tmp_path / "a.csv"
    path.write_bytes(b"abc")

    def refuse(*_args, **_kwargs):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(type(path), "open", refuse)
    _, problems = read_bytes(path, "a.csv")
    assert problems[0].message == "cannot be read: permission denied"
    with pytest.raises(PermissionError):
        path.open()
