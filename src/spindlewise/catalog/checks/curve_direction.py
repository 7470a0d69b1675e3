"""curve-direction: no value curve rewards what nobody wants, such as paying more or running shorter.

PASS: price knots 200 to 1 and 900 to 0.2
FAIL: price knots 200 to 0.5 and 900 to 0.8
"""

from collections.abc import Iterator
from itertools import pairwise

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem

FALLING = ("price", "ownership", "weight", "reading_uncertainty")
RISING = ("running_time", "warranty")
"""Stack height is left out: which is better there is a matter of taste."""


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each knot at which a curve turns the wrong way; the search for break-even prices relies on this."""
    for criterion in (*FALLING, *RISING):
        knots = getattr(catalog.criteria.criteria, criterion).knots
        for index, (one, two) in enumerate(pairwise(knots), start=1):
            wrong = two.merit > one.merit if criterion in FALLING else two.merit < one.merit
            if wrong:
                verb = "rises" if criterion in FALLING else "falls"
                told = f"the merit {verb} from {one.merit:g} to {two.merit:g} as the figure grows"
                path = ("criteria", criterion, "knots", index, "merit")
                tip = f"write at {'most' if criterion in FALLING else 'least'} {one.merit:g}"
                yield at_value(catalog, "criteria.yaml", path, "curve-direction", told, tip)
