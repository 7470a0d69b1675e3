"""The demo, whole site and all, under hash seeds 0 to 20 and all that differs with them: the same bytes.

python tests/soak/same_bytes.py [SEEDS]
"""

import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from laws.elsewhere import SEEDS, SIGNS, compiled_locales, told_elsewhere, usual_circumstances

DEMO = Path(__file__).parents[2] / "catalog"


def main(seeds: int = len(SEEDS)) -> None:
    with tempfile.TemporaryDirectory() as scratch:
        locales = Path(scratch) if compiled_locales(Path(scratch)) else None
        usual: dict[str, str] = {}
        for seed in range(seeds):
            found = told_elsewhere(DEMO, usual_circumstances(seed), locales)
            del found[SIGNS]
            usual = usual or found
            other = [name for name, digest in found.items() if usual.get(name) != digest]
            assert other == [], f"{usual_circumstances(seed)}: {other}"
    print(f"demo: {len(usual)} answers and files the same under {seeds} hash seeds, three locales and zones")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:2]))
