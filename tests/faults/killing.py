"""Programs that write until they are killed, and what must be found afterwards."""

import json
import multiprocessing
import os
import random
import signal
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from multiprocessing.connection import Connection
from pathlib import Path

import worlds
from faults.quick_sites import gathering
from spindlewise.answer.answer_log import LoggedAnswer, append_answer, read_answers, to_log
from spindlewise.answer.ranking import rank
from spindlewise.catalog.price_log import append_price, read_price_log
from spindlewise.cli.torn_line import repair_torn_line
from spindlewise.site import build

Write = Callable[[Path, int], None]
FORK = multiprocessing.get_context("fork")
PAGES = [f"{folder}page-{n}.html" for folder in ("", "products/", "data/") for n in range(8)]


def killed_while(write: Write, path: Path, after_s: float) -> int:
    """Let a program write 0, 1, 2 … and kill it; the answer is how many writes it has acknowledged."""
    here, there = FORK.Pipe(duplex=False)
    child = FORK.Process(target=_write_on, args=(write, path, there))
    child.start()
    there.close()
    here.poll(20)  # it has begun
    time.sleep(after_s)
    os.kill(child.pid or 0, signal.SIGKILL)
    child.join(20)
    assert child.exitcode == -signal.SIGKILL
    acknowledged = 0
    try:
        while here.poll(0):
            acknowledged = here.recv()
    except EOFError:
        pass
    return acknowledged


def _write_on(write: Write, path: Path, told: Connection) -> None:
    number = 0
    while True:
        write(path, number)
        number += 1
        told.send(number)


def prices_survive(folder: Path, after_s: float) -> int:
    """Kill a program that appends prices; every acknowledged line stands, at most one more, none torn."""
    log = folder / "prices.csv"
    acknowledged = killed_while(_append_price, log, after_s)
    rows, problems = read_price_log(log, "prices.csv")
    _mended(log, [problem.rule for problem in problems])
    rows, problems = read_price_log(log, "prices.csv")
    assert problems == []
    _whole([row.seller for row in rows], [f"Shop {n}" for n in range(len(rows))], acknowledged)
    _append_price(log, len(rows))
    assert len(read_price_log(log, "prices.csv")[0]) == len(rows) + 1
    return acknowledged


def answers_survive(folder: Path, after_s: float) -> int:
    """The same for the log of answers."""
    log = folder / "answers.jsonl"
    acknowledged = killed_while(_append_answer, log, after_s)
    entries, problems = read_answers(log, "answers.jsonl")
    _mended(log, [problem.rule for problem in problems])
    entries, problems = read_answers(log, "answers.jsonl")
    assert problems == []
    days = [entry.day.toordinal() for entry in entries]
    _whole(days, [_day(n).toordinal() for n in range(len(entries))], acknowledged)
    _append_answer(log, len(entries))
    return acknowledged


def _mended(log: Path, rules: list[str]) -> None:
    assert set(rules) <= {"torn-line", "empty-file"}, rules
    if "torn-line" in rules:
        repair_torn_line(log)


def _whole(found: list[object], expected: list[object], acknowledged: int) -> None:
    assert found == expected
    assert acknowledged <= len(found) <= acknowledged + 1


def sites_survive(folder: Path, after_s: float) -> int:
    """Kill a program that publishes site after site: no page is torn, and the next publish mends all."""
    out = folder / "site"
    acknowledged = killed_while(_publish, out, after_s)
    for path in (p for p in out.rglob("*") if p.is_file() and p.name.endswith(".html")):
        if not path.name.startswith("."):
            text = path.read_text()
            number = int(text.split(maxsplit=1)[0])
            assert text == _page(path.relative_to(out).as_posix(), number)
            assert number in (acknowledged - 1, acknowledged)
    manifest = out / "manifest.json"
    if manifest.exists():
        assert set(json.loads(manifest.read_text())["outputs"]) == set(PAGES)
    _publish(out, 7)
    left = {p.relative_to(out).as_posix(): p.read_text() for p in out.rglob("*") if p.is_file()}
    del left["manifest.json"]
    assert left == {name: _page(name, 7) for name in PAGES}
    return acknowledged


def _page(name: str, number: int) -> str:
    return f"{number} {name} " + "x" * (3000 + 997 * (number % 7))


def _publish(out: Path, number: int) -> None:
    pages = {name: _page(name, number).encode() for name in PAGES}
    build.gather_whole = gathering(pages)  # in the child alone, or put back by the test
    build.publish(worlds.catalog([], []), {}, worlds.DAY, out)


def _append_price(path: Path, number: int) -> None:
    append_price(path, worlds.price("heron", 500, seller=f"Shop {number}"))


def _append_answer(path: Path, number: int) -> None:
    append_answer(path, _entry(_day(number)))


def _day(number: int) -> date:
    return date.fromordinal(730_000 + number)


_KEPT: list[LoggedAnswer] = []


def _entry(day: date) -> LoggedAnswer:
    if not _KEPT:
        desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])
        _KEPT.append(to_log(desk, rank(desk, worlds.buyer())))
    return replace(_KEPT[0], day=day)


CASES = {"prices": (prices_survive, 0.03), "answers": (answers_survive, 0.03), "site": (sites_survive, 0.2)}
"""What is written, and within how many seconds after the first write its program is killed."""


def killed(case: str, runs: int, parent: Path) -> int:
    """Kill so many programs at moments drawn once and for all; how many writes they had acknowledged."""
    survive, within_s = CASES[case]
    draw, acknowledged = random.Random(case), 0
    for number in range(runs):
        folder = parent / str(number)
        folder.mkdir()
        acknowledged += survive(folder, draw.uniform(0.0, within_s))
    return acknowledged
