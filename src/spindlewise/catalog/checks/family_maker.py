"""family-maker: one family is one pedal in variants, so its products share maker and kind.

PASS: skerry-duo and skerry-solo, both `family: skerry` and `maker: Holmvik`
FAIL: `family: skerry` on a Holmvik pedal and on an Ostrand one
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.catalog.product import Product
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each product that differs in maker or kind from the first of its family."""
    first: dict[str, Product] = {}
    for product in catalog.products.values():
        if product.family == "none":
            continue
        other = first.setdefault(product.family, product)
        for key in ("maker", "kind"):
            here, there = getattr(product, key), getattr(other, key)
            if here != there:
                told = f"is {product.family}, whose {other.id} has {key} {there}, not {here}"
                tip = f"write the same {key} in both, or give this product another family or none"
                yield at_value(catalog, product.id, ("family",), "family-maker", told, tip)
