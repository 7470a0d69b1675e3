"""missing-rate: a price in a foreign currency can be converted on its own day, else it is no price (warning).

PASS: a GBP price in EU, and `2025-01-01,EUR,GBP,0.8460` in rates.csv
FAIL: a GBP price in EU, and no rate from GBP to EUR
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_price, at_value, first_days, side_prices
from spindlewise.problems import Problem

RULE = "missing-rate"


def check(catalog: Catalog) -> Iterator[Problem]:
    """The first row of each region and currency, and each side price, that cannot be converted."""
    regions = catalog.settings.regions
    for (region, currency), row in sorted(first_days(catalog).items(), key=lambda item: item[0]):
        day = row.date
        own = regions[region].currency if region in regions else currency
        if currency != own and catalog.rates.newest(currency, own, day) is None:
            told = f"no rate between {currency} and {own} dated on or before {day.isoformat()}"
            yield at_price(catalog, row, "currency", RULE, told, "add one to rates.csv", "warning")
    for product in catalog.products.values():
        for path, price in side_prices(product):
            own = regions[price.region].currency if price.region in regions else price.currency
            if price.currency != own and catalog.rates.newest(price.currency, own, price.date) is None:
                told = (
                    f"no rate between {price.currency} and {own} dated on or before {price.date.isoformat()}"
                )
                where = (*path, "currency")
                yield at_value(catalog, product.id, where, RULE, told, "add one to rates.csv", "warning")
