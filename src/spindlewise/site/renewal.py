"""A folder renewed at one stroke: the new one is made beside it, whole, and then takes its name."""

import ctypes
import errno
import os
import shutil
from collections.abc import Collection, Iterator, Mapping
from contextlib import suppress
from pathlib import Path

from spindlewise.catalog.durable import CannotWrite, reason, replace_file, sync_folder

_AT_FDCWD, _RENAME_EXCHANGE = -100, 2
"""Of the system call renameat2 (Linux 3.15), by which two names change places in one step."""

_NOT_HERE = (errno.EBUSY, errno.EXDEV, errno.EINVAL, errno.ENOSYS, errno.EOPNOTSUPP)
"""Answers of a system that cannot rename this folder: a mount point, or a file system without exchange."""

_NO_ROOM_BESIDE = (errno.EACCES, errno.EPERM, errno.EROFS)
"""Answers where nothing may be made beside the folder, though perhaps in it."""


class NotAtOneStroke(Exception):  # noqa: N818  # the message reads: not at one stroke, and why
    """The folder cannot be renewed at one stroke where it stands; nothing was changed."""


def renew(out: Path, files: Mapping[str, bytes], gone: Collection[str], same: Collection[str] = ()) -> None:
    """Give the folder these files, by relative path, without those that are gone; all else in it stays.

    Whoever reads sees the old folder or the new one, never a mixture. A file whose bytes are the same stays
    the same file, and so does what somebody else put there: both stand in the new folder as hard links.
    `same` are files of ours that were found to stand there as they should, and are not read again.
    Raises CannotWrite, with the old folder as it was, and NotAtOneStroke.
    """
    out = out.resolve()
    if Path.cwd().resolve().is_relative_to(out):
        raise NotAtOneStroke(f"{out} is the folder in which this program runs")
    beside = out.with_name(f".{out.name}.{os.getpid()}.new")
    _begin(out, beside)
    try:
        _stand_in(out, beside, files, gone)
        _all_there(out, beside, same)
        _take_place(beside, out)
    except BaseException:
        shutil.rmtree(beside, ignore_errors=True)
        raise
    _clear(beside, out, {*files, *gone, *same})


def _begin(out: Path, beside: Path) -> None:
    try:
        if out.exists() and not out.is_dir():
            raise NotADirectoryError(errno.ENOTDIR, "")
        out.parent.mkdir(parents=True, exist_ok=True)
        if beside.exists():  # left by a program that had the number of this one
            shutil.rmtree(beside)
        beside.mkdir()
        if out.exists():
            beside.chmod(out.stat().st_mode & 0o7777)
    except OSError as error:
        with suppress(OSError):
            beside.rmdir()
        if error.errno in _NO_ROOM_BESIDE and out.is_dir():
            raise NotAtOneStroke(f"nothing can be made beside {out}") from error
        raise _cannot(out, error) from error


def _stand_in(out: Path, beside: Path, files: Mapping[str, bytes], gone: Collection[str]) -> None:
    """Fill the new folder: links to what stays, then whatever is new."""
    emptied = {parent.as_posix() for path in gone for parent in Path(path).parents if parent.parts}
    try:
        for old, is_folder in _entries(out):
            name = old.relative_to(out).as_posix()
            new = beside / name
            if is_folder:
                new.mkdir()
                new.chmod(old.stat().st_mode & 0o7777)
            elif name not in gone and (name not in files or _same(old, files[name])):
                os.link(old, new, follow_symlinks=False)
        for parent in sorted(emptied, reverse=True):
            folder = beside / parent
            if folder.is_dir() and not any(folder.iterdir()):
                folder.rmdir()
        for folder in sorted({(beside / path).parent for path in files}):
            folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        if error.errno in _NOT_HERE or error.errno in (errno.EPERM, errno.EMLINK):
            raise NotAtOneStroke("this file system gives a file one name only") from error
        raise _cannot(out, error) from error
    for path, data in files.items():
        new = beside / path
        if new.is_symlink() or not _same(new, data):
            _write(out / path, new, data)


def _all_there(out: Path, beside: Path, names: Collection[str]) -> None:
    for name in names:
        if not (beside / name).is_file():
            raise CannotWrite(f"{out / name}: it went away while the site was made; publish again")


def _entries(folder: Path) -> Iterator[tuple[Path, bool]]:
    """Everything below a folder, and whether it is a folder itself (a link is none); parents come first.

    Raises OSError where a part cannot be listed: what is not seen would be lost.
    """

    def refuse(error: OSError) -> None:
        raise error

    for place, folders, names in os.walk(folder, onerror=refuse) if folder.exists() else ():
        for name in sorted([*folders, *names]):
            found = Path(place) / name
            yield found, found.is_dir() and not found.is_symlink()


def _same(path: Path, data: bytes) -> bool:
    return not path.is_symlink() and path.is_file() and path.read_bytes() == data


def _write(old: Path, new: Path, data: bytes) -> None:
    """A file of the new folder; in messages it goes by the name that it will have."""
    try:
        if old.is_dir():
            raise IsADirectoryError(errno.EISDIR, "")
        replace_file(new, data)
        if old.is_file():
            new.chmod(old.stat().st_mode & 0o7777)
    except CannotWrite as error:
        raise CannotWrite(str(error).replace(str(new), str(old))) from error
    except OSError as error:
        raise _cannot(old, error) from error


def _take_place(beside: Path, out: Path) -> None:
    try:
        if out.exists():
            exchange(beside, out)
        else:
            beside.rename(out)
    except OSError as error:
        if error.errno in _NOT_HERE:
            raise NotAtOneStroke(f"{out} cannot be renamed: {reason(error)}") from error
        raise _cannot(out, error) from error


def exchange(one: Path, other: Path) -> None:
    """Let two folders change names, in one step where the system has such a call. Raises OSError.

    Elsewhere in three steps, between which `other` is missing for a moment.
    """
    call = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None) if os.name == "posix" else None
    if call is not None:
        names = os.fsencode(one), os.fsencode(other)
        if call(_AT_FDCWD, names[0], _AT_FDCWD, names[1], _RENAME_EXCHANGE) == 0:
            return
        number = ctypes.get_errno()
        raise OSError(number, os.strerror(number), str(other))
    aside = one.with_name(f"{one.name}.old")
    other.rename(aside)
    try:
        one.rename(other)
    except OSError:
        aside.rename(other)
        raise
    aside.rename(one)


def _clear(old: Path, out: Path, ours: Collection[str]) -> None:
    """Remove the old folder, once what came into it meanwhile has been taken over."""
    try:
        for path, is_folder in _entries(old):
            name = path.relative_to(old).as_posix()
            if not is_folder and name not in ours and not os.path.lexists(out / name):
                (out / name).parent.mkdir(parents=True, exist_ok=True)
                path.rename(out / name)
        if old.exists():
            shutil.rmtree(old)
        sync_folder(out.parent)
    except OSError as error:
        raise CannotWrite(
            f"{old}: the site is published, but the old one stays here: {reason(error)}"
        ) from error


def _cannot(path: Path, error: OSError) -> CannotWrite:
    return error if isinstance(error, CannotWrite) else CannotWrite(f"{path}: {reason(error)}")
