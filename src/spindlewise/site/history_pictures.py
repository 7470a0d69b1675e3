"""A product's price history as one picture for each region."""

from datetime import date

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.price_rows import rows_of
from spindlewise.site.chart_prices import History, offers, price_picture
from spindlewise.site.picture import Picture


def history_pictures(catalog: Catalog, product: str, day: date) -> dict[str, Picture]:
    """By region, the offers in the region's own currency; none where fewer than two prices were seen."""
    named = catalog.products[product]
    found = {}
    for code, facts in catalog.settings.regions.items():
        rows = [row for row in rows_of(catalog.prices, product) if row.region == code]
        shown = History(facts.currency, day, offers(rows, day, facts.currency))
        picture = price_picture(f"prices-{code.lower()}", f"{named.maker} {named.name}", facts.name, shown)
        if picture:
            found[code] = picture
    return found
