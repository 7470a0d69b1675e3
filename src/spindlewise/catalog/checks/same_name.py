"""same-name: no two products of one maker have one name, since nobody could tell them apart on a page.

PASS: `name: Skerry Duo` and `name: Skerry Solo`
FAIL: `name: Skerry` in two files of one maker
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each product whose maker and name an earlier one has already."""
    first: dict[tuple[str, str], str] = {}
    for product in catalog.products.values():
        other = first.setdefault((product.maker.casefold(), product.name.casefold()), product.id)
        if other != product.id:
            told = f"{product.maker} {product.name} is the name of {other} too"
            tip = "add what tells them apart, such as the side or the year"
            yield at_value(catalog, product.id, ("name",), "same-name", told, tip)
