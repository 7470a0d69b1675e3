"""status-order: a product's statuses stand in the order of their days, each day once.

PASS: current since 2024-02-01, then superseded since 2026-03-01
FAIL: superseded since 2026-03-01, then current since 2024-02-01
"""

from collections.abc import Iterator
from itertools import pairwise

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each status dated on or before the one above it."""
    for product in catalog.products.values():
        for index, (before, status) in enumerate(pairwise(product.statuses), start=1):
            if status.since <= before.since:
                told = f"{status.since.isoformat()} does not come after {before.since.isoformat()} above it"
                tip = "sort them by day, each day once"
                yield at_value(catalog, product.id, ("statuses", index, "since"), "status-order", told, tip)
