"""promised-firmware: what is promised comes with some firmware, known or not.

PASS: `since: promised` with `firmware: "2.0"` or `firmware: unknown`
FAIL: `since: promised` with `firmware: not applicable`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each promise that is said to need no firmware."""
    for product in catalog.products.values():
        for which, link in enumerate(() if isinstance(product.links, str) else product.links):
            for index, said in enumerate(link.carries):
                if said.since == "promised" and said.firmware == "not applicable":
                    path = ("links", which, "carries", index, "firmware")
                    told = "a promise cannot have been there from the start"
                    tip = "write the version that was announced, in quotes, or unknown"
                    yield at_value(catalog, product.id, path, "promised-firmware", told, tip)
