"""All observations of a product that were there by the day, attribute by attribute, none left out."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from spindlewise.catalog.figure import basis_words, seen
from spindlewise.catalog.observation import (
    ATTRIBUTE_UNITS,
    Figure,
    IngressObservation,
    Observation,
    SignedFigure,
)
from spindlewise.catalog.product import Product
from spindlewise.site.addresses import outside
from spindlewise.site.shown import plus_minus_text, signed_text
from spindlewise.units import figure_text

TITLES = {
    "weight_g": "Weight",
    "stack_mm": "Stack height",
    "pedal_offset_mm": "Pedal offset a side",
    "rider_limit_kg": "Rider weight limit",
    "tolerance_pct": "Claimed tolerance",
    "running_hours": "Running time",
    "warranty_years": "Warranty",
    "ingress": "Dust and water (IEC 60529)",
    "fitting_torque_nm": "Torque for fitting",
    "reading_bias_pct": "Reads against the bench's reference",
    "reading_spread_pct": "Spread of the reading (one standard deviation)",
    "temperature_pct": "Change over ten degrees",
    "service_hours": "Hours between services",
}
"""Each attribute as it is read, in the order in which they are shown."""


@dataclass(frozen=True, slots=True)
class ObservationRow:
    """One line of the table; an attribute without observations has one line that says so."""

    value: str
    spread: str
    origin: str
    basis: str
    date: str
    source: str
    url: str | None
    note: str


@dataclass(frozen=True, slots=True)
class Attribute:
    """An attribute with all its lines."""

    key: str
    title: str
    rows: tuple[ObservationRow, ...]


def attributes(product: Product, day: date) -> tuple[Attribute, ...]:
    """All attributes, best grade first within each; nothing dated after the day is seen."""
    return tuple(Attribute(key, title, _rows(product, key, day)) for key, title in TITLES.items())


def _rows(product: Product, key: str, day: date) -> tuple[ObservationRow, ...]:
    series: Sequence[Observation] | str = getattr(product.observations, key)
    if isinstance(series, str):
        why = "nobody has stated it" if series == "unknown" else "the question makes no sense here"
        return (ObservationRow(series, "", series, "", "", why, None, ""),)
    found = seen(series, day)
    if not found:
        return (ObservationRow("unknown", "", "unknown", "", "", f"nothing seen by {day}", None, ""),)
    return tuple(_row(observation, ATTRIBUTE_UNITS[key]) for observation in found)


def _row(observation: Observation, unit: str) -> ObservationRow:
    value, spread = value_words(observation, unit)
    return ObservationRow(
        value=value,
        spread=spread,
        origin=observation.grade,
        basis=basis_words(observation),
        date=observation.date.isoformat(),
        source=observation.source,
        url=outside(observation.url),
        note=observation.note or "",
    )


def value_words(observation: Observation, unit: str) -> tuple[str, str]:
    """The value and the plus-minus of an observation, in words where there is no number."""
    if isinstance(observation, IngressObservation):
        return observation.value, ""
    if not isinstance(observation, Figure | SignedFigure):
        raise TypeError(
            f"{type(observation).__name__} has no value to show | give a figure or an ingress code"
        )
    if isinstance(observation.value, str):
        return observation.value, ""
    signed = isinstance(observation, SignedFigure)
    text = signed_text(observation.value, unit) if signed else figure_text(observation.value, unit)
    stated = observation.plus_minus
    return text, "not stated" if isinstance(stated, str) else plus_minus_text(stated, unit)
