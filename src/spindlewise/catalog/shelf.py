"""The shelf: a private folder where worked-out things are kept between two runs; nothing rests on it.

What lies there may be deleted at any time. A file that is torn, changed, somebody else's or open to others
to write is as good as none, and a shelf that cannot be written keeps nothing: neither is worth a word.
"""

import hashlib
import os
import stat
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from secrets import token_hex

MOST_FILES = 8
"""So many files are kept, those last used: a catalog that changes leaves none behind for long."""
LARGEST_BYTES = 512 * 1024 * 1024
MAGIC = b"spindlewise shelf 1\n"
_LENGTH_BYTES = 8
_DIGEST_BYTES = hashlib.sha256().digest_size
_OTHERS_WRITE = stat.S_IWGRP | stat.S_IWOTH


@dataclass(frozen=True, slots=True)
class Shelf:
    """A folder of files by name; each file holds a few parts, and each part's length and SHA-256."""

    folder: Path

    def take(self, name: str) -> list[bytes] | None:
        """The parts of the file of this name, or None where there is none that can be trusted."""
        try:
            if not _ours(os.lstat(self.folder), stat.S_ISDIR):
                return None
            handle = os.open(self.folder / name, os.O_RDWR | os.O_NOFOLLOW | os.O_NONBLOCK)
            with open(handle, "rb") as file:  # noqa: PTH123  # it is open already
                if not _ours(os.fstat(handle), stat.S_ISREG):
                    return None
                os.utime(handle)  # used last
                return _parts(name, file.read(LARGEST_BYTES + 1))
        except (OSError, ValueError):
            return None

    def put(self, name: str, parts: Sequence[bytes]) -> bool:
        """Keep these parts under this name, whole or not at all; whether it was done."""
        framed = [MAGIC]
        for part in parts:
            framed += [len(part).to_bytes(_LENGTH_BYTES, "big"), _digest(name, part), part]
        if sum(map(len, framed)) > LARGEST_BYTES:
            return False
        beside = self.folder / f".{name}.{os.getpid()}-{token_hex(4)}.new"
        try:
            self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            if not _ours(os.lstat(self.folder), stat.S_ISDIR):
                return False
            try:
                # not synced: after a crash its digest tells whether it is whole
                with open(os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:  # noqa: PTH123
                    file.writelines(framed)
                beside.replace(self.folder / name)
            finally:
                beside.unlink(missing_ok=True)
            self._clear()
        except (OSError, ValueError):
            return False
        return True

    def _clear(self) -> None:
        """Let go of what was not used for longest, and of what a killed program left unfinished long ago."""
        found = []
        with os.scandir(self.folder) as entries:
            for entry in entries:
                with suppress(OSError):  # another program clears as well
                    found.append((entry.stat(follow_symlinks=False).st_mtime_ns, entry.name))
        for _, name in sorted(found, reverse=True)[MOST_FILES:]:
            with suppress(OSError):
                (self.folder / name).unlink()


def _ours(found: os.stat_result, of_kind: Callable[[int], bool]) -> bool:
    """Whether it is of this kind, belongs to whoever runs the program, and nobody else may write it."""
    return of_kind(found.st_mode) and found.st_uid == os.geteuid() and not found.st_mode & _OTHERS_WRITE


def _parts(name: str, data: bytes) -> list[bytes] | None:
    """The parts, if the file is whole and every part is as it was written under this name."""
    if not data.startswith(MAGIC) or len(data) > LARGEST_BYTES:
        return None
    parts, view, at = [], memoryview(data), len(MAGIC)
    while at < len(data):
        length = int.from_bytes(view[at : at + _LENGTH_BYTES], "big")
        digest = view[at + _LENGTH_BYTES : at + _LENGTH_BYTES + _DIGEST_BYTES]
        at += _LENGTH_BYTES + _DIGEST_BYTES
        part = view[at : at + length]
        if len(part) != length or _digest(name, part) != digest:
            return None
        parts.append(bytes(part))
        at += length
    return parts


def _digest(name: str, part: bytes | memoryview) -> bytes:
    found = hashlib.sha256(name.encode())
    found.update(part)
    return found.digest()
