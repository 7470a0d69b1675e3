"""The one figure that stands for an attribute on a day: the best grade, the newest date, a usable basis."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from typing import Any, TypeVar, cast

from spindlewise.catalog.model import GRADES, Absence, Grade
from spindlewise.catalog.observation import (
    Figure,
    HoursFigure,
    IngressObservation,
    Observation,
    OffsetBasis,
    OffsetFigure,
    SignedFigure,
    StackBasis,
    StackFigure,
    ToleranceFigure,
    WeightBasis,
    WeightFigure,
)
from spindlewise.catalog.product import Product

Seen = TypeVar("Seen", bound=Observation)


@dataclass(frozen=True, slots=True)
class Known:
    """A figure that can be followed to its observation; `plus_minus` is None where nobody states it."""

    value: float
    plus_minus: float | None
    grade: Grade
    date: Day
    source: str
    basis: str

    @property
    def low(self) -> float:
        """The lower end of the stated interval, or the value itself."""
        return self.value - (self.plus_minus or 0.0)

    @property
    def high(self) -> float:
        """The upper end of the stated interval, or the value itself."""
        return self.value + (self.plus_minus or 0.0)


@dataclass(frozen=True, slots=True)
class KnownCode:
    """A code in words, such as an ingress code, that can be followed to its observation."""

    value: str
    grade: Grade
    date: Day
    source: str


@dataclass(frozen=True, slots=True)
class Absent:
    """No figure: unknown, none or not applicable, and why."""

    kind: Absence
    because: str


def seen(series: Sequence[Seen] | str, as_of: Day) -> list[Seen]:
    """The observations dated on or before the day, best grade first, then newest, then the later listed."""
    if isinstance(series, str):
        return []
    if len(series) == 1:  # most have one, and there are many
        return [series[0]] if series[0].date <= as_of else []
    dated = [
        (GRADES.index(o.grade), -o.date.toordinal(), -i, o) for i, o in enumerate(series) if o.date <= as_of
    ]
    return [o for *_, o in sorted(dated, key=lambda row: row[:3])]


def _weight_words(basis: WeightBasis) -> str:
    cells = "no batteries" if basis.batteries == "not applicable" else f"batteries {basis.batteries}"
    return f"{basis.count}, {cells}, cleats {basis.cleats}".replace("unknown", "not stated")


def _span_words(basis: StackBasis | OffsetBasis) -> str:
    return basis.span if basis.span != "unknown" else "basis not stated"


_WORDS: dict[type, Callable[[Any], str]] = {
    WeightFigure: _weight_words,
    StackFigure: _span_words,
    OffsetFigure: _span_words,
    ToleranceFigure: lambda basis: f"of {basis.of}" if basis.of != "unknown" else "basis not stated",
    HoursFigure: lambda basis: basis.cells,
}
"""By kind of observation, since asking a model whether it is of a kind takes longer than all the rest."""


def basis_words(observation: Observation) -> str:
    """The basis of an observation in words, empty where the attribute has none."""
    words = _WORDS.get(type(observation))
    return "" if words is None else words(observation.basis)  # type: ignore[attr-defined]  # those have one


def figure(
    product: Product,
    attribute: str,
    as_of: Day,
    usable: Callable[[Observation], bool] | None = None,
    wanted: str = "",
    grade: Grade | None = None,
) -> Known | Absent:
    """The figure in force for a numeric attribute, or why there is none.

    `usable` says whether an observation's basis lets it decide; `wanted` names that basis for the reader.
    With a `grade`, only observations of that grade are looked at. Raises ValueError for `ingress`, which is
    a code.
    """
    series: Sequence[Observation] | Absence = getattr(product.observations, attribute)
    if isinstance(series, str):
        return Absent(series, "nobody has stated it" if series == "unknown" else "does not apply")
    candidates = seen(series, as_of)
    if grade is not None:
        candidates = [o for o in candidates if o.grade == grade]
    if not candidates:
        return Absent("unknown", f"nothing {grade or 'observed'} by {as_of.isoformat()}")
    fitting = candidates if usable is None else [o for o in candidates if usable(o)]
    if not fitting:
        return Absent("unknown", f"only on another basis ({basis_words(candidates[0])}); wanted: {wanted}")
    if type(fitting[0]) is IngressObservation:
        raise ValueError(f"{attribute} is a code, not a number: ask ingress() for it")
    for observation in cast("list[Figure | SignedFigure]", fitting):
        if observation.value == "none":
            return Absent("none", f"{observation.source}, {observation.date.isoformat()}")
        if not isinstance(observation.value, str):
            stated = observation.plus_minus
            return Known(
                observation.value,
                None if isinstance(stated, str) else stated,
                observation.grade,
                observation.date,
                observation.source,
                basis_words(observation),
            )
    return Absent("unknown", f"{fitting[0].source} does not say")


def weight_g(product: Product, as_of: Day, grade: Grade | None = None) -> Known | Absent:
    """The weight of the pair, batteries in, cleats off: the only basis on which weights are compared.

    A plain pedal has no batteries; its weighings say so.
    """
    words, cells = (
        ("no batteries", "not applicable") if product.kind == "plain pedal" else ("batteries in", "in")
    )

    def usable(o: Observation) -> bool:
        return isinstance(o, WeightFigure) and (o.basis.count, o.basis.batteries, o.basis.cleats) == (
            "pair",
            cells,
            "off",
        )

    return figure(product, "weight_g", as_of, usable, f"pair, {words}, cleats off", grade)


def stack_mm(product: Product, as_of: Day, span: str) -> Known | Absent:
    """The stack height on one basis only: 'axis to pedal top' or 'axis to sole'."""

    def usable(o: Observation) -> bool:
        return isinstance(o, StackFigure) and o.basis.span == span

    return figure(product, "stack_mm", as_of, usable, span)


def pedal_offset_mm(product: Product, as_of: Day) -> Known | Absent:
    """How far out the pedal's centre sits from the crank face, a side."""

    def usable(o: Observation) -> bool:
        return isinstance(o, OffsetFigure) and o.basis.span == "crank face to pedal centre"

    return figure(product, "pedal_offset_mm", as_of, usable, "crank face to pedal centre")


def ingress(product: Product, as_of: Day) -> KnownCode | Absent:
    """The ingress code in force (IEC 60529)."""
    series = product.observations.ingress
    if isinstance(series, str):
        return Absent(series, "nobody has stated it" if series == "unknown" else "does not apply")
    for observation in seen(series, as_of):
        if observation.value == "none":
            return Absent("none", f"{observation.source}, {observation.date.isoformat()}")
        if observation.value != "unknown":
            return KnownCode(observation.value, observation.grade, observation.date, observation.source)
    return Absent("unknown", "nobody has stated it")
