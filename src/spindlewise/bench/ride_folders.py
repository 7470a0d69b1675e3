"""Where rides lie: each in a folder of its own, with its sheet and its recordings."""

from __future__ import annotations

from pathlib import Path

SHEET = "ride.yaml"


def ride_folders(folder: Path) -> tuple[Path, ...]:
    """Give every folder at or below this one that holds a sheet, sorted; none where it is not there."""
    return tuple(sorted(path.parent for path in folder.rglob(SHEET)))
