"""weight-basis: a weight without its whole basis decides nothing (warning).

PASS: `basis: {count: pair, batteries: in, cleats: "off"}`
FAIL: `basis: {count: pair, batteries: unknown, cleats: unknown}`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.catalog.observation import WeightBasis, WeightFigure
from spindlewise.problems import Problem

RULE = "weight-basis"


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each weight of unknown basis, or with batteries that the kind of product cannot have."""
    for product in catalog.products.values():
        for index, weight in enumerate(_listed(product.observations.weight_g)):
            path = ("observations", "weight_g", index, "basis")
            lacking = [
                key for key in ("count", "batteries", "cleats") if getattr(weight.basis, key) == "unknown"
            ]
            if lacking:
                told = f"{', '.join(lacking)} unknown: this weight decides nothing"
                tip = "ask what lay on the scales, or weigh the pair, batteries in, cleats off"
                yield at_value(catalog, product.id, path, RULE, told, tip, "warning")
            elif (weight.basis.batteries == "not applicable") != (product.kind == "plain pedal"):
                told, tip = _batteries(weight.basis, product.kind)
                yield at_value(catalog, product.id, (*path, "batteries"), RULE, told, tip)


def _batteries(basis: WeightBasis, kind: str) -> tuple[str, str]:
    if kind == "plain pedal":
        return f"a plain pedal has no batteries to be {basis.batteries}", "write not applicable"
    return "a power pedal is weighed with its batteries in or out", "write in, out or unknown"


def _listed(weights: object) -> tuple[WeightFigure, ...]:
    return weights if isinstance(weights, tuple) else ()
