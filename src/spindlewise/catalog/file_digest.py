"""The files of a catalog by size and SHA-256, so that a bit that has changed since is found."""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

GROWING = (
    "prices.csv",
    "rates.csv",
    "taxes.csv",
    "bench/weighings.csv",
    "bench/sessions.csv",
    "bench/hours.csv",
)
"""Logs and dated tables: lines are added below, and those that stand there stay as they are."""

SINGLE = ("catalog.yaml", "criteria.yaml", "forgiven.yaml", *GROWING[:3])
_CHUNK = 1 << 20


@dataclass(frozen=True, slots=True)
class FileDigest:
    """How long a file is, and the SHA-256 of its bytes in hexadecimal."""

    size_bytes: int
    sha256: str


def digest_of(path: Path, first_bytes: int | None = None) -> FileDigest | None:
    """The digest of a plain file, or of its first bytes; None where none stands there. Raises OSError."""
    if not path.is_file():
        return None
    found, size = hashlib.sha256(), 0
    with path.open("rb") as file:
        while chunk := file.read(_CHUNK if first_bytes is None else min(_CHUNK, first_bytes - size)):
            found.update(chunk)
            size += len(chunk)
    return FileDigest(size, found.hexdigest())


def digests(folder: Path) -> dict[str, FileDigest]:
    """Every file of a catalog by its path in it, sorted: settings, criteria, logs, products, bench.

    Buyers are left out: a manifest is public, and a digest of a file that holds a body's measures would let
    anybody try which measures give it. Raises OSError.
    """
    found = {name: digest_of(folder / name) for name in sorted(_names(folder))}
    return {name: digest for name, digest in found.items() if digest is not None}


def _names(folder: Path) -> Iterator[str]:
    yield from SINGLE
    yield from (path.relative_to(folder).as_posix() for path in (folder / "products").glob("*.yaml"))
    for path in (folder / "bench").rglob("*"):
        inside = path.relative_to(folder)
        if not any(part.startswith(".") for part in inside.parts):
            yield inside.as_posix()
