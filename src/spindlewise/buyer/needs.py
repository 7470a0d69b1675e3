"""Needs: hard requirements. A product that fails one is out, with the reason."""

import re
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, WithJsonSchema

from spindlewise.buyer.model import Statement, Words

_CODE = r"IP([0-6][0-9X]|X[0-9])"


def _one_code(text: str) -> str:
    if "/" in text:
        raise ValueError(f"{text!r} names two codes | write the one that must be met, such as IPX5")
    if not re.fullmatch(_CODE, text):
        raise ValueError(f"{text!r} is not an ingress code | write it as IPX7 or IP67 (IEC 60529)")
    return text


class ShoeNeed(Statement):
    """What the shoes take. A safety need: fails on unknown."""

    bolts: Literal["two-bolt", "three-bolt"]
    patterns: Annotated[tuple[Words, ...], Field(min_length=1)] | Literal["any"] = "any"
    """Cleat patterns that the buyer is willing to ride; any if the cleats may be changed."""


class Needs(Statement):
    """All needs are optional; the two about safety (rider weight, cleats) fail on unknown."""

    rider_mass_kg: Annotated[float, Field(gt=0, le=400)] | Literal["not stated"] = "not stated"
    """The rider's weight with kit; the maker's rider weight limit must not be below it."""
    shoes: ShoeNeed | Literal["not stated"] = "not stated"
    reading: Literal["both sides", "any"] = "any"
    """What the first receiver must really show."""
    balance: Literal["needed", "not needed"] = "not needed"
    """Whether balance must arrive at the first receiver."""
    water: (
        Annotated[str, AfterValidator(_one_code), WithJsonSchema({"type": "string", "pattern": f"^{_CODE}$"})]
        | Literal["not stated"]
    ) = "not stated"
    """The least ingress code, for instance IPX6; IPX7 does not imply IPX6 (IEC 60529)."""
    weight_g_at_most: Annotated[float, Field(gt=0, le=2000)] | Literal["not stated"] = "not stated"
    running_hours_at_least: Annotated[float, Field(gt=0, le=10_000)] | Literal["not stated"] = "not stated"
    warranty_years_at_least: Annotated[float, Field(gt=0, le=50)] | Literal["not stated"] = "not stated"
    states: (
        Annotated[
            tuple[Literal["current", "superseded", "clearance", "discontinued"], ...], Field(min_length=1)
        ]
        | Literal["any"]
    ) = "any"
    """Which places in the maker's range are acceptable."""
    kind: Literal["power pedal", "plain pedal", "any"] = "power pedal"
