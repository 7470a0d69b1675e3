"""curve-unit: a value curve is written in the unit in which its figures come.

PASS: `unit: g` under weight; `unit: EUR` under price, with `currency: EUR` on top
FAIL: `unit: kg` under weight
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem, quoted

UNITS = {
    "weight": "g",
    "reading_uncertainty": "%",
    "running_time": "h",
    "warranty": "years",
    "stack": "mm",
}


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each curve whose unit is not that of its figures."""
    currency = catalog.criteria.currency
    for criterion, unit in {"price": currency, "ownership": currency, **UNITS}.items():
        written = getattr(catalog.criteria.criteria, criterion).unit
        if written != unit:
            told = f"is {quoted(written)}, the figures come in {unit}"
            tip = f"write {unit}, and the knots and the span in it"
            yield at_value(catalog, "criteria.yaml", ("criteria", criterion, "unit"), "curve-unit", told, tip)
