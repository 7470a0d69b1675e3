"""The figures that rest on a product's own observations alone: running time, warranty, stack."""

import math
from collections.abc import Callable
from datetime import date

from spindlewise.answer.standing import Standing
from spindlewise.catalog.figure import Absent, Known, figure, stack_mm
from spindlewise.catalog.product import Product

TOP, SOLE = "axis to pedal top", "axis to sole"


def as_standing(criterion: str, found: Known | Absent, unit: str) -> Standing:
    """A catalog figure as it counts for a criterion."""
    if isinstance(found, Absent):
        return Standing(criterion, None, None, None, unit, found.kind, None, found.because)
    stated = found.plus_minus is not None
    low, high = (found.low, found.high) if stated else (None, None)
    origin = "worked out" if found.basis.startswith("worked out") else found.grade
    return Standing(criterion, found.value, low, high, unit, origin, found.date, found.source, found.basis)


def stack_to_top(product: Product, day: date) -> Known | Absent:
    """Stack height from spindle axis to pedal top; worked out from the sole basis where it can be."""
    direct = stack_mm(product, day, TOP)
    if isinstance(direct, Known):
        return direct
    to_sole = stack_mm(product, day, SOLE)
    cleat = product.cleat.height_mm
    if isinstance(to_sole, Absent) or isinstance(cleat, str):
        return direct
    parts = (to_sole.plus_minus, product.cleat.plus_minus_mm)
    known = [p for p in parts if isinstance(p, float)]
    return Known(
        to_sole.value - cleat,
        math.hypot(*known) if len(known) == 2 else None,
        to_sole.grade,
        to_sole.date,
        to_sole.source,
        f"worked out: {to_sole.value:g} mm to the sole less the cleat's {cleat:g} mm",
    )


UNPRICED: dict[str, Callable[[Product, date], Standing]] = {
    "running_time": lambda product, day: as_standing(
        "running_time", figure(product, "running_hours", day), "h"
    ),
    "warranty": lambda product, day: as_standing("warranty", figure(product, "warranty_years", day), "years"),
    "stack": lambda product, day: as_standing("stack", stack_to_top(product, day), "mm"),
}
"""By criterion, the standings that rest on the product's own observations alone."""


def unpriced_standings(product: Product, day: date) -> dict[str, Standing]:
    """All of them."""
    return {criterion: work(product, day) for criterion, work in UNPRICED.items()}
