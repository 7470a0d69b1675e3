"""Writing that survives a crash: appends and replacements that are whole or not there at all."""

import errno
import os
import re
from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path
from shutil import rmtree

LOCK_SECONDS = 10.0
"""So long one writer waits for another."""

_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk space allowed is used up",
    errno.EFBIG: "the file would be larger than the system allows",
    errno.EIO: "the disk reports an error",
    errno.EROFS: "the file system is read-only",
    errno.EACCES: "writing is not permitted",
    errno.EPERM: "writing is not permitted",
    errno.ENOENT: "the folder is not there",
    errno.ENOTDIR: "the folder is not a folder",
    errno.EISDIR: "a folder stands there",
    errno.ELOOP: "it is a link, and links are not followed when writing",
}
_NO_LINKS = (errno.EPERM, errno.ENOTSUP, errno.EMLINK)
"""What file systems without second names for a file answer; there the name is taken by renaming."""
_BESIDE = re.compile(r"\.(.+)\.([0-9]{1,9})\.new")
"""What a file is called until it takes its name: with the number of the process that writes it."""


class CannotWrite(OSError):  # noqa: N818  # the message reads: cannot write, and why
    """Nothing was changed, unless the message says so; it names the file and the reason."""


def append_line(
    path: Path, line: bytes, header: bytes = b"", mended_by: str = "spindlewise price repair"
) -> None:
    """Append one whole line, locked against other writers and synced; `header` begins a new file.

    The write is one call; where it comes back short, what was written is taken back. A file whose last line
    has no end is refused: it is torn from an earlier crash, and `mended_by` is the command that takes it out.
    Raises CannotWrite; ValueError where `line` is not one line with its end.
    """
    if not line.endswith(b"\n") or line.count(b"\n") != 1 or line == b"\n":
        raise ValueError("append_line takes one line that is not empty, with a line feed at its end only")
    with locked(path), _told(path):
        new = not path.exists()
        handle = os.open(path, os.O_RDWR | os.O_CREAT | os.O_APPEND | os.O_NOFOLLOW, 0o666)
        try:
            if new:
                sync_folder(path.parent)
            size = os.fstat(handle).st_size
            if size and os.pread(handle, 1, size - 1) != b"\n":
                raise CannotWrite(f"{path}: its last line is torn; run `{mended_by}` first")
            _write_or_take_back(path, handle, line if size else header + line, size)
        except OSError:
            if new:
                with suppress(OSError):
                    path.unlink()
            raise
        finally:
            with suppress(OSError):  # the line is synced, or taken back, already
                os.close(handle)


def replace_file(path: Path, data: bytes) -> None:
    """Put `data` in place of the file, or leave it as it was: a new file beside it, synced, then renamed.

    The file's permissions stay. Raises CannotWrite.
    """
    _refuse_link(path)
    with _told(path), _written_beside(path, data) as beside:
        beside.replace(path)
    _sync_name(path)


def create_file(path: Path, data: bytes) -> None:
    """Write a file that must not be there yet: an author's file is never overwritten. Raises CannotWrite.

    The name is taken by one call, so that of two writers at once only one succeeds.
    """
    create_files({path: data})


def create_files(files: Mapping[Path, bytes]) -> None:
    """Write several files, none of which may be there yet: all of them or, where one fails, none.

    All are written beside their names before the first name is taken; names already taken are given back.
    A program that dies in between leaves some of the files, each of them whole. Raises CannotWrite.
    """
    for path in files:
        if path.exists() or path.is_symlink():
            raise CannotWrite(_stands_there(path))
    with ExitStack() as unfinished:
        beside: dict[Path, Path] = {}
        for path, data in files.items():
            with _told(path):
                beside[path] = unfinished.enter_context(_written_beside(path, data))
        taken: list[Path] = []
        try:
            for path, source in beside.items():
                with _told(path):
                    _take_name(source, path)
                taken.append(path)
        except OSError:
            for path in taken:
                with suppress(OSError):
                    path.unlink()
            raise
    for path in {each.parent: each for each in files}.values():
        _sync_name(path)


def _take_name(beside: Path, path: Path) -> None:
    try:
        os.link(beside, path, follow_symlinks=False)
    except FileExistsError:
        raise CannotWrite(_stands_there(path)) from None
    except OSError as error:
        if error.errno not in _NO_LINKS:
            raise
        beside.replace(path)


def _stands_there(path: Path) -> str:
    return f"{path}: stands there already and is not overwritten"


def remove_leftovers(folder: Path, name: str | None = None) -> None:
    """Remove what killed programs left unfinished in the folder, or of it what was to be called `name`.

    That of a running program stays. Raises CannotWrite.
    """
    with _told(folder):
        left = sorted(folder.glob(".*.new"))
    for path in left:
        found = _BESIDE.fullmatch(path.name)
        if found is None or name not in (None, found[1]) or _is_running(int(found[2])):
            continue
        with _told(path):
            if path.is_dir() and not path.is_symlink():
                rmtree(path)
            else:
                path.unlink(missing_ok=True)


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


@contextmanager
def locked(path: Path) -> Iterator[None]:
    """Hold a file against other writers, of this program or another; raises CannotWrite where it is held."""
    from filelock import FileLock, Timeout

    _refuse_link(path)
    if not path.parent.is_dir():  # the lock would make the folder
        raise CannotWrite(f"{path}: {_REASONS[errno.ENOENT]}")
    lock = FileLock(path.with_name(f".{path.name}.lock"))
    try:
        lock.acquire(timeout=LOCK_SECONDS)
    except Timeout:
        raise CannotWrite(f"{path}: another program has held it for {LOCK_SECONDS:g} s") from None
    except OSError as error:
        raise CannotWrite(f"{path}: {reason(error)}") from error
    try:
        yield
    finally:
        lock.release()


@contextmanager
def _told(path: Path) -> Iterator[None]:
    try:
        yield
    except CannotWrite:
        raise
    except OSError as error:
        raise CannotWrite(f"{path}: {reason(error)}") from error


@contextmanager
def _written_beside(path: Path, data: bytes) -> Iterator[Path]:
    """The data in a synced file beside `path`, with its permissions; gone afterwards unless renamed."""
    beside = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | os.O_NOFOLLOW, 0o666)
        try:
            if path.exists():
                os.fchmod(handle, path.stat().st_mode & 0o7777)
            view = memoryview(data)
            while view:
                view = view[os.write(handle, view) :]
            os.fsync(handle)
        finally:
            os.close(handle)
        yield beside
    finally:
        with suppress(OSError):
            beside.unlink(missing_ok=True)


def _sync_name(path: Path) -> None:
    try:
        sync_folder(path.parent)
    except OSError as error:
        raise CannotWrite(f"{path}: was written, but may not outlast a crash: {reason(error)}") from error


def _write_or_take_back(path: Path, handle: int, data: bytes, size: int) -> None:
    try:
        if os.write(handle, data) != len(data):
            raise OSError(errno.ENOSPC, "short write")
        os.fsync(handle)
    except OSError as error:
        try:
            os.ftruncate(handle, size)
        except OSError:
            told = f"{reason(error)}; part of the line may stand there, run `spindlewise check`"
            raise CannotWrite(f"{path}: {told}") from error
        raise


def _is_running(process: int) -> bool:
    try:
        os.kill(process, 0)
    except (ProcessLookupError, OverflowError):
        return False
    except OSError:  # it runs, and is somebody else's
        return True
    return True


def _refuse_link(path: Path) -> None:
    if path.is_symlink():
        raise CannotWrite(f"{path}: {_REASONS[errno.ELOOP]}")
