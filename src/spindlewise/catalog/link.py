"""Links: which radio protocol a product speaks, and what travels over it since when."""

from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from typing import Annotated, Literal, Self, get_args

from pydantic import Field, model_validator

from spindlewise.catalog.model import Record, Text

Protocol = Literal["ANT+", "Bluetooth"]
PowerWay = Literal["both sides", "two channels", "one side doubled", "none", "unknown"]
CarriedWay = Literal["carried", "absent", "unknown"]
POWER_WAYS: tuple[PowerWay, ...] = get_args(PowerWay)
CARRIED_WAYS: tuple[CarriedWay, ...] = get_args(CarriedWay)


class Carried(Record):
    """What a link carries of one thing, since a day; what is promised has no day and counts as absent."""

    what: Literal["power", "balance", "stroke metrics"]
    how: Literal["both sides", "two channels", "one side doubled", "none", "carried", "absent", "unknown"]
    """For power: both sides, two channels, one side doubled, none. For the rest: carried or absent."""
    since: Day | Literal["promised"]
    firmware: Text | Literal["unknown", "not applicable"]
    """The firmware that it needs; not applicable where it was there from the start."""
    source: Text

    @model_validator(mode="after")
    def _way_fits(self) -> Self:
        allowed = POWER_WAYS if self.what == "power" else CARRIED_WAYS
        if self.how not in allowed:
            raise ValueError(f"{self.what} cannot be {self.how!r} | write one of: {', '.join(allowed)}")
        return self


class Link(Record):
    """One radio protocol of a product."""

    protocol: Protocol
    carries: Annotated[tuple[Carried, ...], Field(min_length=1)]
    """Dated statements; for each thing the newest that is not after the as-of date stands."""
