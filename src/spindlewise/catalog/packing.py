"""Packing: records as bytes and back, for the shelf; only records and plain values ever come out.

Pickle would build and call whatever a file names. Here it may name the project's own records, days and
amounts, nothing else, so that even a file that somebody forged can do no more than hold wrong figures.
"""

import dataclasses
import io
import pickle
import sys
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from importlib import import_module
from typing import Any

from pydantic import BaseModel

PROTOCOL = 5
OWN = "spindlewise."
PLAIN: dict[tuple[str, str], Any] = {("datetime", "date"): date, ("decimal", "Decimal"): Decimal}


class NotOurs(ValueError):  # noqa: N818  # it says what the bytes are
    """The bytes are not what `packed` made."""


def packed(thing: object) -> bytes:
    """The thing as bytes. Raises NotOurs where it holds anything that `unpacked` would refuse."""
    data = pickle.dumps(thing, PROTOCOL)
    unpacked(data)
    return data


def unpacked(data: bytes) -> Any:
    """What was packed. Raises NotOurs for bytes that name anything but records and plain values."""
    reader = _Reader(io.BytesIO(data))
    try:
        return reader.load()
    except NotOurs:
        raise
    except Exception as error:  # pickle raises whatever the bytes make it stumble over
        raise NotOurs(f"cannot be unpacked: {error}") from error


class _Reader(pickle.Unpickler):
    def find_class(self, module: str, name: str) -> Any:
        found = PLAIN.get((module, name))
        if found is None:
            found = _record(module, name)
        if found is None:
            raise NotOurs(f"names {module}.{name}, which is no record")
        return found


def _record(module: str, name: str) -> Callable[..., object] | None:
    """A record class of the project's own, by name; None for anything else."""
    if not module.startswith(OWN):
        return None
    if module not in sys.modules:
        import_module(module)
    found = getattr(sys.modules[module], name, None)
    if not isinstance(found, type) or found.__module__ != module:
        return None
    return found if issubclass(found, BaseModel) or dataclasses.is_dataclass(found) else None
