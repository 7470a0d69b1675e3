"""Opens a catalog folder: every file read, every problem of every file reported in one go."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel

from spindlewise.catalog.bench_files import bench_files
from spindlewise.catalog.bench_records import with_bench_records
from spindlewise.catalog.by_columns import ByColumns
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.checks import registry
from spindlewise.catalog.collector import collector_paused
from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.forgiven import ForgivenFile, forgive
from spindlewise.catalog.money import read_rates, read_taxes
from spindlewise.catalog.price_log import read_price_log
from spindlewise.catalog.price_rows import PriceRows
from spindlewise.catalog.product import Product
from spindlewise.catalog.reading import read_record
from spindlewise.catalog.settings import Settings
from spindlewise.catalog.yaml_text import Document
from spindlewise.problems import Place, Problem, sorted_problems

M = TypeVar("M", bound=BaseModel)
Progress = Callable[[Iterable[Path], int], Iterable[Path]]


def _silent(paths: Iterable[Path], _total: int) -> Iterable[Path]:
    return paths


def open_catalog(
    folder: Path, progress: Progress = _silent, warnings: bool = True
) -> tuple[Catalog | None, list[Problem]]:
    """The catalog and all its problems, in order of file and line; no catalog where an error stands in it.

    `progress` may wrap the list of product files to show how far the reading has come. The rules in
    `checks` see what could be read; they do not run where catalog.yaml or criteria.yaml could not. Without
    `warnings` a whole catalog comes without some of those that would take long to find.
    """
    with collector_paused():
        return _opened(folder, progress, warnings)


def _opened(folder: Path, progress: Progress, warnings: bool) -> tuple[Catalog | None, list[Problem]]:
    missing = [name for name in ("catalog.yaml", "criteria.yaml") if not (folder / name).is_file()]
    if missing:
        tip = "name a catalog folder with --catalog, or begin one with `spindlewise new catalog`"
        place = Place(folder.as_posix(), 1, 1)
        return None, [Problem(place, "error", "no-catalog", f"no {' and no '.join(missing)} here", tip)]
    problems: list[Problem] = []
    documents: dict[str, Document] = {}
    settings = _record(Settings, folder / "catalog.yaml", documents, problems)
    criteria = _record(Criteria, folder / "criteria.yaml", documents, problems)
    products, unread = _products(folder / "products", progress, documents, problems)
    prices, found = read_price_log(folder / "prices.csv", (folder / "prices.csv").as_posix())
    problems += found
    rates, found = read_rates(folder / "rates.csv", (folder / "rates.csv").as_posix())
    problems += found
    taxes, found = read_taxes(folder / "taxes.csv", (folder / "taxes.csv").as_posix())
    problems += found
    if settings is None or criteria is None:
        return None, sorted_problems(problems)
    files = bench_files(folder)
    bench = with_bench_records(folder, dict(sorted(products.items())), frozenset(unread), files)
    problems += bench.problems
    catalog = Catalog(
        folder=folder,
        settings=settings,
        criteria=criteria,
        products=bench.products,
        prices=prices if isinstance(prices, ByColumns) else PriceRows(prices),
        rates=rates,
        taxes=taxes,
        documents=documents,
        bench_files=files,
        unread=frozenset(unread),
        added=bench.added,
    )
    problems += _findings(catalog, problems, warnings or (folder / "forgiven.yaml").exists())
    if (folder / "forgiven.yaml").exists():
        listed = _record(ForgivenFile, folder / "forgiven.yaml", documents, problems)
        if listed is not None:
            problems = forgive(problems, listed, documents["forgiven.yaml"], folder)
    broken = any(p.level == "error" for p in problems)
    return (None if broken else catalog), sorted_problems(problems)


def _findings(catalog: Catalog, before: list[Problem], warnings: bool) -> list[Problem]:
    """What the rules find; where there is an error, or warnings are asked for, all of it."""
    if not warnings:
        sure = [check for check in registry.CHECKS if check not in registry.WARNINGS_ALONE]
        found = [problem for check in sure for problem in check(catalog)]
        if not any(problem.level == "error" for problem in (*before, *found)):
            return found
    return [problem for check in registry.CHECKS for problem in check(catalog)]


def _record(model: type[M], path: Path, documents: dict[str, Document], problems: list[Problem]) -> M | None:
    record, document, found = read_record(model, path)
    problems += found
    if document is not None:
        documents[path.name] = document
    return record


def _products(
    folder: Path, progress: Progress, documents: dict[str, Document], problems: list[Problem]
) -> tuple[dict[str, Product], set[str]]:
    """The products by id, and the stems of the files that hold none that could be read."""
    products: dict[str, Product] = {}
    unread: set[str] = set()
    paths = []
    for path in sorted(folder.glob("*")):
        if path.name.startswith("."):
            continue
        if path.suffix == ".yaml":
            paths.append(path)
        else:
            tip = "give it the ending .yaml, or move it out of this folder"
            told = f"{path.name} is no product file and is not read"
            problems.append(Problem(Place(path.as_posix(), 1, 1), "error", "stray-file", told, tip))
    if not paths:
        place = Place(folder.as_posix(), 1, 1)
        told, tip = "no product files here", "add one: spindlewise new product"
        problems.append(Problem(place, "error", "no-products", told, tip))
    for path in progress(paths, len(paths)):
        product, document, found = read_record(Product, path)
        problems += found
        if product is None or document is None:
            unread.add(path.stem)
        elif product.id in products:
            told = f"id: {product.id} stands in {documents[product.id].name} already"
            tip = "give each product its own id"
            place = document.places[("id",)]
            problems.append(Problem(place, "error", "duplicate-id", told, tip, "id"))
        else:
            products[product.id] = product
            documents[product.id] = document.without_data()
    return products, unread
