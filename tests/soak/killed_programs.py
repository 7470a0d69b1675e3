"""200 programs each are killed while they append prices, log answers and publish; none may lose a thing.

python tests/soak/killed_programs.py [RUNS]
"""

import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from faults.killing import CASES, killed
from spindlewise.site import build

REAL = build.gather_whole


def main(runs: int = 200) -> None:
    for case in CASES:
        with tempfile.TemporaryDirectory() as parent:
            acknowledged = killed(case, runs, Path(parent))
        build.gather_whole = REAL
        print(
            f"{case}: {runs} programs killed, {acknowledged} writes acknowledged, none lost, none torn",
            flush=True,
        )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:2]))
