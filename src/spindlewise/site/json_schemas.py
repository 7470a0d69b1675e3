"""JSON Schemas of the data that the site puts beside its pages, so that other programs can check it."""

from typing import Any, get_args

from spindlewise.answer.standing import Origin
from spindlewise.catalog.described_schema import Described
from spindlewise.catalog.product import Product
from spindlewise.render.as_json import Json
from spindlewise.render.json_rank import SCHEMA as RANK_SCHEMA

DIALECT = "https://json-schema.org/draft/2020-12/schema"
TEXT: dict[str, Json] = {"type": "string"}
TEXT_OR_NOTHING: dict[str, Json] = {"type": ["string", "null"]}
NUMBER_OR_NOTHING: dict[str, Json] = {"type": ["number", "null"]}
WHETHER: dict[str, Json] = {"type": "boolean"}
TEXTS: dict[str, Json] = {"type": "array", "items": TEXT}
AMOUNT: dict[str, Json] = {"type": ["string", "null"], "pattern": r"^\d+(\.\d+)?$"}
"""Money is a string, so that no reader rounds it."""
DAY: dict[str, Json] = {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"}


def _object(**properties: Json) -> dict[str, Json]:
    """An object that has all of these; later versions may add more."""
    return {"type": "object", "required": list(properties), "properties": properties}


def _span(least: float, most: float) -> dict[str, Json]:
    end: dict[str, Json] = {"type": "number", "minimum": least, "maximum": most}
    return {"low": end, "expected": end, "high": end}


_MONEY: dict[str, Json] = {
    "oneOf": [{"type": "null"}, _object(amount={**AMOUNT, "type": "string"}, currency=TEXT)]
}
_MERIT = _object(
    **_span(0, 1),
    value={"type": ["number", "string", "null"]},
    value_low=NUMBER_OR_NOTHING,
    value_high=NUMBER_OR_NOTHING,
    unit=TEXT,
    grade={"enum": list(get_args(Origin))},
    date=TEXT_OR_NOTHING,
    source=TEXT,
    note=TEXT,
)
_PLACED = _object(
    product=TEXT,
    rank={"type": "integer", "minimum": 1},
    level_with=TEXTS,
    level_only_by={"type": "array", "items": _object(product=TEXT)},
    held_back=WHETHER,
    score=_object(**_span(0, 100)),
    merits={"type": "object", "additionalProperties": _MERIT},
    price=_object(amount=AMOUNT, currency=TEXT_OR_NOTHING),
    break_even=_MONEY,
    break_even_outcome=TEXT_OR_NOTHING,
    reading={"type": "array", "items": _object(receiver=TEXT, mode=TEXT)},
    unchecked=TEXTS,
)
_EXCLUDED = _object(product=TEXT, because=TEXTS, needs=TEXTS, price=_object(amount=AMOUNT))


def ranking_schema() -> dict[str, Json]:
    """The schema of a ranking: of each buyer's, and of each region's comparison."""
    return {
        "$schema": DIALECT,
        "title": RANK_SCHEMA,
        **_object(
            schema={"const": RANK_SCHEMA},
            as_of=DAY,
            buyer=TEXT,
            region=TEXT,
            currency=TEXT,
            criteria={"type": "object", "additionalProperties": {"type": "number", "minimum": 0}},
            pick=TEXT_OR_NOTHING,
            order={"type": "array", "items": _PLACED},
            excluded={"type": "array", "items": _EXCLUDED},
        ),
    }


def products_schema() -> dict[str, Any]:
    """The schema of products.json: each product as its own file has it, less what is dated later.

    Two things differ from the schema of the file: a list of dated entries may be empty, since all of them may
    be dated later, and money is a string.
    """
    product = _as_published(Product.model_json_schema(by_alias=True, schema_generator=Described))
    return {
        "$schema": DIALECT,
        "title": "spindlewise products 1",
        **_object(
            schema={"const": "spindlewise products 1"},
            as_of=DAY,
            invented=TEXT,
            products={"type": "array", "items": {"$ref": "#/$defs/Product"}},
        ),
        "$defs": {**product.pop("$defs", {}), "Product": product},
    }


def _as_published(part: Any) -> Any:
    if isinstance(part, dict):
        return {
            key: _as_money(value) if key == "amount" else _as_published(value)
            for key, value in part.items()
            if key != "minItems"
        }
    return [_as_published(value) for value in part] if isinstance(part, list) else part


def _as_money(part: Any) -> dict[str, Json]:
    return {**{key: part[key] for key in part if key in ("title", "description")}, **AMOUNT, "type": "string"}
