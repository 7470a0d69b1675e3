"""stack-basis: a stack height says from where to where, else it is ambiguous by a cleat (warning).

PASS: `basis: {span: axis to pedal top}`
FAIL: `basis: {span: unknown}`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each stack height of unknown span."""
    for product in catalog.products.values():
        stacks = product.observations.stack_mm
        for index, stack in enumerate(() if isinstance(stacks, str) else stacks):
            if stack.basis.span == "unknown":
                told = "unknown: this stack height moves no saddle"
                tip = "ask whoever stated it: to the pedal top, or to the sole with the cleat in"
                path = ("observations", "stack_mm", index, "basis", "span")
                yield at_value(catalog, product.id, path, "stack-basis", told, tip, "warning")
