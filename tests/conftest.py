"""No test reaches a network: what would leave this machine is stopped by the interpreter itself, and told.

Also how many examples hypothesis draws where a run asks for that by name, and where commands keep things.
"""

import socket
import sys
from collections.abc import Iterator

import pytest
from hypothesis import Phase, settings

LOOPBACK = {"127.0.0.1", "::1", "localhost", b"localhost", None, ""}
"""How the browser's driver may be spoken to."""
CALLS = {
    "socket.connect": 1,
    "socket.sendto": 1,
    "socket.sendmsg": 1,
    "socket.getaddrinfo": 0,
    "socket.gethostbyname": 0,
    "socket.gethostbyaddr": 0,
    "socket.getnameinfo": 0,
}
"""Audit events (PEP 578) of reaching out, and which of their arguments is the address."""
attempts: list[str] = []

settings.register_profile(
    "strength",
    max_examples=25,
    derandomize=True,
    deadline=None,
    database=None,
    phases=(Phase.explicit, Phase.generate),
)
"""For `make mutants`: few examples, always the same, since every change of the code runs them again. A
failing example is not made smaller: that takes minutes and adds nothing here."""


def _stop(event: str, arguments: tuple[object, ...]) -> None:
    where = CALLS.get(event)
    if where is None:
        return
    first = arguments[0]
    if isinstance(first, socket.socket) and first.family == getattr(socket, "AF_UNIX", None):
        return
    address = arguments[where]
    host = address[0] if isinstance(address, tuple) else address
    if host in LOOPBACK:
        return
    attempts.append(f"{event} {address!r}")
    raise PermissionError(f"a test reached for the network: {event} {address!r}")


sys.addaudithook(_stop)


@pytest.fixture(scope="session", autouse=True)
def a_cache_of_the_run(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """What commands keep between runs goes into a folder of this run, never into the user's own."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


@pytest.fixture(autouse=True)
def nobody_calls_out() -> Iterator[list[str]]:
    """Fail a test that reached for the network, even where the attempt's error was caught."""
    attempts.clear()
    yield attempts
    assert attempts == []
