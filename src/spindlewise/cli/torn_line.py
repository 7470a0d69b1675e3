"""A torn last line of a log: what a crash left half written, taken out on request, with a copy kept."""

from dataclasses import dataclass
from pathlib import Path

from spindlewise.catalog.durable import CannotWrite, create_file, locked, reason, replace_file


@dataclass(frozen=True, slots=True)
class Repaired:
    """What was taken out, and where the file as it was is kept."""

    removed: str
    copy: Path


def repair_torn_line(path: Path) -> Repaired | None:
    """Take out a last line that has no end, keeping the whole file as it was beside it; None if none is torn.

    Locked like an append. Nothing but the torn line is changed. Raises CannotWrite.
    """
    if not path.exists():
        raise CannotWrite(f"{path}: is not there")
    with locked(path):
        try:
            data = path.read_bytes()
        except OSError as error:
            raise CannotWrite(f"{path}: {reason(error)}") from error
        whole = data[: data.rfind(b"\n") + 1]
        if whole == data:
            return None
        copy = _free_name(path)
        create_file(copy, data)
        replace_file(path, whole)
    return Repaired(data[len(whole) :].decode("utf-8", "replace"), copy)


def _free_name(path: Path) -> Path:
    number = 1
    while (copy := path.with_name(f"{path.name}.torn-{number}")).exists():
        number += 1
    return copy
