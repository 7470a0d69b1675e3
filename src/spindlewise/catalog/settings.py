"""The file catalog.yaml: what this catalog is, the day on which it is read, and its regions."""

from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from typing import Annotated, Literal

from pydantic import Field

from spindlewise.catalog.model import Currency, Record, Region, Text


class RegionFacts(Record):
    """A region of the price log."""

    name: Text
    currency: Currency
    """What buyers there pay in."""


class Settings(Record):
    """The file catalog.yaml."""

    schema_: Literal["spindlewise catalog 1"] = Field(alias="schema")
    title: Text
    invented: Text | Literal["no"]
    """The notice shown everywhere where products and people are invented; 'no' for a real catalog."""
    as_of: Day | Literal["today"]
    """The day on which the catalog is read unless --as-of says otherwise."""
    regions: Annotated[dict[Region, RegionFacts], Field(min_length=1)]
    """The regions of the price log, by the code that stands there."""
    price_age_days: Annotated[int, Field(ge=1, le=3650)]
    """An undated price older than this is shown as old."""
    cautions: Annotated[tuple[Text, ...], Field(min_length=1)]
    """What every answer says beside the figures."""
