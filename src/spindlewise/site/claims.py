"""Claimed against measured: what the maker says and what the scales say, on the same basis only."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from spindlewise.catalog.figure import basis_words, seen
from spindlewise.catalog.model import Grade
from spindlewise.catalog.observation import ATTRIBUTE_UNITS, Figure, Observation
from spindlewise.catalog.product import Product
from spindlewise.site.observation_rows import TITLES, value_words
from spindlewise.site.shown import signed_text


@dataclass(frozen=True, slots=True)
class Claim:
    """One attribute of which both speak; `verdict` says whether they differ by more than the plus-minus."""

    title: str
    basis: str
    claimed: str
    claimed_on: str
    measured: str
    measured_on: str
    difference: str
    verdict: str


def claims(product: Product, day: date) -> tuple[Claim, ...]:
    """Each attribute with a claim and a measurement on one basis: the newest of each by the day."""
    found = []
    for key, title in TITLES.items():
        series: Sequence[Observation] | str = getattr(product.observations, key)
        observed = [o for o in seen(series, day) if isinstance(o, Figure) and not isinstance(o.value, str)]
        for measured in (o for o in observed if o.grade == "measured"):
            claimed = _newest(observed, "claimed", basis_words(measured))
            if claimed and measured is _newest(observed, "measured", basis_words(measured)):
                found.append(_claim(title, ATTRIBUTE_UNITS[key], claimed, measured))
    return tuple(found)


def _newest(observed: Sequence[Figure], grade: Grade, basis: str) -> Figure | None:
    return next((o for o in observed if o.grade == grade and basis_words(o) == basis), None)


def _claim(title: str, unit: str, claimed: Figure, measured: Figure) -> Claim:
    # claims rarely state a plus-minus; without one only the measurement's own can excuse a difference
    difference = float(measured.value) - float(claimed.value)
    own, theirs = (0.0 if isinstance(o.plus_minus, str) else o.plus_minus for o in (measured, claimed))
    within = abs(difference) <= own + theirs + 1e-9
    words = ("heavier", "lighter") if unit == "g" else ("more", "less")
    side = words[0] if difference > 0 else words[1]
    return Claim(
        title=title,
        basis=basis_words(measured),
        claimed=value_words(claimed, unit)[0],
        claimed_on=claimed.date.isoformat(),
        measured=" ".join(part for part in value_words(measured, unit) if part),
        measured_on=measured.date.isoformat(),
        difference=signed_text(difference, unit),
        verdict="within the plus-minus" if within else f"{side} than claimed",
    )
