"""one-sided-power: a product that measures one side sends neither both sides nor a balance.

PASS: `sides: left` with power `one side doubled`
FAIL: `sides: left` with power `both sides`, or with balance `carried`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each statement of a one-sided product that takes two measured sides."""
    for product in catalog.products.values():
        if product.sides not in ("left", "right") or isinstance(product.links, str):
            continue
        for which, link in enumerate(product.links):
            for index, said in enumerate(link.carries):
                two = said.what == "power" and said.how in ("both sides", "two channels")
                if two or (said.what == "balance" and said.how == "carried"):
                    path = ("links", which, "carries", index, "how")
                    told = f"{said.what} {said.how}, yet the product measures the {product.sides} side only"
                    tip = "correct this, or sides"
                    yield at_value(catalog, product.id, path, "one-sided-power", told, tip)
