"""successor: a superseded product names what took its place, and that is another product of the catalog.

PASS: `state: superseded` with `superseded_by: skerry-2`, or `superseded_by: unknown`
FAIL: `state: superseded` without `superseded_by`, or with the id of no product
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem, nearest

RULE = "successor"


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each status whose successor is missing, unknown to the catalog or the product itself."""
    known = {*catalog.products, *catalog.unread}
    for product in catalog.products.values():
        for index, status in enumerate(product.statuses):
            named = status.superseded_by
            path = ("statuses", index, "superseded_by")
            if named == "not applicable":
                if status.state == "superseded":
                    told = "what is superseded has a successor"
                    path = ("statuses", index, "state")
                    yield at_value(
                        catalog, product.id, path, RULE, told, "add superseded_by: its id, or unknown"
                    )
            elif named == product.id:
                yield at_value(
                    catalog, product.id, path, RULE, "a product cannot take its own place", "name another"
                )
            elif named != "unknown" and named not in known:
                near = nearest(named, sorted(known - {product.id}))
                tip = (
                    f"did you mean {near}?"
                    if near
                    else "write the id of a product of this catalog, or unknown"
                )
                yield at_value(catalog, product.id, path, RULE, f"no product '{named}'", tip)
