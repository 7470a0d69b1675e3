"""A ride's sheet: what was noted before and after, which meters recorded it, how their files are written."""

from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from typing import Annotated, Any, Literal, Self

from pydantic import Field, model_validator

from spindlewise.bench.csv_columns import CsvColumns
from spindlewise.bench.stated import FileName, Id, NotApplicable, Stated, Unknown, Words

Celsius = Annotated[float, Field(ge=-40, le=60)]
CrankMm = Annotated[float, Field(ge=100, le=220)]
Seconds = Annotated[float, Field(ge=0, le=200_000)]
Sha256 = Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]


class CsvFile(Stated):
    """A recording as CSV, with its columns."""

    format: Literal["CSV"]
    file: FileName
    sha256: Sha256 | Unknown
    """Of the file's bytes, so that nobody takes another file for it."""
    columns: CsvColumns


class FitFile(Stated):
    """A recording as FIT."""

    format: Literal["FIT"]
    file: FileName
    sha256: Sha256 | Unknown
    power_field: Words = "power"
    """The field that holds this meter's power, where one device wrote several meters."""


class ZeroOffset(Stated):
    """Whether a zero offset was made before the ride, and what each side gave, in the maker's own unit."""

    done: Literal["before the start", "not done"] | Unknown
    left: float | Unknown | NotApplicable
    right: float | Unknown | NotApplicable


class Meter(Stated):
    """One meter of the ride: what it is, which unit, how it was set, and its recording."""

    id: Id
    what: Literal["pedals", "crank", "spider", "hub", "trainer"]
    product: Id | NotApplicable
    """The product's id in the catalog; not applicable for what is not sold here."""
    side: Literal["both", "left doubled", "right doubled"]
    unit: Words | Unknown
    """Which unit of the product: a serial number or whose it is."""
    ridden_km: Annotated[float, Field(ge=0, le=1_000_000)] | Unknown
    """How far the unit had been ridden before."""
    firmware: Words | Unknown | NotApplicable
    battery: Words | Unknown | NotApplicable
    zero_offset: ZeroOffset
    crank_set_mm: CrankMm | Unknown | NotApplicable
    """The crank length set in the meter or the head unit."""
    fitted_nm: Annotated[float, Field(gt=0, le=100)] | Unknown | NotApplicable
    """The torque with which it was fitted."""
    tolerance_pct: Annotated[float, Field(ge=0, le=20)] | Unknown
    """The maker's plus-minus, in percent of the reading."""
    recorder: Words | Unknown
    recording: Annotated[CsvFile | FitFile, Field(discriminator="format")]


class GivenSegment(Stated):
    """A stretch that somebody names, in seconds from the reference's first row."""

    kind: Literal["steady", "climb", "over-under", "intervals", "sprint", "bedding-in", "void"]
    name: Words
    start_s: Seconds
    end_s: Seconds
    because: Words | NotApplicable = "not applicable"

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not self.end_s > self.start_s:
            raise ValueError("ends before it begins | end_s is more than start_s")
        if self.kind in ("bedding-in", "void") and self.because == "not applicable":
            raise ValueError("is left out without a reason | say because of what")
        return self


class Standing(Stated):
    """Whether the ride counts; one that does not stays listed, with the reason."""

    state: Literal["counts", "bedding-in", "void"]
    because: Words | NotApplicable

    @model_validator(mode="after")
    def _has_its_reason(self) -> Self:
        if (self.state == "counts") != (self.because == "not applicable"):
            raise ValueError("a ride that counts needs no reason, any other one does | set because")
        return self


class RideSheet(Stated):
    """A ride that several meters recorded at once."""

    schema_: Annotated[Literal["spindlewise ride 1"], Field(alias="schema")]
    id: Id
    title: Words
    date: Day
    rider: Words
    made: Literal["measured", "generated"]
    """Generated: drawn by a program, nothing of it was measured."""
    note: Words
    standing: Standing
    temperature_start_c: Celsius | Unknown
    temperature_end_c: Celsius | Unknown
    crank_mm: CrankMm | Unknown
    """The cranks that were on the bike."""
    percent_of: Id
    """The meter whose reading is the denominator; that makes it no truer than the others."""
    lag_within_s: Annotated[float, Field(ge=1, le=3600)] = 120.0
    """How far the clocks may be apart."""
    meters: Annotated[tuple[Meter, ...], Field(min_length=1, max_length=12)]
    segments: tuple[GivenSegment, ...] = ()

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        ids = [meter.id for meter in self.meters]
        if len(set(ids)) != len(ids):
            raise ValueError("has two meters of one id | give each meter an id of its own")
        if self.percent_of not in ids:
            raise ValueError(f"percent_of names no meter | name one of {', '.join(ids)}")
        return self


def missing(sheet: RideSheet) -> tuple[str, ...]:
    """Name what nobody noted: the dotted path of every `unknown`, in the sheet's own order.

    Meters are named by their id: `meters.hub.firmware`.
    """
    return tuple(_unknowns(sheet.model_dump(), ""))


def _unknowns(value: Any, path: str) -> list[str]:
    if value == "unknown":
        return [path]
    if isinstance(value, dict):
        lead = f"{path}." if path else ""
        return [found for key, inner in value.items() for found in _unknowns(inner, f"{lead}{key}")]
    if isinstance(value, tuple):
        return [
            found
            for place, inner in enumerate(value)
            if isinstance(inner, dict)
            for found in _unknowns(inner, f"{path}.{inner.get('id', place)}")
        ]
    return []
