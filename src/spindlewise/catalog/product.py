"""A product: one thing that a buyer can order, with all that is known of it."""

from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from spindlewise.catalog.link import Link
from spindlewise.catalog.model import Address, DatedPrice, Identifier, Record, Text
from spindlewise.catalog.observation import Observations

State = Literal["current", "superseded", "clearance", "discontinued"]


class StatusSince(Record):
    """A product's place in its maker's range, from a day on."""

    state: State
    since: Day
    superseded_by: Identifier | Literal["unknown", "not applicable"] = "not applicable"
    source: Text


class Cleat(Record):
    """What goes under the shoe."""

    bolts: Literal["two-bolt", "three-bolt", "none", "unknown"]
    """The shoe's drilling; none for a platform pedal."""
    pattern: Text
    """The maker's cleat pattern by its own name; 'none' for a platform pedal."""
    height_mm: Annotated[float, Field(ge=0, le=40)] | Literal["unknown", "not applicable"]
    """From pedal top to sole with the cleat in: what turns one stack basis into the other."""
    plus_minus_mm: Annotated[float, Field(ge=0, le=10)] | Literal["unknown", "not applicable"] = "unknown"


class Tools(Record):
    """What is needed to take the pedal off and put it on."""

    fitting: Annotated[tuple[Text, ...], Field(min_length=1)] | Literal["unknown"]
    """For instance 'hex key 8 mm from behind the crank' or 'pedal spanner 15 mm'."""
    after_fitting: Text | Literal["unknown", "none", "not applicable"] = "unknown"
    """What the maker asks for afterwards, for instance a zero offset after the first ride."""


class Battery(Record):
    """What feeds the meter."""

    type: Literal["AAA", "LR44", "SR44", "CR2032", "CR1/3N", "built-in", "unknown"]
    count: Annotated[int, Field(ge=1, le=12)] | Literal["unknown"]
    """Cells for the whole set that is sold."""
    cell_weight_g: Annotated[float, Field(gt=0, le=100)] | Literal["unknown", "not applicable"]
    """One cell; tells a weighing without cells from one with them."""
    spare_prices: (
        Annotated[tuple[DatedPrice, ...], Field(min_length=1)] | Literal["unknown", "not applicable"]
    )
    """One full set of cells, as seen; not applicable where it is charged."""


class Service(Record):
    """Upkeep with a known price."""

    what: Text
    prices: Annotated[tuple[DatedPrice, ...], Field(min_length=1)] | Literal["unknown"]


class Disclosure(Record):
    """How the tested unit was obtained, and who pays whom. It can never move a rank."""

    unit: Literal[
        "bought at retail", "lent by the maker", "given by the maker", "lent by a shop", "none tested"
    ]
    source: Text
    returned: Literal["kept", "returned", "to be returned", "not applicable"]
    commission: Literal["none", "link pays a commission", "maker pays for a video", "unknown"]


class ReliabilityReport(Record):
    """Trouble that was reported: a count, never a rate where nobody knows of how many."""

    date: Day
    what: Text
    count: Annotated[int, Field(ge=1, le=1_000_000)]
    of_units: Annotated[int, Field(ge=1, le=10_000_000)] | Literal["unknown"]
    """Out of how many units in use; unknown unless somebody counted."""
    grade: Literal["measured", "reported", "claimed"]
    status: Literal["open", "answered by the maker", "fixed in firmware", "fixed in production", "withdrawn"]
    source: Text

    @model_validator(mode="after")
    def _part_of_the_whole(self) -> Self:
        if not isinstance(self.of_units, str) and self.count > self.of_units:
            raise ValueError(
                f"{self.count} of {self.of_units} units | exchange them, or write of_units: unknown"
            )
        return self


class SafetyNotice(Record):
    """A call to stop using or to check a product; it keeps the product out of first place while it stands."""

    date: Day
    ended: Day | Literal["none"]
    """The day it was lifted; none while it stands."""
    what: Text
    action: Text
    """What whoever rides it should do."""
    issued_by: Text
    url: Address | None = None


class Product(Record):
    """One power pedal or plain pedal."""

    schema_: Literal["spindlewise product 1"] = Field(alias="schema")
    """The kind of file and its version."""
    id: Identifier
    """The file's name without .yaml."""
    name: Text
    maker: Text
    family: Identifier | Literal["none"]
    """A name shared by the one-sided and two-sided variants of one pedal."""
    kind: Literal["power pedal", "plain pedal"]
    sides: Literal["both", "left", "right", "not applicable"]
    """Where power is measured; not applicable for a plain pedal."""
    summary: Text
    """One sentence for the top of its page."""
    statuses: Annotated[tuple[StatusSince, ...], Field(min_length=1)]
    cleat: Cleat
    tools: Tools
    battery: Battery | Literal["unknown", "not applicable"]
    service: Service | Literal["unknown", "none", "not applicable"]
    links: Annotated[tuple[Link, ...], Field(min_length=1)] | Literal["unknown", "none", "not applicable"]
    disclosure: Disclosure
    observations: Observations
    reliability: Annotated[tuple[ReliabilityReport, ...], Field(min_length=1)] | Literal["none", "unknown"]
    safety_notices: Annotated[tuple[SafetyNotice, ...], Field(min_length=1)] | Literal["none"]

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        power = self.kind == "power pedal"
        if power and self.sides == "not applicable":
            raise ValueError("a power pedal measures somewhere | write sides: both, left or right")
        if not power and self.sides != "not applicable":
            raise ValueError("a plain pedal measures nothing | write sides: not applicable")
        if power and self.links == "not applicable":
            raise ValueError("a power pedal sends its power somehow | write links: unknown or none")
        if power and self.battery == "not applicable":
            raise ValueError("a power pedal is fed by something | write battery: unknown")
        if not power and isinstance(self.links, tuple):
            raise ValueError("a plain pedal has no link | write links: not applicable")
        if not power and isinstance(self.battery, Battery):
            raise ValueError("a plain pedal has no battery | write battery: not applicable")
        return self
