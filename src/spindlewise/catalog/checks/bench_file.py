"""bench-file: a measured observation that names a file of the bench names one that is there.

PASS: `source: bench/weighings.csv, 2026-03-12` with that file in the catalog
FAIL: `source: bench/weighing.csv, 2026-03-12`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value, observed
from spindlewise.problems import Problem, nearest, quoted


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each source that begins with bench/ and names no file there."""
    for product in catalog.products.values():
        for attribute, index, observation in observed(product):
            named = observation.source.split(",")[0].split(";")[0].strip()
            if not named.startswith("bench/") or named in catalog.bench_files:
                continue
            near = nearest(named, sorted(catalog.bench_files))
            tip = f"did you mean {near}?" if near else "add the file, or write where the figure comes from"
            path = ("observations", attribute, index, "source")
            yield at_value(catalog, product.id, path, "bench-file", f"no file {quoted(named)}", tip)
