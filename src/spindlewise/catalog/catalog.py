"""A whole catalog in memory: what is known, before anybody asks."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path as FilePath

from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.document import Path
from spindlewise.catalog.money import RateTable, TaxTable
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.product import Product
from spindlewise.catalog.settings import Settings
from spindlewise.catalog.yaml_text import Document


@dataclass(frozen=True, slots=True)
class Catalog:
    """Products by id, in order of id; `documents` keep each value's place, by product id or file name."""

    folder: FilePath
    settings: Settings
    criteria: Criteria
    products: Mapping[str, Product]
    prices: Sequence[PriceRow]
    rates: RateTable
    taxes: TaxTable
    documents: Mapping[str, Document]
    bench_files: frozenset[str] = frozenset()
    """The files of the bench, as measured observations name them: 'bench/weighings.csv'."""
    unread: frozenset[str] = frozenset()
    """Ids of product files that hold no readable product: to mention one of them is no second mistake."""
    added: Mapping[tuple[str, str, int], tuple[Document, Path]] = field(default_factory=dict)
    """Observations that stand in files of the bench, by product, attribute and position: where they do."""
