"""`make bench`: one table of ratios, ours against a bound or a peer, taken in one run. Nothing is asserted.

Run as a program: `python tests/speed/bench.py [--write] [GROUP ...]`. With --write the table goes into
DEVELOPERS.md; where only some groups are named, their lines take the place of what stood there of them.
"""

import os
import platform
import sys
from pathlib import Path

# one core for both sides: numpy's own threads wait for each other in loops, which counts as work
os.environ["OPENBLAS_NUM_THREADS"] = "1"

import numpy as np

# the tests' folder in place of this one, in which a module is called as the tests' room `bench` is
sys.path.pop(0)
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from speed import (
    lines_batch,
    lines_browser,
    lines_commands,
    lines_decide,
    lines_growth,
    lines_log,
    lines_rides,
    lines_site,
)
from speed.timing import ROOT, Line

GROUPS = (
    lines_commands.help_and_completion,
    lines_commands.demo,
    lines_commands.checking,
    lines_commands.second_rank,
    lines_decide.ranking,
    lines_decide.ranking_many,
    lines_decide.simulation,
    lines_decide.skyline,
    lines_batch.batch,
    lines_batch.large_batch,
    lines_batch.scoring,
    lines_log.million_prices,
    lines_site.publishing,
    lines_browser.weighing,
    lines_rides.ride_report,
    lines_rides.fit_reading,
    lines_rides.archive,
    lines_growth.growth,
    lines_growth.growth_of_sites,
)
BEGIN, END = "<!-- bench -->", "<!-- /bench -->"
HEAD = ("| what | ours | against | ratio | target |", "|---|---|---|---|---|")


def row_of(line: Line) -> str:
    """A line as a row of the table."""
    return f"| {line.what} | {line.ours} | {line.against} | {line.ratio} | {line.target} |"


def rows_in(page: str) -> list[str]:
    """The rows that stand in the page from an earlier run."""
    block = page[page.index(BEGIN) : page.index(END)]
    return [row for row in block.split("\n") if row.startswith("| ")][1:]


def merged(before: list[str], rows: list[str]) -> list[str]:
    """Earlier rows with the new ones in place of those about the same thing; what is new comes last."""
    new = {_about(row): row for row in rows}
    kept = [new.pop(_about(row), row) for row in before]
    return kept + list(new.values())


def _about(row: str) -> tuple[str, str]:
    what, _, against, _, target = row.strip("| ").split(" | ")
    return what, against.rstrip("0123456789., musx").split(" ")[0] + target


def main(words: list[str]) -> None:
    """Print the table; with --write put it into DEVELOPERS.md too."""
    wanted = [word for word in words if not word.startswith("-")]
    rows: list[str] = []
    print("\n".join(HEAD))
    for group in GROUPS:
        if not wanted or group.__name__ in wanted:
            for line in group():
                rows.append(row_of(line))
                print(rows[-1], flush=True)
    if "--write" not in words:
        return
    path = ROOT / "DEVELOPERS.md"
    page = path.read_text("utf-8")
    if wanted:
        rows = merged(rows_in(page), rows)
    said = f"Python {platform.python_version()}, numpy {np.__version__}, {platform.machine()}."
    table = "\n".join([BEGIN, "", said, "", *HEAD, *rows, "", END])
    path.write_text(page[: page.index(BEGIN)] + table + page[page.index(END) + len(END) :], "utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
