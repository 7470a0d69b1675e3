"""Opens a catalog folder: every file read, every problem of every file reported in one go."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.checks import registry
from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.money import read_rates, read_taxes
from spindlewise.catalog.price_log import read_price_log
from spindlewise.catalog.product import Product
from spindlewise.catalog.settings import Settings
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import Document, read_yaml
from spindlewise.problems import Place, Problem, sorted_problems

M = TypeVar("M", bound=BaseModel)
Progress = Callable[[Iterable[Path], int], Iterable[Path]]


def read_record(model: type[M], path: Path) -> tuple[M | None, Document | None, list[Problem]]:
    """One YAML file as one record, with its document and all its problems."""
    document, problems = read_yaml(path, path.as_posix())
    if document is None:
        return None, None, problems
    record, more = validate(model, document)
    return record, document, [*problems, *more]


def _silent(paths: Iterable[Path], _total: int) -> Iterable[Path]:
    return paths


def open_catalog(folder: Path, progress: Progress = _silent) -> tuple[Catalog | None, list[Problem]]:
    """The catalog and all its problems, in order of file and line; no catalog where an error stands in it.

    `progress` may wrap the list of product files to show how far the reading has come.
    """
    missing = [name for name in ("catalog.yaml", "criteria.yaml") if not (folder / name).is_file()]
    if missing:
        tip = "name a catalog folder with --catalog, or begin one with `spindlewise new catalog`"
        place = Place(folder.as_posix(), 1, 1)
        return None, [Problem(place, "error", "no-catalog", f"no {' and no '.join(missing)} here", tip)]
    documents: dict[str, Document] = {}
    problems: list[Problem] = []
    settings, document, found = read_record(Settings, folder / "catalog.yaml")
    problems += found
    if document:
        documents["catalog.yaml"] = document
    criteria, document, found = read_record(Criteria, folder / "criteria.yaml")
    problems += found
    if document:
        documents["criteria.yaml"] = document
    products: dict[str, Product] = {}
    paths = sorted((folder / "products").glob("*.yaml"))
    if not paths:
        place = Place((folder / "products").as_posix(), 1, 1)
        problems.append(
            Problem(
                place, "error", "no-products", "no product files here", "add one: spindlewise new product"
            )
        )
    for path in progress(paths, len(paths)):
        product, document, found = read_record(Product, path)
        problems += found
        if product is None or document is None:
            continue
        if product.id in products:
            first = documents[product.id].name
            problems.append(
                Problem(
                    document.places[("id",)],
                    "error",
                    "duplicate-id",
                    f"id {product.id} stands in {first} already",
                    "give each product its own id",
                )
            )
            continue
        products[product.id] = product
        documents[product.id] = document
    prices, found = read_price_log(folder / "prices.csv", (folder / "prices.csv").as_posix())
    problems += found
    rates, found = read_rates(folder / "rates.csv", (folder / "rates.csv").as_posix())
    problems += found
    taxes, found = read_taxes(folder / "taxes.csv", (folder / "taxes.csv").as_posix())
    problems += found
    if settings is None or criteria is None:
        return None, sorted_problems(problems)
    catalog = Catalog(
        folder=folder,
        settings=settings,
        criteria=criteria,
        products=dict(sorted(products.items())),
        prices=tuple(prices),
        rates=rates,
        taxes=taxes,
        documents=documents,
    )
    for check in registry.CHECKS:
        problems += check(catalog)
    broken = any(p.level == "error" for p in problems)
    return (None if broken else catalog), sorted_problems(problems)
