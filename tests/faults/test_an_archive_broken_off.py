"""The bar of a long archive on a real terminal, wide and narrow, and what Ctrl-C leaves of it."""

import fcntl
import os
import re
import select
import shutil
import signal
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from small_rides import FIRST, RIDES

pty = pytest.importorskip("pty", reason="there are no pseudo-terminals here")
DEMO = RIDES.parents[1]
ESCAPES = re.compile(r"\x1b\[[0-9;?]*[A-Za-z]")
LONGEST_S = 60.0
SOME = re.compile(rb"[ 1-5][1-9]%")
"""A ride at least has been compared, and half of them have not."""


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("archive")
    for number in range(40):
        shutil.copytree(RIDES / FIRST, folder / f"ride-{number:02}")
    return folder


@contextmanager
def watched(archive: Path, columns: int, *words: str) -> Iterator[tuple[subprocess.Popen[bytes], int]]:
    """The command with a terminal as its stderr, and the terminal's other end."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    program = "from spindlewise.cli.main import run; run()"
    kept = {name: value for name, value in os.environ.items() if name not in ("COLUMNS", "NO_COLOR")}
    process = subprocess.Popen(
        [sys.executable, "-c", program, "--catalog", str(DEMO), "bench", "ride", str(archive), *words],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=theirs,
        env={**kept, "TERM": "xterm-256color"},
    )
    os.close(theirs)
    try:
        yield process, ours
    finally:
        if process.poll() is None:
            process.kill()
        process.wait()
        os.close(ours)


def read_until(terminal: int, sign: re.Pattern[bytes] | None) -> bytes:
    """What the terminal shows until a sign appears, or until the other end is closed."""
    seen, by = b"", time.monotonic() + LONGEST_S
    while (sign is None or not sign.search(seen)) and time.monotonic() < by:
        if select.select([terminal], [], [], 0.2)[0]:
            try:
                more = os.read(terminal, 65536)
            except OSError:  # closed
                break
            if not more:
                break
            seen += more
    return seen


def widest(seen: bytes) -> int:
    shown = (ESCAPES.sub("", part) for part in re.split(r"[\r\n]+", seen.decode()))
    return max(len(part) for part in shown)


@pytest.mark.slow
@pytest.mark.parametrize("columns", [100, 32])
def test_the_bar_fits_the_screen_and_is_gone_afterwards(archive: Path, columns: int) -> None:
    with watched(archive, columns, "--json") as (process, terminal):
        seen = read_until(terminal, re.compile(b"100%"))
        answer = process.communicate()[0]
        seen += read_until(terminal, None)
    assert process.returncode == 0
    assert b"Rides" in seen
    assert widest(seen) <= columns
    assert seen.endswith(b"\x1b[2K")  # the line is wiped, and nothing after it
    assert answer.startswith(b"{")
    assert b"\x1b" not in answer


@pytest.mark.slow
@pytest.mark.parametrize("columns", [100, 32])
def test_ctrl_c_wipes_the_bar_and_says_how_far_it_came(archive: Path, columns: int, tmp_path: Path) -> None:
    with watched(archive, columns, "--write", str(tmp_path / "out")) as (process, terminal):
        seen = read_until(terminal, SOME)
        process.send_signal(signal.SIGINT)
        answer = process.communicate()[0]
        seen += read_until(terminal, None)
    assert process.returncode == 130
    assert answer == b""
    assert not (tmp_path / "out").exists()
    after = seen.decode().rpartition("\x1b[2K")[2]
    told = re.fullmatch(r"Stopped: (\d+) of 40 rides had been compared\. Nothing was written\.\r\n", after)
    assert told
    assert 0 < int(told[1]) < 40
