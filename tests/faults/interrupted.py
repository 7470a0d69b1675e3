"""System calls that are watched, and one of which fails or ends the program."""

import errno
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest

Act = Callable[[], None]


def no_space() -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def denied() -> None:
    raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))


def killed() -> None:
    os._exit(9)


CALLS = ["open", "write", "fsync", "ftruncate", "pread", "fstat", "fchmod", "replace", "link", "close"]


def _locking() -> bool:
    """Whether the lock's own library makes the call: it is trusted to clean up after itself."""
    frame = sys._getframe(1)
    while frame.f_back is not None:
        if frame.f_globals.get("__name__", "").startswith("filelock"):
            return True
        frame = frame.f_back
    return False


class Interrupted:
    """The n-th call, of the named ones and on files of the folder, ends in `act`; the others go through."""

    def __init__(
        self, patch: pytest.MonkeyPatch, folder: Path, nth: int, act: Act, calls: Sequence[str] = CALLS
    ) -> None:
        self.folder, self.nth, self.act = folder, nth, act
        self.seen: list[str] = []
        for name in calls:
            patch.setattr(os, name, self._wrapped(name, getattr(os, name)))

    def _wrapped(self, name: str, real: Callable[..., Any]) -> Callable[..., Any]:
        def call(*args: Any, **kwargs: Any) -> Any:
            about = args[0]
            if isinstance(about, int):
                try:
                    about = Path(f"/proc/self/fd/{about}").readlink()
                except OSError:
                    return real(*args, **kwargs)
            about = Path(os.fspath(about))
            if (about != self.folder and self.folder not in about.parents) or _locking():
                return real(*args, **kwargs)
            self.seen.append(name)
            if len(self.seen) - 1 == self.nth:
                if name == "close":  # a file is closed even where closing reports a failure
                    real(*args, **kwargs)
                self.act()
            return real(*args, **kwargs)

        return call
