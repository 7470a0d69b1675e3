"""Timing for the bench: the least of several rounds by turns, whole processes in processor time.

Only disturbances add to a time, so the least of several rounds counts. Whole processes are charged what the
system says that they used of the processor, since the wall clock of a shared machine says little.
"""

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PROGRAM = str(Path(sys.executable).with_name("spindlewise"))
MEMORY_FILES = Path("/dev/shm")


@dataclass(frozen=True)
class Line:
    """One line of the table: ours, what it is held against, their ratio, and the target for it."""

    what: str
    ours: str
    against: str
    ratio: str
    target: str


@dataclass(frozen=True)
class Spent:
    """What a whole process took: seconds of the processor, and the most memory that it held, in MiB."""

    seconds: float
    memory_mib: float


def least(
    work: Callable[[], object],
    rounds: int = 5,
    times: int = 1,
    clock: Callable[[], float] = time.perf_counter,
) -> float:
    """Seconds for one call, the least of several rounds."""
    best = float("inf")
    for _ in range(rounds):
        start = clock()
        for _ in range(times):
            work()
        best = min(best, (clock() - start) / times)
    return best


def by_turns(
    first: Callable[[], object],
    second: Callable[[], object],
    rounds: int = 5,
    times: int = 1,
    clock: Callable[[], float] = time.perf_counter,
) -> tuple[float, float]:
    """Both, taken by turns so that a disturbance meets both."""
    pair = [float("inf"), float("inf")]
    for _ in range(rounds):
        pair[0] = min(pair[0], least(first, 1, times, clock))
        pair[1] = min(pair[1], least(second, 1, times, clock))
    return pair[0], pair[1]


def shown(seconds: float) -> str:
    """Seconds in the unit that reads best."""
    if seconds >= 1:
        return f"{seconds:.2f} s"
    return f"{seconds * 1e3:.2f} ms" if seconds >= 1e-3 else f"{seconds * 1e6:.0f} us"


@cache
def workshop() -> Path:
    """A folder for one run, in memory where the system has such, gone when the program ends."""
    base = MEMORY_FILES if os.access(MEMORY_FILES, os.W_OK) else None
    folder = tempfile.TemporaryDirectory(prefix="spindlewise-bench-", dir=base)
    KEPT_OPEN.append(folder)
    return Path(folder.name)


KEPT_OPEN: list["tempfile.TemporaryDirectory[str]"] = []


@cache
def surroundings() -> dict[str, str]:
    """The environment of the processes: as a user has it, with compiled modules and kept catalogs."""
    found = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
    found["PYTHONPYCACHEPREFIX"] = str(workshop() / "compiled")
    found["XDG_CACHE_HOME"] = str(workshop() / "cache")
    found["COLUMNS"] = "100"
    return found


def spent(*arguments: str, expected: tuple[int, ...] = (0,), **more: str) -> Spent:
    """What one whole process takes; `more` adds to its environment. SystemExit where it fails."""
    with (workshop() / "said").open("wb") as said:
        child = subprocess.Popen(
            arguments, cwd=ROOT, env={**surroundings(), **more}, stdout=said, stderr=subprocess.STDOUT
        )
        _, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode not in expected:
        told = (workshop() / "said").read_text("utf-8", "replace")[-800:]
        raise SystemExit(f"{' '.join(arguments)} ended with {child.returncode}:\n{told}")
    return Spent(used.ru_utime + used.ru_stime, used.ru_maxrss / 1024)


def python(code: str, **more: str) -> Callable[[], Spent]:
    """A process that runs this Python code."""
    return lambda: spent(sys.executable, "-c", code, **more)


def command(*words: str, **more: str) -> Callable[[], Spent]:
    """A process that runs one of the program's commands."""
    return lambda: spent(PROGRAM, *words, **more)


def processes(
    first: Callable[[], Spent], second: Callable[[], Spent], rounds: int = 7
) -> tuple[float, float]:
    """Processor seconds of two processes, by turns, each started once before so that it is compiled."""
    first(), second()
    pairs = [(first().seconds, second().seconds) for _ in range(rounds)]
    return min(one for one, _ in pairs), min(other for _, other in pairs)


def ratio_line(what: str, ours: float, against: str, peer: float, target: str) -> Line:
    """A line whose ratio is ours over the peer's time."""
    return Line(what, shown(ours), f"{against} {shown(peer)}", f"{ours / peer:.2f}", target)
