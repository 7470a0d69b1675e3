"""implausible-figure: a figure lies where such figures lie, and 0 is never written for unknown or none.

PASS: `weight_g` with `value: 346`
FAIL: `weight_g` with `value: 0` (error), or with `value: 0.346`, which is kilograms (warning)
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value, observed
from spindlewise.catalog.observation import ATTRIBUTE_UNITS, Figure
from spindlewise.problems import Problem

USUAL = {
    "weight_g": (60, 1200),
    "stack_mm": (3, 40),
    "pedal_offset_mm": (30, 90),
    "rider_limit_kg": (50, 250),
    "tolerance_pct": (0.1, 10),
    "running_hours": (5, 3000),
    "warranty_years": (0, 30),
    "fitting_torque_nm": (10, 60),
    "reading_spread_pct": (0, 10),
    "temperature_pct": (0, 10),
    "service_hours": (50, 50_000),
}
"""What figures of pedals come to, generously. From memory, no source; outside it a unit has often slipped."""


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each figure outside the usual span of its attribute."""
    for product in catalog.products.values():
        for attribute, index, seen in observed(product):
            if attribute not in USUAL or not isinstance(seen, Figure) or isinstance(seen.value, str):
                continue
            low, high = USUAL[attribute]
            if low <= seen.value <= high:
                continue
            path = ("observations", attribute, index, "value")
            if seen.value == 0:
                told, tip = (
                    "a zero says that there is such a figure",
                    "write unknown, or none where there is none",
                )
                yield at_value(catalog, product.id, path, "implausible-figure", told, tip)
            else:
                unit = ATTRIBUTE_UNITS[attribute]
                told = f"{seen.value:g} {unit} lies outside the usual {low:g} to {high:g} {unit}"
                tip = "compare unit and decimal point with the source"
                yield at_value(catalog, product.id, path, "implausible-figure", told, tip, "warning")
