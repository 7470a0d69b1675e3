"""Packing: records as bytes and back, for the shelf; only records and plain values ever come out.

Pickle would build and call whatever a file names. Here it may name the project's own records, days and
amounts, nothing else, so that even a file that somebody forged can do no more than hold wrong figures.
Records are written empty, and what they hold beside them, class by class: so many are filled at once.
"""

import copyreg
import dataclasses
import io
import pickle
import sys
from collections import deque
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from importlib import import_module
from typing import Any

from pydantic import BaseModel

PROTOCOL = 5
OWN = "spindlewise."
MODEL_SLOTS = ("__dict__", "__pydantic_fields_set__", "__pydantic_extra__", "__pydantic_private__")
"""All that a model holds, as pydantic's own pickling has it."""
PLAIN: dict[tuple[str, str], Any] = {("datetime", "date"): date, ("decimal", "Decimal"): Decimal}


class NotOurs(ValueError):  # noqa: N818  # it says what the bytes are
    """The bytes are not what `packed` made."""


def packed(thing: object) -> bytes:
    """The thing as bytes. Raises NotOurs where it holds anything that `unpacked` would refuse."""
    records = _records(thing)
    stream = io.BytesIO()
    writer = _Writer(stream, PROTOCOL)
    writer.known = {id(record) for alike in records.values() for record in alike}
    try:
        shared: dict[Any, Any] = {}
        groups = [(kind, alike, _columns(kind, alike, shared)) for kind, alike in records.items()]
        writer.dump((thing, groups))
    except (pickle.PicklingError, TypeError, AttributeError) as error:
        raise NotOurs(f"cannot be packed: {error}") from error
    unpacked(stream.getvalue())
    return stream.getvalue()


def unpacked(data: bytes) -> Any:
    """What was packed. Raises NotOurs for bytes that name anything but records and plain values."""
    reader = _Reader(io.BytesIO(data))
    try:
        thing, groups = reader.load()
        for kind, alike, columns in groups:
            _fill(kind, alike, columns)
    except NotOurs:
        raise
    except Exception as error:  # pickle raises whatever the bytes make it stumble over
        raise NotOurs(f"cannot be unpacked: {error}") from error
    return thing


def _records(thing: object) -> dict[type, list[Any]]:
    """All records in it, by class; each once, however often it is met."""
    found: dict[type, list[Any]] = {}
    met: set[int] = set()
    left = [thing]
    while left:
        one = left.pop()
        if isinstance(one, (tuple, list, set, frozenset)):
            left.extend(one)
        elif type(one) is dict:
            left.extend(one.values())
        elif _is_filled(type(one)) and id(one) not in met:
            met.add(id(one))
            found.setdefault(type(one), []).append(one)
            left.extend(
                vars(one).values()
                if isinstance(one, BaseModel)
                else [getattr(one, n) for n in _names(type(one))]
            )
    return found


def _is_filled(kind: type) -> bool:
    """Whether objects of this class are made empty and filled afterwards: models, data classes with slots."""
    return issubclass(kind, BaseModel) or (dataclasses.is_dataclass(kind) and "__slots__" in vars(kind))


def _names(kind: type) -> list[str]:
    return [field.name for field in dataclasses.fields(kind)]


def _columns(kind: type, alike: list[Any], shared: dict[Any, Any]) -> list[list[Any]]:
    """What all records of a class hold, part by part; equal days and sets of names are written once."""
    if not issubclass(kind, BaseModel):
        return [[_shared(getattr(one, name), shared) for one in alike] for name in _names(kind)]
    if any(one.__pydantic_extra__ or one.__pydantic_private__ for one in alike):
        raise NotOurs(f"a {kind.__name__} holds more than its fields")
    values = [{name: _shared(value, shared) for name, value in vars(one).items()} for one in alike]
    stated = [shared.setdefault(frozenset(one.model_fields_set), one.model_fields_set) for one in alike]
    nothing = [None] * len(alike)
    return [values, stated, nothing, nothing]


def _shared(value: Any, shared: dict[Any, Any]) -> Any:
    """The first value of this class that is equal, for plain ones."""
    return shared.setdefault((type(value), value), value) if type(value) in (date, str) else value


def _fill(kind: type, alike: list[Any], columns: list[list[Any]]) -> None:
    """Put into each record what it holds, slot by slot, as fast as a loop in C goes."""
    if set(map(type, alike)) - {kind} or not _is_filled(kind):
        raise NotOurs(f"not all of these are {kind}")
    if issubclass(kind, BaseModel):
        if set(map(type, columns[0])) - {dict} or set(map(type, columns[1])) - {set}:
            raise NotOurs(f"what a {kind.__name__} holds is no fields")
        slots = [vars(BaseModel)[name] for name in MODEL_SLOTS]
    else:
        slots = [vars(kind)[name] for name in _names(kind)]
    for slot, column in zip(slots, columns, strict=True):
        if len(column) != len(alike):
            raise NotOurs(f"{len(column)} values for {len(alike)} of {kind.__name__}")
        deque(map(slot.__set__, alike, column), maxlen=0)


class _Writer(pickle.Pickler):
    known: set[int]

    def reducer_override(self, obj: Any) -> Any:
        """A record as an empty one of its class; what it holds is written beside it."""
        if not _is_filled(type(obj)):
            return NotImplemented
        if id(obj) not in self.known:
            raise NotOurs(f"a {type(obj).__name__} stands where no record is looked for")
        return copyreg.__newobj__, (type(obj),)  # type: ignore[attr-defined]  # pickle knows it by its name


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
