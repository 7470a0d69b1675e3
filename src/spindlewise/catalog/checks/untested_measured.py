"""untested-measured: what was measured here came from somewhere, and the page says from where.

PASS: `unit: bought at retail` with measured observations
FAIL: `unit: none tested` with an observation of grade measured
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value, observed
from spindlewise.problems import Problem

RULE = "untested-measured"


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each measured observation of an untested product, and a disclosure that contradicts itself."""
    for product in catalog.products.values():
        said = product.disclosure
        untested = said.unit == "none tested"
        if untested != (said.returned == "not applicable"):
            told = f"is {said.returned}, yet the unit is {said.unit}"
            tip = "write not applicable" if untested else "write kept, returned or to be returned"
            yield at_value(catalog, product.id, ("disclosure", "returned"), RULE, told, tip)
        for attribute, index, observation in observed(product) if untested else ():
            if observation.grade == "measured":
                path = ("observations", attribute, index, "grade")
                told, tip = "measured, yet no unit was tested", "correct the grade, or disclosure.unit"
                yield at_value(catalog, product.id, path, RULE, told, tip)
