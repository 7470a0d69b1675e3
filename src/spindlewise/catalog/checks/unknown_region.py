"""unknown-region: every price stands in a region that catalog.yaml names.

PASS: `region: EU` under a side price, with EU under `regions` of catalog.yaml
FAIL: `2026-03-01,skerry-duo,EUR,EUR,899.00,…`
"""

from collections.abc import Iterable, Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_price, at_value, side_prices
from spindlewise.catalog.price_rows import rows_not_among
from spindlewise.problems import Problem, nearest, quoted

RULE = "unknown-region"


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each price, of products or of cells and upkeep, in a region that the catalog does not know."""
    regions = catalog.settings.regions
    for row in rows_not_among(catalog.prices, "region", regions):
        yield at_price(catalog, row, "region", RULE, *_words(row.region, regions))
    for product in catalog.products.values():
        for path, price in side_prices(product):
            if price.region not in regions:
                yield at_value(catalog, product.id, (*path, "region"), RULE, *_words(price.region, regions))


def _words(region: str, regions: Iterable[str]) -> tuple[str, str]:
    known = sorted(regions)
    near = nearest(region, known)
    tip = f"did you mean {near}?" if near else f"write one of: {', '.join(known)}; or add it to catalog.yaml"
    return f"no region {quoted(region)}", tip
