"""Several programs append to one log at once: no line is lost, none is mixed with another."""

import multiprocessing
from collections.abc import Sequence
from pathlib import Path

import pytest

from spindlewise.catalog.durable import append_line

HEADER = b"writer,number,filler\n"


def _line(writer: int, number: int) -> bytes:
    return f"{writer},{number},{'x' * (7 + 13 * writer + number % 50)}\n".encode()


def _write_many(path: Path, writer: int, count: int) -> None:
    for number in range(count):
        append_line(path, _line(writer, number), header=HEADER)


def _all_at_once(path: Path, writers: int, count: int) -> Sequence[bytes]:
    fork = multiprocessing.get_context("fork")
    children = [fork.Process(target=_write_many, args=(path, writer, count)) for writer in range(writers)]
    for child in children:
        child.start()
    for child in children:
        child.join(60)
    assert [child.exitcode for child in children] == [0] * writers
    return path.read_bytes().splitlines(keepends=True)


@pytest.mark.parametrize(
    ("writers", "count"), [(4, 50), pytest.param(8, 250, marks=pytest.mark.slow)], ids=["four", "eight"]
)
def test_no_line_of_any_writer_is_lost_or_mixed(tmp_path: Path, writers: int, count: int) -> None:
    lines = _all_at_once(tmp_path / "prices.csv", writers, count)
    assert lines[0] == HEADER
    assert sorted(lines[1:]) == sorted(_line(w, n) for w in range(writers) for n in range(count))
    for writer in range(writers):
        own = [line for line in lines[1:] if line.startswith(f"{writer},".encode())]
        assert own == [_line(writer, number) for number in range(count)]
