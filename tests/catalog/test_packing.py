"""Records as bytes and back; bytes that name anything else are refused."""

import os
import pickle
from dataclasses import FrozenInstanceError
from datetime import date
from decimal import Decimal

import pytest
from pydantic import BaseModel, ConfigDict, ValidationError

import worlds
from spindlewise.catalog.packing import NotOurs, packed, unpacked
from spindlewise.catalog.price_row import PriceRow


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


def test_records_come_back_as_they_were_made_and_not_only_equal() -> None:
    pedal = worlds.product("heron")
    back = unpacked(packed((pedal, pedal)))
    assert back[0] is back[1]
    assert back[0].model_fields_set == pedal.model_fields_set
    assert back[0].observations.model_fields_set == pedal.observations.model_fields_set
    assert back[0].model_dump() == pedal.model_dump()
    with pytest.raises(ValidationError):
        back[0].name = "Another"
    row = unpacked(packed(worlds.price("heron", 400)))
    with pytest.raises(FrozenInstanceError):
        row.amount = Decimal(1)


def test_a_record_where_none_is_looked_for_is_refused_and_not_lost() -> None:
    with pytest.raises(NotOurs, match="where no record is looked for"):
        packed({worlds.price("heron", 400): "a key"})


def test_what_pickle_itself_cannot_write_is_refused_in_our_words() -> None:
    with pytest.raises(NotOurs, match="cannot be packed"):
        packed((1, lambda: None))


class Open(BaseModel):
    model_config = ConfigDict(extra="allow")


def test_a_model_that_holds_more_than_its_fields_is_refused() -> None:
    with pytest.raises(NotOurs, match="holds more than its fields"):
        packed(Open(more=1))


HERON = worlds.price("heron", 400)


@pytest.mark.parametrize(
    "groups",
    [
        1,
        [(PriceRow, [HERON], [[1]])],
        [(PriceRow, [HERON, 1], [[1, 1]] * 11)],
        [(PriceRow, [HERON], [[1, 2]] * 11)],
        [(Decimal, [Decimal(1)], [])],
        [
            (
                type(worlds.product("heron")),
                [worlds.product("heron")],
                [["no fields"], [set()], [None], [None]],
            )
        ],
    ],
    ids=["a number", "a part short", "another kind", "a value too many", "no record", "no fields"],
)
def test_what_would_fill_records_otherwise_than_we_do_is_refused(groups: object) -> None:
    with pytest.raises(NotOurs):
        unpacked(pickle.dumps((HERON, groups)))


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
