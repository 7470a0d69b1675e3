"""Puts what the bench keeps in files of its own beside what stands in the products' files.

An author's file is never rewritten: the figures meet here, each with the place where it stands.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from spindlewise.catalog.bench_files import FOLDER
from spindlewise.catalog.bench_record import BenchFigures, BenchRecord
from spindlewise.catalog.document import Document
from spindlewise.catalog.document import Path as Way
from spindlewise.catalog.product import Product
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.problems import Place, Problem, nearest, quoted

Added = Mapping[tuple[str, str, int], tuple[Document, Way]]
"""By product, attribute and position among its observations: the document and the way to it there."""


@dataclass(frozen=True, slots=True)
class BenchRecords:
    """The products with the bench's observations after their own, where those stand, and all problems."""

    products: dict[str, Product]
    added: Added
    problems: list[Problem]


def with_bench_records(
    folder: Path, products: Mapping[str, Product], unread: frozenset[str], files: frozenset[str]
) -> BenchRecords:
    """Read every record of the catalog's bench, in order of name, and add what it says to its product.

    `unread` are products whose own file could not be read: what is said of them is passed over. `files` are
    the catalog's bench files, against which the recordings are held.
    """
    found = BenchRecords(dict(products), {}, [])
    added: dict[tuple[str, str, int], tuple[Document, Way]] = {}
    for name in sorted(file for file in files if file.startswith(f"{FOLDER}/")):
        path = folder / name
        if path.suffix != ".yaml" or path.parent != folder / FOLDER:
            tip = "give it the ending .yaml and put it into this folder itself, or move it out"
            told = f"{path.name} is no file of observations and is not read"
            found.problems.append(Problem(Place(path.as_posix(), 1, 1), "error", "stray-file", told, tip))
            continue
        document, problems = read_yaml(path, path.as_posix())
        found.problems.extend(problems)
        if document is None:
            continue
        record, problems = validate(BenchRecord, document)
        found.problems.extend(problems)
        if record is not None and record.product not in unread:
            found.problems.extend(_faults(record, document, found.products, files))
            if record.product in found.products:
                own = found.products[record.product]
                found.products[record.product] = _with(own, record, document, added)
    return BenchRecords(found.products, added, found.problems)


def _with(
    product: Product,
    record: BenchRecord,
    document: Document,
    added: dict[tuple[str, str, int], tuple[Document, Way]],
) -> Product:
    changes = {}
    for attribute in BenchFigures.model_fields:
        entries = getattr(record.observations, attribute)
        series = getattr(product.observations, attribute)
        own = () if isinstance(series, str) else series
        if not entries or series == "not applicable":
            continue
        changes[attribute] = (*own, *entries)
        for index in range(len(entries)):
            added[product.id, attribute, len(own) + index] = (document, ("observations", attribute, index))
    observations = product.observations.model_copy(update=changes)
    return product.model_copy(update={"observations": observations})


def _faults(
    record: BenchRecord, document: Document, products: Mapping[str, Product], files: frozenset[str]
) -> list[Problem]:
    said = []
    product = products.get(record.product)
    if product is None:
        near = nearest(record.product, products)
        tip = f"did you mean {near}?" if near else "name a product of this catalog"
        told = f"product: the catalog has no {quoted(record.product)}"
        said.append(_problem(document, ("product",), "unknown-product", told, tip))
    for index, raw in enumerate(record.recordings):
        if raw.file not in files:
            near = nearest(raw.file, sorted(files))
            tip = f"did you mean {near}?" if near else "put the recording back"
            way: Way = ("recordings", index, "file")
            told = f"recordings[{index}].file: no file {quoted(raw.file)}"
            said.append(_problem(document, way, "bench-file", told, tip))
    for attribute in BenchFigures.model_fields:
        entries = getattr(record.observations, attribute)
        way = ("observations", attribute)
        if entries and product and getattr(product.observations, attribute) == "not applicable":
            told = f"observations.{attribute}: the file of {record.product} says not applicable"
            said.append(_problem(document, way, "bench-not-applicable", told, "correct one of the two"))
        for index, entry in enumerate(entries):
            if entry.grade != "measured":
                told = (
                    f"observations.{attribute}[{index}].grade: found {quoted(entry.grade)}; allowed: measured"
                )
                tip = "what others say stands in the product's own file"
                said.append(_problem(document, (*way, index, "grade"), "bench-grade", told, tip))
    return said


def _problem(document: Document, way: Way, rule: str, told: str, tip: str) -> Problem:
    field = told.partition(":")[0]
    return Problem(document.place(way), "error", rule, told, tip, field)
