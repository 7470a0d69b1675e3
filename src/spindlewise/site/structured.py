"""A product for machines that read pages: schema.org Product and Offer, saying what the page says."""

from datetime import date
from typing import Any

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.figure import Known, weight_g
from spindlewise.catalog.price_log import prices_in_force
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.price_rows import rows_of
from spindlewise.catalog.product import Product
from spindlewise.units import amount_text

CONTEXT = "https://schema.org"
GRAM = "GRM"
"""The gram in UN/ECE Recommendation 20, as schema.org wants units."""


def product_data(catalog: Catalog, product: Product, day: date) -> dict[str, Any]:
    """The product with every price in force on the day; no rating, for nobody rates here.

    An expired price is no offer. Where the catalog is invented, the product says so itself.
    """
    found: dict[str, Any] = {
        "@context": CONTEXT,
        "@type": "Product",
        "name": f"{product.maker} {product.name}",
        "brand": {"@type": "Brand", "name": product.maker},
        "category": product.kind,
        "description": product.summary,
        "productID": product.id,
    }
    invented = catalog.settings.invented
    if invented != "no":
        found["disambiguatingDescription"] = f"Demonstration only. {invented}"
    weight = weight_g(product, day)
    if isinstance(weight, Known):
        found["weight"] = {"@type": "QuantitativeValue", "value": weight.value, "unitCode": GRAM}
    own = rows_of(catalog.prices, product.id)
    offers = [
        _offer(row, facts.name)
        for code, facts in catalog.settings.regions.items()
        for row in prices_in_force(own, code, day).get(product.id, ())
    ]
    if offers:
        found["offers"] = offers
    return found


def _offer(row: PriceRow, region: str) -> dict[str, Any]:
    price = amount_text(row.amount, row.currency)
    specification: dict[str, Any] = {
        "@type": "UnitPriceSpecification",
        "price": price,
        "priceCurrency": row.currency,
        "valueAddedTaxIncluded": row.tax == "in",
    }
    if row.kind == "list":
        specification["priceType"] = f"{CONTEXT}/ListPrice"
    offer: dict[str, Any] = {
        "@type": "Offer",
        "price": price,
        "priceCurrency": row.currency,
        "priceSpecification": specification,
        "validFrom": row.date.isoformat(),
        "seller": {"@type": "Organization", "name": row.seller},
        "eligibleRegion": {"@type": "Place", "name": region},
    }
    if row.valid_until:
        offer["priceValidUntil"] = row.valid_until.isoformat()
    return offer
