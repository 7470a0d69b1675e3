"""What a terminal shows while a site is made, and that nothing of it stays."""

import os
import sys
from collections.abc import Callable
from contextlib import suppress
from threading import Thread

import pytest

from spindlewise.cli.publish_bar import publish_bar
from spindlewise.site.job import Job

JOBS = [Job("a.html", lambda: b""), Job("b.html", lambda: b"")]
HIDDEN, SHOWN, GONE = "\x1b[?25l", "\x1b[?25h", "\x1b[2K"


def on_terminal(monkeypatch: pytest.MonkeyPatch, act: Callable[[], object]) -> str:
    """What a true terminal gets that is stderr while `act` runs, Ctrl-C included."""
    for name, value in {"TERM": "xterm-256color", "COLUMNS": "60"}.items():
        monkeypatch.setenv(name, value)
    monkeypatch.delenv("NO_COLOR", raising=False)
    screen, program = os.openpty()
    sent: list[bytes] = []
    # a terminal that nobody reads makes its program wait
    reader = Thread(target=_read_all, args=(screen, sent), daemon=True)
    reader.start()
    with os.fdopen(program, "w") as stream, monkeypatch.context() as patch:
        patch.setattr(sys, "stderr", stream)
        with suppress(KeyboardInterrupt):
            act()
    reader.join(timeout=10)
    os.close(screen)
    return b"".join(sent).decode()


def _read_all(screen: int, sent: list[bytes]) -> None:
    # the end of a terminal is an error on some systems and nothing on others
    with suppress(OSError):
        while data := os.read(screen, 65536):
            sent.append(data)


def stages(count: int, then: Callable[[], object]) -> None:
    """So many stages, then something in the midst of the last one, or before the first."""
    with publish_bar() as progress:
        for _ in range(count - 1):
            assert list(progress(JOBS, 2)) == JOBS
        if count:
            next(iter(progress(JOBS, 2)))
        then()


def ctrl_c() -> None:
    raise KeyboardInterrupt


def test_without_a_terminal_nothing_is_shown(capsys: pytest.CaptureFixture[str]) -> None:
    with publish_bar() as progress:
        assert list(progress(JOBS, 2)) == JOBS
    assert capsys.readouterr() == ("", "")


def test_a_terminal_is_told_each_stage_by_its_name(monkeypatch: pytest.MonkeyPatch) -> None:
    shown = on_terminal(monkeypatch, lambda: stages(3, lambda: None))
    assert (
        shown.index("Working out the figures") < shown.index("Drawing pictures") < shown.index("Making pages")
    )


@pytest.mark.parametrize("count", [0, 1, 2])
def test_whoever_stops_it_gets_a_clean_line_and_the_cursor_back(
    monkeypatch: pytest.MonkeyPatch, count: int
) -> None:
    shown = on_terminal(monkeypatch, lambda: stages(count, ctrl_c))
    assert shown.rindex(SHOWN) > shown.rindex(HIDDEN)
    assert shown.endswith(GONE)
