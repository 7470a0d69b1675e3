"""file-name: a product's file is called by its id, so that a page, an address and a file say the same.

PASS: `id: skerry-duo` in products/skerry-duo.yaml
FAIL: `id: skerry-duo` in products/skerry-two.yaml
"""

from collections.abc import Iterator
from pathlib import PurePosixPath

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each product file whose name is not its id."""
    for product, document in ((p, catalog.documents[p]) for p in catalog.products if p in catalog.documents):
        stem = PurePosixPath(document.name).stem
        if stem != product:
            tip = f"write id: {stem}, or rename the file to {product}.yaml"
            yield at_value(
                catalog, product, ("id",), "file-name", f"is {product}, the file is {stem}.yaml", tip
            )
