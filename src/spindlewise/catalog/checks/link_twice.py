"""link-twice: each protocol stands once, and within it one thing is stated once a day.

PASS: power since 2025-03-04, and power again since 2026-06-16
FAIL: two entries `protocol: ANT+`, or power twice since 2025-03-04
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.catalog.link import Link
from spindlewise.problems import Problem

RULE = "link-twice"


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each protocol and each dated statement that stands a second time."""
    for product in catalog.products.values():
        protocols: set[str] = set()
        for which, link in enumerate(() if isinstance(product.links, str) else product.links):
            if link.protocol in protocols:
                path = ("links", which, "protocol")
                told = f"{link.protocol} stands above already"
                yield at_value(catalog, product.id, path, RULE, told, "put both lists of carries into one")
            protocols.add(link.protocol)
            for index, words in _repeated(link):
                path_to_day = ("links", which, "carries", index, "since")
                yield at_value(catalog, product.id, path_to_day, RULE, words, "keep one of them")


def _repeated(link: Link) -> Iterator[tuple[int, str]]:
    stated: set[tuple[str, object]] = set()
    for index, said in enumerate(link.carries):
        if (said.what, said.since) in stated:
            yield index, f"{said.what} is stated for {said.since} above already"
        stated.add((said.what, said.since))
