"""What a part of the site rests on, as a digest: while that is the same, so are its pages."""

import hashlib
from collections.abc import Iterable, Mapping
from datetime import date
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from sys import version as python

from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.file_digest import FileDigest, digests
from spindlewise.catalog.price_row import PriceRow

PACKAGE = Path(__file__).parents[1]
LIBRARIES = ("altair", "jinja2", "markupsafe", "numpy", "pydantic", "scipy", "vl-convert-python")
"""What decides, beside our own code, which bytes a page has."""
DECODER = "fitdecode"
"""Reads recordings of the bench where it is installed."""


class RestsOn:
    """Digests of a catalog on a day with its buyers: of all but prices, and of prices by whom they concern.

    They are of what was read into memory, so that a file that changes while pages are made is not taken for
    what they were made from; of the bench, whose recordings are read while pages are made, they are of the
    files as they stand now. Raises OSError where a file of the bench or of the program cannot be read.
    """

    def __init__(self, catalog: Catalog, buyers: Mapping[str, Buyer], day: date) -> None:
        self.bench = bench_digests(digests(catalog.folder))
        parts: list[object] = [program(), day, catalog.settings, catalog.criteria]
        parts += [catalog.rates.rows, catalog.taxes.rows, sorted(catalog.bench_files), self.bench]
        parts += [*sorted(catalog.products.items()), *sorted(buyers.items())]
        self._base = _digest(repr(part) for part in parts)
        self._prices = catalog.prices
        by_region: dict[str, list[PriceRow]] = {}
        by_product: dict[str, list[PriceRow]] = {}
        for row in catalog.prices:
            by_region.setdefault(row.region, []).append(row)
            by_product.setdefault(row.product, []).append(row)
        self._by_region, self._by_product = by_region, by_product

    def all_but_prices(self, *more: object) -> str:
        """Everything but the price log, and whatever more is named."""
        return _digest([self._base, *map(repr, more)])

    def prices_in(self, region: str) -> str:
        """Everything, of the prices those in one region."""
        return self.all_but_prices("region", region, self._by_region.get(region, ()))

    def prices_of(self, product: str, *more: object) -> str:
        """Everything, of the prices those of one product; and whatever more is named."""
        return self.all_but_prices("product", product, self._by_product.get(product, ()), *more)

    @property
    def all(self) -> str:
        """Everything."""
        return self.all_but_prices("all", tuple(self._prices))


def bench_digests(files: Mapping[str, FileDigest]) -> dict[str, FileDigest]:
    """Those of a catalog's files that belong to its bench."""
    return {name: digest for name, digest in files.items() if name.startswith("bench/")}


@cache
def program() -> str:
    """A digest of all code, templates and styles of the package, and of the libraries that make pages."""
    files = (path for path in sorted(PACKAGE.rglob("*")) if path.suffix != ".pyc" and path.is_file())
    texts = (
        f"{path.relative_to(PACKAGE).as_posix()} {hashlib.sha256(path.read_bytes()).hexdigest()}"
        for path in files
    )
    return _digest([python, *(version(name) for name in LIBRARIES), _version_of_decoder(), *texts])


def _version_of_decoder() -> str:
    try:
        return version(DECODER)
    except PackageNotFoundError:
        return "none"


def _digest(parts: Iterable[str]) -> str:
    found = hashlib.sha256()
    for part in parts:
        data = part.encode(errors="surrogatepass")
        # each with its length, so that no two lists run into the same bytes
        found.update(len(data).to_bytes(8, "big"))
        found.update(data)
    return found.hexdigest()
