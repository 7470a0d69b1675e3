"""The bytes of a recording: read once, never more than a recording can be, and their SHA-256."""

from __future__ import annotations

import hashlib
import stat
from pathlib import Path

from spindlewise.bench.recording import LARGEST_BYTES
from spindlewise.problems import Place, Problem


def read_bytes(path: Path, shown: str, largest: int = LARGEST_BYTES) -> tuple[bytes | None, list[Problem]]:
    """The file's bytes, or None and why it was not read: not there, no plain file, empty, or too large."""
    try:
        # Asked before opening: opening a pipe waits for whoever writes into it.
        if not stat.S_ISREG(path.stat().st_mode):
            return None, [_said(shown, "recording-unreadable", "is not a regular file")]
        with path.open("rb") as file:
            raw = file.read(largest + 1)
    except FileNotFoundError:
        return None, [_said(shown, "recording-missing", "is not there", "put it beside the ride's sheet")]
    except (OSError, ValueError) as error:
        why = (getattr(error, "strerror", None) or str(error)).lower()
        return None, [_said(shown, "recording-unreadable", f"cannot be read: {why}")]
    if len(raw) > largest:
        return None, [_said(shown, "recording-too-large", f"is larger than {largest} bytes", "split it")]
    if not raw:
        return None, [_said(shown, "recording-empty", "is empty", "copy the file again")]
    return raw, []


def sha256_of(raw: bytes) -> str:
    """The SHA-256 of a recording's bytes, in small hexadecimal letters.

    >>> sha256_of(b"")[:16]
    'e3b0c44298fc1c14'
    """
    return hashlib.sha256(raw).hexdigest()


def _said(shown: str, rule: str, message: str, tip: str = "") -> Problem:
    return Problem(Place(shown, 1, 1), "error", rule, message, tip)
