"""side-price-digits: a price of cells or upkeep has no more decimals than its currency.

PASS: `currency: EUR` with `amount: 2.40`; `currency: JPY` with `amount: 480`
FAIL: `currency: JPY` with `amount: 480.5`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value, side_prices
from spindlewise.problems import Problem
from spindlewise.units import amount_text, minor_digits, to_minor_unit


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each side price that no till could take."""
    for product in catalog.products.values():
        for path, price in side_prices(product):
            if to_minor_unit(price.amount, price.currency) != price.amount:
                digits = minor_digits(price.currency)
                told = f"{price.amount:f} has more decimals than {price.currency} has ({digits})"
                tip = f"write {amount_text(price.amount, price.currency)}"
                yield at_value(catalog, product.id, (*path, "amount"), "side-price-digits", told, tip)
