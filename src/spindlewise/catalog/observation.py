"""Observations: one value of one attribute of a product, with grade, date, source, basis and plus-minus."""

import re
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, WithJsonSchema

from spindlewise.catalog.model import Address, Grade, Record, Text

_CODE = r"IP([0-6][0-9X]|X[0-9])"
_INGRESS = re.compile(f"{_CODE}(/{_CODE})?")


def _ingress_code(text: str) -> str:
    if not _INGRESS.fullmatch(text):
        raise ValueError(f"{text!r} is not an ingress code | write it as IPX7, IP67 or IPX5/IPX7 (IEC 60529)")
    return text


class Observation(Record):
    """What every observation carries, whatever it is of."""

    grade: Grade
    """measured (our bench), reported (others) or claimed (the maker)."""
    date: Day
    """The day on which it was measured, reported or claimed; nothing dated after the as-of date is seen."""
    source: Text
    """Who or what says so: a page, a letter, a bench file."""
    url: Address | None = None
    """Where it can be read, if it can."""
    note: Text | None = None
    """Anything a reader should know beside the figure."""


class Figure(Observation):
    """An observation that is a number, or a dated statement that there is none or that it is not known."""

    value: Annotated[float, Field(ge=0, le=100_000)] | Literal["unknown", "none"]
    """The number in the attribute's unit; none: there is none by design; unknown: nobody says."""
    plus_minus: Annotated[float, Field(ge=0, le=10_000)] | Literal["unknown"] = "unknown"
    """Half width of the interval that holds the value in about 19 of 20 cases, in the attribute's unit."""


class SignedFigure(Observation):
    """A number that may be below zero, as a bias may."""

    value: Annotated[float, Field(ge=-100, le=100)]
    """The number in the attribute's unit."""
    plus_minus: Annotated[float, Field(ge=0, le=100)] | Literal["unknown"] = "unknown"
    """Half width of the interval that holds the value in about 19 of 20 cases."""


class WeightBasis(Record):
    """What lay on the scales. Without it a weight decides nothing."""

    count: Literal["pair", "one pedal", "unknown"]
    batteries: Literal["in", "out", "unknown", "not applicable"]
    cleats: Literal["off", "on", "unknown"]


class WeightFigure(Figure):
    """A weight in grams."""

    basis: WeightBasis


class StackBasis(Record):
    """From where to where a stack height was taken; the two differ by a cleat."""

    span: Literal["axis to pedal top", "axis to sole", "unknown"]


class StackFigure(Figure):
    """A stack height in millimetres."""

    basis: StackBasis


class OffsetBasis(Record):
    """To where the pedal's offset from the crank was taken."""

    span: Literal["crank face to pedal centre", "crank face to cleat centre", "unknown"]


class OffsetFigure(Figure):
    """How far out the pedal sits from the crank, in millimetres a side, without washers."""

    basis: OffsetBasis


class ToleranceBasis(Record):
    """What a claimed tolerance speaks of."""

    of: Literal["total power", "each side", "unknown"]


class ToleranceFigure(Figure):
    """A claimed tolerance: plus or minus this many percent of the reading."""

    basis: ToleranceBasis


class HoursBasis(Record):
    """On which cells the hours were run."""

    cells: Text


class HoursFigure(Figure):
    """Running hours on one charge or one set of cells."""

    basis: HoursBasis


class IngressObservation(Observation):
    """An ingress protection code after IEC 60529."""

    value: (
        Annotated[
            str,
            AfterValidator(_ingress_code),
            WithJsonSchema({"type": "string", "pattern": f"^{_INGRESS.pattern}$"}),
        ]
        | Literal["unknown", "none"]
    )


Unlisted = Literal["unknown", "not applicable"]
"""What stands in place of a list of observations where there is not one."""

Weights = Annotated[tuple[WeightFigure, ...], Field(min_length=1)] | Unlisted
Stacks = Annotated[tuple[StackFigure, ...], Field(min_length=1)] | Unlisted
Offsets = Annotated[tuple[OffsetFigure, ...], Field(min_length=1)] | Unlisted
Tolerances = Annotated[tuple[ToleranceFigure, ...], Field(min_length=1)] | Unlisted
Hours = Annotated[tuple[HoursFigure, ...], Field(min_length=1)] | Unlisted
Figures = Annotated[tuple[Figure, ...], Field(min_length=1)] | Unlisted
SignedFigures = Annotated[tuple[SignedFigure, ...], Field(min_length=1)] | Unlisted
IngressCodes = Annotated[tuple[IngressObservation, ...], Field(min_length=1)] | Unlisted


class Observations(Record):
    """All that has been observed of a product, by attribute; the unit stands in the key."""

    weight_g: Weights
    """Weights; ranked on the basis pair, batteries in, cleats off."""
    stack_mm: Stacks
    """Stack heights."""
    pedal_offset_mm: Offsets
    """How far out the pedal sits from the crank face, a side."""
    rider_limit_kg: Figures
    """The maker's rider weight limit; none where the maker says that there is none."""
    tolerance_pct: Tolerances
    """The tolerance that the maker claims, in percent of the reading."""
    running_hours: Hours
    """Running hours on one charge or one set of cells."""
    warranty_years: Figures
    """The maker's warranty."""
    ingress: IngressCodes
    """Protection against dust and water after IEC 60529."""
    fitting_torque_nm: Figures
    """The torque that the maker publishes for fitting the spindle."""
    reading_bias_pct: SignedFigures = "unknown"
    """Mean difference from the bench's reference, in percent of the reference."""
    reading_spread_pct: Figures = "unknown"
    """Spread of the readings at the bench about their mean, one standard deviation, in percent."""
    temperature_pct: Figures = "unknown"
    """Change of the reading over ten degrees without a new zero offset, in percent."""
    service_hours: Figures = "unknown"
    """Riding hours between services of bearings or seals, as published."""


ATTRIBUTE_UNITS = {
    "weight_g": "g",
    "stack_mm": "mm",
    "pedal_offset_mm": "mm",
    "rider_limit_kg": "kg",
    "tolerance_pct": "%",
    "running_hours": "h",
    "warranty_years": "years",
    "ingress": "",
    "fitting_torque_nm": "N m",
    "reading_bias_pct": "%",
    "reading_spread_pct": "%",
    "temperature_pct": "%",
    "service_hours": "h",
}
"""The unit of each attribute, as it is printed."""
