"""Records as bytes and back; bytes that name anything else are refused."""

import os
import pickle
from datetime import date
from decimal import Decimal

import pytest

import worlds
from spindlewise.catalog.packing import NotOurs, packed, unpacked


class Calls:
    """Unpickled plainly, it would run a command."""

    def __reduce__(self):
        return os.system, ("true",)


def test_records_and_plain_values_come_back_equal() -> None:
    pedals = {name: worlds.product(name) for name in ("heron", "siskin")}
    prices = (worlds.price("heron", 400), worlds.price("siskin", "399.95"))
    thing = (pedals, prices, date(2026, 11, 18), Decimal("1.50"), frozenset({"a"}), None, 1.5, "unknown")
    back = unpacked(packed(thing))
    assert back == thing
    assert str(back[3]) == "1.50"
    assert hash(back[0]["heron"]) == hash(pedals["heron"])


@pytest.mark.parametrize(
    ("thing", "named"),
    [
        (Calls(), "posix.system"),
        (os.path.join, "posixpath.join"),
        (eval, "builtins.eval"),
        (packed, "spindlewise.catalog.packing.packed"),
        (NotOurs, "spindlewise.catalog.packing.NotOurs"),
    ],
)
def test_what_could_be_called_is_refused(thing: object, named: str) -> None:
    with pytest.raises(NotOurs, match=f"names {named}, which is no record"):
        unpacked(pickle.dumps(thing))
    with pytest.raises(NotOurs):
        packed(thing)


@pytest.mark.parametrize(
    "data",
    [b"", b"no pickle", b"\x80\x05cspindlewise.catalog.nowhere\nThing\n.", pickle.dumps((1, 2))[:-3]],
    ids=["nothing", "text", "no such module", "torn"],
)
def test_bytes_that_are_none_of_ours_are_refused(data: bytes) -> None:
    with pytest.raises(NotOurs):
        unpacked(data)


def test_a_name_that_a_module_only_borrows_is_no_record_of_its_own() -> None:
    with pytest.raises(NotOurs, match="no record"):
        unpacked(b"\x80\x05cspindlewise.catalog.file_digest\nPath\n.")
