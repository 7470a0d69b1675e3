"""Receivers: what the buyer records or rides with."""

from typing import Annotated, Literal

from pydantic import Field

from spindlewise.buyer.model import Statement, Words


class Channels(Statement):
    """A receiver with so many sensor channels, and what else the rider keeps connected."""

    total: Annotated[int, Field(ge=0, le=64)]
    kept: tuple[Literal["heart rate", "cadence", "speed", "trainer control", "lights", "other"], ...] = ()
    """One channel each; what is left is free for power."""


class Receiver(Statement):
    """One head unit, watch, phone or trainer program, by what it can do."""

    name: Words
    protocols: Annotated[tuple[Literal["ANT+", "Bluetooth"], ...], Field(min_length=1)]
    """The radio protocols that it hears."""
    channels: Channels | Literal["unlimited", "unknown"]
    pairs_two_sensors: Literal["can", "cannot", "unknown"]
    """Whether it can take two power sensors for one rider."""
    shows_balance: Literal["can", "cannot", "unknown"] = "can"
    shows_stroke_metrics: Literal["can", "cannot", "unknown"] = "can"
