"""The data beside the pages: products and prices as CSV and JSON, as they stood on the day."""

from typing import Any

from spindlewise.answer.claims import weight_standing
from spindlewise.answer.desk import Desk
from spindlewise.answer.figures import unpriced_standings
from spindlewise.answer.reply import Reply
from spindlewise.catalog.as_of import standing_notices, state
from spindlewise.catalog.price_row import HEADER
from spindlewise.catalog.product import Product
from spindlewise.render.as_csv import as_csv
from spindlewise.render.as_json import Json, lined_json
from spindlewise.render.json_rank import SCHEMA, rank_json

FIGURES = (("weight", "g"), ("stack", "mm"), ("running_time", "h"), ("warranty", "years"))


def products_csv(desk: Desk) -> bytes:
    """One line a product: what it is and the figures that count, each with its low, high and grade."""
    header = ["product", "maker", "name", "kind", "sides", "state", "cleat_bolts", "safety_notices"]
    for name, unit in FIGURES:
        header += [
            f"{name}_{unit}",
            f"{name}_low_{unit}",
            f"{name}_high_{unit}",
            f"{name}_grade",
            f"{name}_date",
        ]
    rows = [_product_cells(desk, product) for product in desk.catalog.products.values()]
    return as_csv(header, rows).encode()


def _product_cells(desk: Desk, product: Product) -> list[str]:
    cells = [
        product.id,
        product.maker,
        product.name,
        product.kind,
        product.sides,
        state(product, desk.day),
        product.cleat.bolts,
        str(len(standing_notices(product, desk.day))),
    ]
    day = desk.day
    weight = weight_standing(product, day, desk.record)
    standings = {"weight": weight, **unpriced_standings(product, day)}
    for name, _ in FIGURES:
        standing = standings[name]
        numbers = [standing.value, standing.low, standing.high]
        dated = standing.date.isoformat() if standing.date else ""
        cells += ["" if n is None else str(n) for n in numbers] + [standing.origin, dated]
    return cells


def prices_csv(desk: Desk) -> bytes:
    """The price log up to the day, in its own columns and order."""
    rows = [row.cells() for row in desk.catalog.prices if row.date <= desk.day]
    return as_csv(HEADER, rows).encode()


def products_json(desk: Desk) -> bytes:
    """Every product with all that was dated on or before the day."""
    day = desk.day.isoformat()
    found = [
        _by_day(product.model_dump(mode="json", by_alias=True), day)
        for product in desk.catalog.products.values()
    ]
    whole: dict[str, Json] = {"as_of": day, "invented": desk.catalog.settings.invented, "products": found}
    return lined_json("spindlewise products 1", whole).encode()


def ranking_json(reply: Reply) -> bytes:
    """One buyer's ranking, in the keys that `rank --json` has."""
    return lined_json(SCHEMA, rank_json(reply.ranking, reply.break_evens)).encode()


def _by_day(value: Any, day: str) -> Any:
    """The record without entries of lists that are dated after the day; promises carry no day and stay."""
    if isinstance(value, dict):
        return {key: _by_day(inner, day) for key, inner in value.items()}
    if isinstance(value, list):
        return [_by_day(entry, day) for entry in value if not _later(entry, day)]
    return value


def _later(entry: Any, day: str) -> bool:
    dated = entry.get("date", entry.get("since")) if isinstance(entry, dict) else None
    return isinstance(dated, str) and dated[:1].isdigit() and dated > day
