"""file-name: a product's file is called by its id, so that a page, an address and a file say the same."""

from collections.abc import Iterator
from pathlib import PurePosixPath

from spindlewise.catalog.catalog import Catalog
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each product file whose name is not its id."""
    for product in catalog.products:
        document = catalog.documents[product]
        stem = PurePosixPath(document.name).stem
        if stem != product:
            yield Problem(
                document.places[("id",)],
                "error",
                "file-name",
                f"id: is {product}, the file is {stem}.yaml",
                f"write id: {stem}, or rename the file to {product}.yaml",
                "id",
            )
