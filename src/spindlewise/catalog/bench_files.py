"""The files of a catalog's bench, as measured observations name them."""

from pathlib import Path

FOLDER = "bench/observations"
"""Where the bench's observations stand in files of their own."""


def bench_files(folder: Path) -> frozenset[str]:
    """Their paths in the catalog, such as 'bench/weighings.csv'. Raises OSError."""
    return frozenset(
        path.relative_to(folder).as_posix() for path in (folder / "bench").rglob("*") if path.is_file()
    )
