"""200,000 broken files to all readers: none ends in a traceback, takes 2 s of the processor, or 300 MiB more.

python tests/soak/any_bytes.py [FILES [SEED]]
"""

import resource
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from hypothesis import HealthCheck, Phase, given, seed, settings

from hostile.any_bytes import MEBIBYTES, answered, broken_files
from hostile.readers import READERS, reader


def main(files: int = 200_000, chance: int = 1) -> None:
    before, answers = most_mebibytes(), 0
    for name in READERS:
        begun = time.process_time()
        times, read = ask(name, -(-files // len(READERS)), chance)
        answers += len(times)
        grown = most_mebibytes() - before
        assert grown < MEBIBYTES, f"{name}: {grown:.0f} MiB more"
        print(
            f"{name}: {len(times)} files, {read} read, {time.process_time() - begun:.0f} s, "
            f"slowest {1000 * max(times):.0f} ms, {grown:.0f} MiB more than before",
            flush=True,
        )
    print(f"{answers} broken files answered")


def ask(name: str, files: int, chance: int) -> tuple[list[float], int]:
    """Seconds for each file, and how many of them were read in spite of all."""
    times: list[float] = []
    read = 0

    @seed(chance)
    @settings(
        max_examples=files,
        deadline=None,
        database=None,
        phases=(Phase.generate,),
        suppress_health_check=list(HealthCheck),
    )
    @given(broken_files(reader(name).samples))
    def holds(raw: bytes) -> None:
        nonlocal read
        begun = time.process_time()
        read += answered(reader(name), raw)
        times.append(time.process_time() - begun)

    holds()
    return times, read


def most_mebibytes() -> float:
    """The most that this process ever held."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


if __name__ == "__main__":
    main(*map(int, sys.argv[1:3]))
