"""No command reaches for a network; the system kills a program that opens an internet socket."""

import json
import socket
from pathlib import Path

import pytest

from hostile.without_sockets import KILLED, known, run_without_sockets

CATALOG = Path(__file__).parents[2] / "catalog"
RUN = """
import json, sys
from typer.testing import CliRunner
from spindlewise.cli.main import app
for words in json.loads(sys.argv[1]):
    done = CliRunner().invoke(app, words)
    print(done.exit_code, *words)
"""
BUYER = ("--buyer", "club-racer")
PAIR = ("brellowick-ferrowen-2", "tarnquell-liskar-duo")
COMMANDS: list[tuple[str, ...]] = [
    ("check",),
    ("rank", *BUYER),
    ("answer", *BUYER, "--json"),
    ("versus", *PAIR, *BUYER),
    ("ladder", *BUYER),
    ("swap", *PAIR),
    ("price", "history", PAIR[0]),
    ("price", "at", PAIR[0], "500", *BUYER),
    ("bench", "weigh"),
    ("bench", "history", PAIR[0]),
    ("bench", "ride", str(CATALOG / "bench" / "rides")),
]
needs_filter = pytest.mark.skipif(not known(), reason="the filter is written for Linux on x86-64 and ARM64")


def test_an_attempt_in_a_test_is_stopped_and_told(nobody_calls_out: list[str]) -> None:
    with (
        socket.socket() as tried,
        pytest.raises(PermissionError, match="a test reached for the network"),
    ):
        tried.connect(("192.0.2.1", 80))  # RFC 5737: an address for documentation
    with pytest.raises(PermissionError):
        socket.getaddrinfo("example.org", 443)
    assert len(nobody_calls_out) == 2
    nobody_calls_out.clear()


@needs_filter
@pytest.mark.parametrize("family", ["AF_INET", "AF_INET6"])
def test_the_system_kills_a_program_that_opens_a_socket(family: str) -> None:
    assert run_without_sockets(f"import socket; socket.socket(socket.{family})").returncode == KILLED
    assert run_without_sockets("import socket; socket.socketpair()").returncode == 0


@needs_filter
def test_no_command_opens_a_socket(tmp_path: Path) -> None:
    """Publishing too, charts included, which are drawn by a program that is not Python's."""
    typed = [
        [*words, "--catalog", str(CATALOG)] for words in (*COMMANDS, ("publish", "--out", str(tmp_path)))
    ]
    done = run_without_sockets(RUN, [json.dumps(typed)])
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines() == [" ".join(["0", *words]) for words in typed]
    assert (tmp_path / "index.html").is_file()
