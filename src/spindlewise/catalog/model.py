"""The strict base of all catalog records, and the small kinds of value that they share."""

import re
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, WithJsonSchema

from spindlewise.problems import RESERVED_FILE_NAMES
from spindlewise.units import as_written, in_circulation


class Record(BaseModel):
    """A record as an author wrote it: strict types, no unknown keys, no NaN, never changed after reading."""

    model_config = ConfigDict(
        strict=True,
        frozen=True,
        extra="forbid",
        allow_inf_nan=False,
        defer_build=True,
        populate_by_name=True,
    )


def _file_safe(text: str) -> str:
    if text.lower() in RESERVED_FILE_NAMES:
        raise ValueError(f"{text!r} is a reserved file name on some systems | choose another id")
    return text


def _visible(text: str) -> str:
    if not text.isprintable():
        hidden = [c for c in text if not c.isprintable()]
        code = ", ".join(f"U+{ord(c):04X}" for c in hidden[:3])
        raise ValueError(f"has characters that cannot be seen ({code}) | write plain text")
    if text != text.strip():
        raise ValueError("begins or ends with a space | take the space away")
    return text


def _web_address(text: str) -> str:
    if not re.match(r"https?://[^\s/]", text):
        raise ValueError("is not a web address | write it with https:// in front")
    return text


Identifier = Annotated[
    str,
    Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", min_length=2, max_length=60),
    AfterValidator(_file_safe),
]
"""Lower-case letters, digits and single hyphens: it becomes a file name and part of an address."""

Text = Annotated[str, Field(min_length=1, max_length=600), AfterValidator(_visible)]
Address = Annotated[str, Field(max_length=400), AfterValidator(_visible), AfterValidator(_web_address)]
Amount = Annotated[
    Decimal,
    BeforeValidator(as_written),
    Field(ge=0, le=1_000_000_000),
    WithJsonSchema({"type": "number", "minimum": 0, "maximum": 1_000_000_000}),
]
"""An amount of money, exactly as written; a pedal costs millions in some currencies."""

Currency = Annotated[str, Field(pattern=r"^[A-Z]{3}$"), AfterValidator(in_circulation)]
"""An ISO 4217 code that has a minor unit, so that amounts in it can be rounded."""

Region = Annotated[str, Field(pattern=r"^[A-Z]{2,8}$"), AfterValidator(_file_safe)]
"""A region's code; in small letters it names the region's page."""
Grade = Literal["measured", "reported", "claimed"]
"""Where an observation comes from: our bench, others, the maker."""

Absence = Literal["unknown", "none", "not applicable"]
"""Three different things: nobody knows, there is none, the question makes no sense here."""

GRADES: tuple[Grade, ...] = ("measured", "reported", "claimed")


class DatedPrice(Record):
    """A price of a side item (spare cells, bearings, seals), as it was seen once."""

    date: Day
    region: Region
    currency: Currency
    amount: Amount
    tax: Literal["in", "out"]
    source: Text
