"""The strict base of buyer records, and the kinds of value that they share."""

from decimal import Decimal
from typing import Annotated

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, WithJsonSchema

from spindlewise.problems import RESERVED_FILE_NAMES
from spindlewise.units import as_written, in_circulation


class Statement(BaseModel):
    """Something a buyer states: strict types, no unknown keys, never changed after reading."""

    model_config = ConfigDict(
        strict=True,
        frozen=True,
        extra="forbid",
        allow_inf_nan=False,
        defer_build=True,
        populate_by_name=True,
    )


def _plain(text: str) -> str:
    if not text.isprintable():
        raise ValueError("has characters that cannot be seen | write plain text")
    return text


def _file_safe(text: str) -> str:
    if text in RESERVED_FILE_NAMES:
        raise ValueError(f"{text!r} is a reserved file name on some systems | choose another id")
    return text


Words = Annotated[str, Field(min_length=1, max_length=600), AfterValidator(_plain)]
Sum = Annotated[
    Decimal,
    BeforeValidator(as_written),
    Field(ge=0, le=1_000_000_000),
    WithJsonSchema({"type": "number", "minimum": 0, "maximum": 1_000_000_000}),
]
"""An amount of money, exactly as written; a pedal costs millions in some currencies."""

Currency = Annotated[str, Field(pattern=r"^[A-Z]{3}$"), AfterValidator(in_circulation)]
"""An ISO 4217 code that has a minor unit, so that amounts in it can be rounded."""

Region = Annotated[str, Field(pattern=r"^[A-Z]{2,8}$")]
"""A region of the catalog that is asked."""

BuyerId = Annotated[
    str,
    Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", min_length=2, max_length=60),
    AfterValidator(_file_safe),
]
"""The file's name without .yaml."""

ProductId = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", min_length=2, max_length=60)]
