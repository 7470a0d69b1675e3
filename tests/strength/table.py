"""Prints how many of the changes that `make mutants` made to the mathematics were noticed by a test.

A change that no test can notice, because nothing that anybody could see comes out otherwise, stands with
its reason in `equivalent.md`. The first share counts those against the tests all the same; the second leaves
them out.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from pathlib import Path

HERE = Path(__file__).parent
RESULTS = HERE.parents[1] / "mutants" / "src" / "spindlewise"
NOTICED = {1, 3, 24, 36, 152, 255, -24}
"""pytest's exit codes for a failed test and for an error within it, and those of a run stopped for taking too
long, as mutmut notes them."""
ROW = re.compile(r"^\| `(?P<module>[a-z_/]+)` \|[^\n]*\| (?P<count>\d+) \|$", re.M)


def equivalents(text: str) -> Counter[str]:
    """How many changes of each module are listed as making no difference."""
    found: Counter[str] = Counter()
    for row in ROW.finditer(text):
        found[row["module"]] += int(row["count"])
    return found


def rows() -> list[tuple[str, int, int, int]]:
    """For each module: its name, changes made, changes noticed, changes that make no difference."""
    same = equivalents((HERE / "equivalent.md").read_text("utf-8"))
    found = []
    for path in sorted(RESULTS.rglob("*.py.meta")):
        codes = json.loads(path.read_text("utf-8"))["exit_code_by_key"].values()
        if codes:
            module = path.relative_to(RESULTS).as_posix().removesuffix(".py.meta")
            found.append((module, len(codes), sum(code in NOTICED for code in codes), same[module]))
    return found


def line(name: str, made: int, noticed: int, same: int) -> str:
    """One row of the table; both shares are cut, not rounded up."""
    of_all, of_rest = (int(1000 * noticed / max(1, n)) / 10 for n in (made, made - same))
    return f"| {name} | {made} | {noticed} | {of_all:.1f} % | {same} | {of_rest:.1f} % |"


def main() -> None:
    """Print the table in Markdown."""
    found = rows()
    print("| module | changes | noticed | share | no difference | share of the rest |")
    print("|---|---:|---:|---:|---:|---:|")
    for module, *figures in found:
        print(line(f"`{module}`", *figures))
    print(line("all", *(sum(row[k] for row in found) for k in (1, 2, 3))))


if __name__ == "__main__":
    main()
