"""Which products a day touches: everything in a catalog that carries the day's date, or ends before it."""

from dataclasses import dataclass
from datetime import date, timedelta

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import Product
from spindlewise.catalog.product_days import product_days


@dataclass(frozen=True, slots=True)
class Touched:
    """What is not as it was the day before. All other products have the figures and prices that they had."""

    everything: bool
    """Rates, taxes and weights reach every product, weights through the record of claims."""
    products: frozenset[str]
    priced: frozenset[tuple[str, str]]
    """Product and region of each price that was seen or ran out."""

    def in_region(self, region: str) -> frozenset[str]:
        """The products that may have changed for whoever buys in a region."""
        return self.products | {product for product, where in self.priced if where == region}


def touched(catalog: Catalog, since: date, day: date) -> dict[date, Touched]:
    """By day, in order, what each day after `since` and up to `day` touches; other days touch nothing."""
    everything = {rate.date for rate in catalog.rates.rows} | {tax.date for tax in catalog.taxes.rows}
    products: dict[date, set[str]] = {}
    for product in catalog.products.values():
        for when in product_days(product):
            products.setdefault(when, set()).add(product.id)
        everything.update(_weighed(product))
    priced: dict[date, set[tuple[str, str]]] = {}
    for row in catalog.prices:
        ends = () if row.valid_until is None else (row.valid_until + timedelta(1),)
        for when in (row.date, *ends):
            if row.product in catalog.products:
                priced.setdefault(when, set()).add((row.product, row.region))
    days = sorted(when for when in {*everything, *products, *priced} if since < when <= day)
    return {
        when: Touched(when in everything, frozenset(products.get(when, ())), frozenset(priced.get(when, ())))
        for when in days
    }


def _weighed(product: Product) -> set[date]:
    weights = product.observations.weight_g
    return set() if isinstance(weights, str) else {weight.date for weight in weights}
