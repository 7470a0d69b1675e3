import signal
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from command_line import copied, run
from spindlewise.cli.serving import served

CHEAPER = "2026-11-20,tarnquell-liskar-duo,EU,EUR,543.21,in,offer,Tollhouse Spokes,2026-12-24,shop page\n"


def got(address: str) -> str:
    with urllib.request.urlopen(address, timeout=20) as answer:
        assert answer.headers["Cache-Control"] == "no-store"
        return str(answer.read().decode())


@contextmanager
def previewing(*words: str | Path) -> Iterator[tuple[subprocess.Popen[str], str]]:
    # a program that is begun in the background would not listen to Ctrl-C
    listening = "import signal; signal.signal(signal.SIGINT, signal.default_int_handler)"
    command = [
        sys.executable,
        "-c",
        f"{listening}; from spindlewise.cli.main import run; run()",
        "preview",
        *map(str, words),
    ]
    program = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
    try:
        assert program.stderr is not None
        yield program, program.stderr.readline().partition("index.html")[0]
    finally:
        if program.poll() is None:
            program.send_signal(signal.SIGINT)
        program.communicate(timeout=30)


def until(found: str, address: str, seconds: float = 60) -> bool:
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if found in got(address):
            return True
        time.sleep(0.2)
    return False


@pytest.mark.slow
def test_a_price_that_is_logged_is_on_the_page_and_a_mistake_leaves_it_standing(tmp_path: Path) -> None:
    pytest.importorskip("watchfiles", reason="watchfiles is not installed")
    folder = copied(tmp_path)
    with previewing("--watch", "--catalog", folder) as (program, address):
        assert address.startswith("http://127.0.0.1:")
        page = f"{address}products/tarnquell-liskar-duo.html"
        assert "543.21" not in got(page)
        time.sleep(1)  # the watch begins when the address is said
        with (folder / "prices.csv").open("a", encoding="utf-8") as log:
            log.write(CHEAPER)
        assert until("543.21", page)
        (folder / "criteria.yaml").write_text("nonsense", "utf-8")
        time.sleep(2)
        assert program.poll() is None
        assert "543.21" in got(page)
        program.send_signal(signal.SIGINT)
        _, said = program.communicate(timeout=30)
        assert program.returncode == 0
        assert "criteria.yaml" in said
        assert "Ended." in said


def test_a_port_that_is_taken_exits_5(tmp_path: Path) -> None:
    (tmp_path / "site").mkdir()
    with served(tmp_path / "site", 0) as address:
        taken = address.rstrip("/").rpartition(":")[2]
        result = run("preview", "--port", taken)
    assert result.exit_code == 5


def test_a_catalog_with_errors_is_not_shown(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    (folder / "criteria.yaml").write_text("nonsense", "utf-8")
    assert run("preview", catalog=folder).exit_code == 3


def test_watching_without_its_package_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "watchfiles", None)
    result = run("preview", "--watch")
    assert result.exit_code == 2
    assert "spindlewise[preview]" in result.stderr
