"""region-tax: each region has a tax rate dated no later than its first price, so that tax can be added.

PASS: `2025-01-01,EU,20,in` in taxes.csv, the first EU price of 2025-05-15
FAIL: `2025-06-01,EU,20,in` in taxes.csv, the first EU price of 2025-05-15
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_price, first_days
from spindlewise.catalog.price_row import PriceRow
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """The first price row of each region that no tax rate covers."""
    first: dict[str, PriceRow] = {}
    for (region, _), row in first_days(catalog).items():
        if region not in first or row.date < first[region].date:
            first[region] = row
    for region, row in sorted(first.items()):
        if region in catalog.settings.regions and catalog.taxes.rate(region, row.date) is None:
            told = f"{region} has no tax rate dated on or before {row.date.isoformat()}"
            yield at_price(catalog, row, "region", "region-tax", told, f"add one for {region} to taxes.csv")
