"""detail-steps: the criterion detail gives a merit to each step that may arrive, by its exact name.

PASS: all of `STEPS`, each with a merit
FAIL: `both sides: 1` in place of `power only: 0.65`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem, nearest, quoted

STEPS = (
    "power, balance and stroke metrics",
    "power and balance",
    "power only",
    "one side doubled",
    "one side only",
    "nothing",
    "unknown",
)
RULE = "detail-steps"


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each step that is missing, and each that nothing ever arrives as."""
    steps = catalog.criteria.criteria.detail.steps
    path = ("criteria", "detail", "steps")
    missing = [step for step in STEPS if step not in steps]
    for name in steps:
        if name not in STEPS:
            near = nearest(name, missing)
            tip = f"did you mean {near}?" if near else "take it out"
            yield at_value(
                catalog, "criteria.yaml", (*path, name), RULE, f"no such step as {quoted(name)}", tip
            )
    if missing:
        told = f"no merit for {', '.join(quoted(step) for step in missing)}"
        yield at_value(catalog, "criteria.yaml", path, RULE, told, "add a line for each, from 0 to 1")
