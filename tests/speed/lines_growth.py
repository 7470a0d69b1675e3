"""Lines of the bench about growth: time and memory of whole commands at 10 to 10,000 products, as n^k."""

import shutil
from pathlib import Path

import numpy as np

from speed.large_catalog import write_catalog
from speed.timing import Line, Spent, command, shown, workshop

SIZES = (10, 100, 1_000, 10_000)
FEWER = (10, 100, 1_000)
"""Of sizes to publish: a site of ten thousand products takes minutes on a small machine."""


def exponent(sizes: tuple[int, ...], found: list[float]) -> float:
    """The k of `base + a * n^k` between the two largest sizes, the smallest size taken as the base.

    What a command takes before it sees a product says nothing about growth, so it is taken off first. Where
    the smallest size takes no less than the next, nothing can be taken off: then k is that of `a * n^k`.
    """
    base, apart = found[0], sizes[0]
    if base >= found[-2]:
        base, apart = 0.0, 0
    rise = (found[-1] - base) / (found[-2] - base)
    return float(np.log(rise) / np.log((sizes[-1] - apart) / (sizes[-2] - apart)))


def grown(what: str, sizes: tuple[int, ...], *words: str, made: Path | None = None) -> Line:
    """One command at each size, nothing kept; the exponent of time and of memory.

    `made` is a folder that the command fills, from which it would take over what it made before.
    """
    spent: list[Spent] = []
    for size in sizes:
        folder = write_catalog(workshop() / f"grown-{size}", size)
        ask = command("--catalog", str(folder), *words, SPINDLEWISE_KEEP="no")
        rounds = 3 if size < sizes[-1] else 1
        tries = []
        for _ in range(rounds):
            if made is not None:
                shutil.rmtree(made, ignore_errors=True)
            tries.append(ask())
        spent.append(min(tries, key=lambda each: each.seconds))
    time_k = exponent(sizes, [each.seconds for each in spent])
    memory_k = exponent(sizes, [each.memory_mib for each in spent])
    return Line(
        f"`{what}` of {', '.join(f'{size:,}' for size in sizes)} products",
        ", ".join(shown(each.seconds) for each in spent),
        "memory " + ", ".join(f"{each.memory_mib:.0f}" for each in spent) + " MiB",
        f"n^{time_k:.2f}, memory n^{memory_k:.2f}",
        "n^1.1",
    )


def growth() -> list[Line]:
    """Check and rank at four sizes."""
    return [
        grown("check", SIZES, "check"),
        grown("rank", SIZES, "rank", "--buyer", "club-racer"),
    ]


def growth_of_sites() -> list[Line]:
    """Publish at three sizes."""
    made = workshop() / "grown-site"
    return [grown("publish", FEWER, "publish", "--out", str(made), made=made)]
