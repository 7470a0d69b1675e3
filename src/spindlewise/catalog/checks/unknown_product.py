"""unknown-product: a price row names a product that is in the catalog.

PASS: `2026-03-01,skerry-duo,EU,…` with products/skerry-duo.yaml
FAIL: `2026-03-01,skery-duo,EU,…`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_price
from spindlewise.catalog.price_rows import rows_not_among
from spindlewise.problems import Problem, nearest, quoted


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each price row of a product that has no file; a file that could not be read is mistake enough."""
    known = {*catalog.products, *catalog.unread}
    for row in rows_not_among(catalog.prices, "product", known):
        near = nearest(row.product, sorted(known))
        tip = f"did you mean {near}?" if near else f"add products/{row.product}.yaml, or take the row out"
        yield at_price(catalog, row, "product", "unknown-product", f"no product {quoted(row.product)}", tip)
