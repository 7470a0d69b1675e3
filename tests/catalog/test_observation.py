from datetime import date
from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from spindlewise.catalog.described_schema import Described
from spindlewise.catalog.observation import (
    ATTRIBUTE_UNITS,
    Figure,
    IngressObservation,
    Observations,
    SignedFigure,
    WeightFigure,
)
from worlds import product

STATED: dict[str, Any] = {"grade": "claimed", "date": date(2026, 1, 1), "source": "sheet"}


def test_every_attribute_has_its_unit_and_every_unit_its_attribute() -> None:
    assert list(ATTRIBUTE_UNITS) == list(Observations.model_fields)
    suffixes = {
        "g": "_g",
        "mm": "_mm",
        "kg": "_kg",
        "%": "_pct",
        "h": "_hours",
        "years": "_years",
        "N m": "_nm",
        "": "",
    }
    for attribute, unit in ATTRIBUTE_UNITS.items():
        assert attribute.endswith(suffixes[unit]), attribute


def test_unknown_none_and_a_number_are_three_things() -> None:
    for value in (0.0, 12.5, "unknown", "none"):
        assert Figure.model_validate({**STATED, "value": value}).value == value
    for value in ("not applicable", -0.1, 100_001.0, True, None, "12"):
        with pytest.raises(ValidationError):
            Figure.model_validate({**STATED, "value": value})


def test_a_plus_minus_is_unknown_unless_stated_and_never_below_nothing() -> None:
    assert Figure.model_validate({**STATED, "value": 1.0}).plus_minus == "unknown"
    with pytest.raises(ValidationError):
        Figure.model_validate({**STATED, "value": 1.0, "plus_minus": -1.0})


def test_a_bias_may_lie_below_nothing_and_is_never_unknown() -> None:
    assert SignedFigure.model_validate({**STATED, "value": -2.5}).value == -2.5
    for value in ("unknown", -101.0, 101.0):
        with pytest.raises(ValidationError):
            SignedFigure.model_validate({**STATED, "value": value})


def test_a_weight_has_its_whole_basis() -> None:
    basis = {"count": "pair", "batteries": "in", "cleats": "off"}
    assert WeightFigure.model_validate({**STATED, "value": 340.0, "basis": basis})
    for key in basis:
        short = {k: v for k, v in basis.items() if k != key}
        with pytest.raises(ValidationError):
            WeightFigure.model_validate({**STATED, "value": 340.0, "basis": short})


@pytest.mark.parametrize("code", ["IPX7", "IP67", "IP6X", "IPX5/IPX7", "IP00", "IPX9", "unknown", "none"])
def test_an_ingress_code(code: str) -> None:
    assert IngressObservation.model_validate({**STATED, "value": code}).value == code


@pytest.mark.parametrize(
    "code", ["IPXX", "IP7", "ipx7", "IP77", "IP6A", "IPX5/", "IPX5/IPX7/IPX8", "IPX7 ", "IPX7\n", "IPX5/IPXX"]
)
def test_what_is_no_ingress_code(code: str) -> None:
    with pytest.raises(ValidationError, match="is not an ingress code"):
        IngressObservation.model_validate({**STATED, "value": code})


def test_every_key_tells_an_editor_what_it_means() -> None:
    schema = TypeAdapter(Observations).json_schema(schema_generator=Described)
    assert [key for key, entry in schema["properties"].items() if not entry.get("description")] == []


def test_what_the_bench_alone_knows_may_be_left_out() -> None:
    observations = product("moor-peak").observations
    assert observations.reading_bias_pct == observations.service_hours == "unknown"
