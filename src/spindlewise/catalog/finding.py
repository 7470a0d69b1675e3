"""Findings: how a rule says what it found, at the place in the file where it stands."""

import csv
import io
from collections.abc import Iterator

from spindlewise.catalog.by_columns import ByColumns
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.document import Path, dotted
from spindlewise.catalog.model import DatedPrice
from spindlewise.catalog.observation import Observation, Observations
from spindlewise.catalog.price_row import HEADER, PriceRow
from spindlewise.catalog.product import Battery, Product, Service
from spindlewise.problems import Level, Place, Problem


def at_value(
    catalog: Catalog, document: str, path: Path, rule: str, message: str, tip: str, level: Level = "error"
) -> Problem:
    """A finding at a value of a YAML file; `document` is a product's id or a name such as criteria.yaml."""
    found = catalog.documents.get(document)
    if len(path) > 2 and path[0] == "observations":
        moved = catalog.added.get((document, str(path[1]), int(path[2])))
        if moved is not None:
            found, path = moved[0], (*moved[1], *path[3:])
    field = dotted(path)
    place = found.place(path) if found else None
    return Problem(place, level, rule, f"{field}: {message}", tip, field)


def at_price(
    catalog: Catalog, row: PriceRow, column: str, rule: str, message: str, tip: str, level: Level = "error"
) -> Problem:
    """A finding at a field of the price log; quotes count as our own writer writes them."""
    before = row.cells()[: HEADER.index(column)]
    text = io.StringIO()
    csv.writer(text, lineterminator="").writerow(before)
    place = Place(
        (catalog.folder / "prices.csv").as_posix(), row.line, len(text.getvalue()) + 1 + bool(before)
    )
    return Problem(place, level, rule, f"{column}: {message}", tip, column)


def observed(product: Product) -> Iterator[tuple[str, int, Observation]]:
    """Every observation of the product with its attribute and its position in that list."""
    for attribute in Observations.model_fields:
        series = getattr(product.observations, attribute)
        if not isinstance(series, str):
            for index, observation in enumerate(series):
                yield attribute, index, observation


def side_prices(product: Product) -> Iterator[tuple[Path, DatedPrice]]:
    """Every price of cells and upkeep with its path."""
    if isinstance(product.battery, Battery) and not isinstance(product.battery.spare_prices, str):
        for index, price in enumerate(product.battery.spare_prices):
            yield ("battery", "spare_prices", index), price
    if isinstance(product.service, Service) and not isinstance(product.service.prices, str):
        for index, price in enumerate(product.service.prices):
            yield ("service", "prices", index), price


def first_days(catalog: Catalog) -> dict[tuple[str, str], PriceRow]:
    """The earliest row of the log for each region and currency."""
    if isinstance(catalog.prices, ByColumns):
        return catalog.prices.earliest()
    first: dict[tuple[str, str], PriceRow] = {}
    for row in catalog.prices:
        key = row.region, row.currency
        if key not in first or row.date < first[key].date:
            first[key] = row
    return first
