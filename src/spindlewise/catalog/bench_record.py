"""Observations of the bench in a file of their own, beside the file that the product's author keeps."""

from typing import Annotated, Literal

from pydantic import Field

from spindlewise.catalog.model import Identifier, Record, Text
from spindlewise.catalog.observation import Figure, HoursFigure, SignedFigure, StackFigure, WeightFigure


class RawFile(Record):
    """A recording that an observation rests on."""

    file: Text
    """Its place in the catalog."""
    sha256: Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]
    """Of the file's bytes, so that nobody takes another file for it."""


class BenchFigures(Record):
    """What a bench measures, by attribute; the same keys and figures as in a product's file."""

    weight_g: tuple[WeightFigure, ...] = ()
    stack_mm: tuple[StackFigure, ...] = ()
    running_hours: tuple[HoursFigure, ...] = ()
    reading_bias_pct: tuple[SignedFigure, ...] = ()
    reading_spread_pct: tuple[Figure, ...] = ()
    temperature_pct: tuple[Figure, ...] = ()


class BenchRecord(Record):
    """What the bench says of one product. It is never edited: a newer file says what is newer."""

    schema_: Annotated[Literal["spindlewise observations 1"], Field(alias="schema")]
    product: Identifier
    recordings: tuple[RawFile, ...] = ()
    """The recordings behind the observations, if there are any."""
    observations: BenchFigures
