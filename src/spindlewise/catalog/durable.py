"""Writing that survives a crash: appends and replacements that are whole or not there at all."""

import errno
import os
from pathlib import Path

LOCK_SECONDS = 10.0
"""So long one writer waits for another."""

_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EROFS: "the file system is read-only",
    errno.EACCES: "writing is not permitted",
    errno.EPERM: "writing is not permitted",
    errno.ENOENT: "the folder is not there",
    errno.ENOTDIR: "the folder is not a folder",
    errno.EISDIR: "a folder stands there",
    errno.ELOOP: "it is a link, and links are not followed when writing",
}


class CannotWrite(OSError):  # noqa: N818  # the message reads: cannot write, and why
    """Nothing was changed; the message names the file and says why."""


def append_line(path: Path, line: bytes, header: bytes = b"") -> None:
    """Append one whole line, locked against other writers and synced; `header` begins a new file.

    The write is one call; where it comes back short, what was written is taken back. A file whose last line
    has no end is refused: it is torn from an earlier crash and must be looked at first.
    Raises CannotWrite.
    """
    from filelock import FileLock, Timeout

    if not line.endswith(b"\n") or line.count(b"\n") != 1:
        raise ValueError("one line with its end is appended at a time")
    _refuse_link(path)
    try:
        with FileLock(path.with_name(path.name + ".lock"), timeout=LOCK_SECONDS):
            _append_locked(path, line, header)
    except Timeout:
        raise CannotWrite(f"{path}: another program has held it for {LOCK_SECONDS:g} s") from None
    except CannotWrite:
        raise
    except OSError as error:
        raise CannotWrite(f"{path}: {reason(error)}") from error


def _append_locked(path: Path, line: bytes, header: bytes) -> None:
    new = not path.exists()
    handle = os.open(path, os.O_RDWR | os.O_CREAT | os.O_APPEND | os.O_NOFOLLOW, 0o644)
    try:
        size = os.fstat(handle).st_size
        if size and os.pread(handle, 1, size - 1) != b"\n":
            raise CannotWrite(f"{path}: its last line is torn; run `spindlewise price repair` first")
        data = line if size else header + line
        try:
            if os.write(handle, data) != len(data):
                raise OSError(errno.ENOSPC, "short write")
            os.fsync(handle)
        except OSError:
            os.ftruncate(handle, size)
            raise
    finally:
        os.close(handle)
    if new:
        sync_folder(path.parent)


def replace_file(path: Path, data: bytes) -> None:
    """Put `data` in place of the file, or leave it as it was: a new file beside it, synced, then renamed.

    Raises CannotWrite.
    """
    _refuse_link(path)
    beside = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | os.O_NOFOLLOW, 0o644)
        try:
            view = memoryview(data)
            while view:
                view = view[os.write(handle, view) :]
            os.fsync(handle)
        finally:
            os.close(handle)
        beside.replace(path)
        sync_folder(path.parent)
    except OSError as error:
        beside.unlink(missing_ok=True)
        raise CannotWrite(f"{path}: {reason(error)}") from error


def create_file(path: Path, data: bytes) -> None:
    """Write a file that must not be there yet: an author's file is never overwritten. Raises CannotWrite."""
    if path.exists() or path.is_symlink():
        raise CannotWrite(f"{path}: stands there already and is not overwritten")
    replace_file(path, data)


def sync_folder(folder: Path) -> None:
    """Make a new or renamed entry of the folder survive a crash."""
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def reason(error: OSError) -> str:
    """Why the system refused, in plain words."""
    return _REASONS.get(error.errno or 0, error.strerror or str(error))


def _refuse_link(path: Path) -> None:
    if path.is_symlink():
        raise CannotWrite(f"{path}: {_REASONS[errno.ELOOP]}")
