"""Catalogs whose every free text is a payload, and the same catalogs with plain words in their place.

They are written as files and read again, as a catalog from somebody else is.
"""

import csv
import shutil
from collections.abc import Callable, Iterator
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from pydantic import BaseModel, ValidationError

from spindlewise.answer.asking import open_buyers
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.price_row import HEADER
from spindlewise.catalog.product import Product
from spindlewise.catalog.settings import Settings
from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.problems import render
from upgrades.kept import KEPT

Way = tuple[str | int, ...]
"""Where a value stands in a record: keys and places in lists."""
Text = Callable[[int], str]
"""The text of the n-th free field."""
DAY = date(2026, 11, 20)
DEMO = Path(__file__).parents[2] / "catalog"
PROBE = "Some other words"
MODELS: dict[str, type[BaseModel]] = {
    "product-1": Product, "buyer-1": Buyer, "catalog-1": Settings, "criteria-1": Criteria
}  # fmt: skip


def written(folder: Path, text: Text, products: int, buyers: int = 2) -> Path:
    """A catalog in `folder`: the n-th free text of the k-th product, buyer and price is `text(n + k)`."""
    for name in ("products", "buyers"):
        (folder / name).mkdir(parents=True)
    for name in ("rates.csv", "taxes.csv"):
        shutil.copyfile(DEMO / name, folder / name)
    write_yaml(folder / "catalog.yaml", filled("catalog-1", record("catalog-1"), text))
    write_yaml(folder / "criteria.yaml", filled("criteria-1", record("criteria-1"), lambda n: text(n + 1)))
    for k in range(products):
        made = filled("product-1", _product(k), lambda n, k=k: text(n + k))
        made = changed(made, ("maker",), text(0))  # makers that are nearly alike are taken for a slip
        write_yaml(folder / "products" / f"pedal-{k}.yaml", made)
    for k in range(buyers):
        made = filled("buyer-1", _buyer(k), lambda n, k=k: text(n + k))
        write_yaml(folder / "buyers" / f"buyer-{k}.yaml", made)
    rows = [
        (f"2026-10-{10 + n}", f"pedal-{k}", "EU", "EUR", f"{300 + 70 * k - n}.00", "in", "street",
         text(k + n), "", text(k + n + 1))
        for k in range(products)
        for n in range(3)
    ]  # fmt: skip
    with (folder / "prices.csv").open("w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows([HEADER, *rows])
    return folder


def opened(folder: Path) -> tuple[Catalog, dict[str, Buyer]]:
    """The catalog and its buyers, read as any other."""
    catalog, problems = open_catalog(folder)
    assert catalog is not None, render(problems, "plain")
    buyers, problems = open_buyers(folder / "buyers", catalog)
    assert not any(problem.level == "error" for problem in problems), render(problems, "plain")
    return catalog, dict(buyers)


def text_fields(kind: str) -> tuple[Way, ...]:
    """Where a kept sample holds free text: every string that may be replaced by other words.

    A unit may not, though the schema would let it: the checks hold it to its figures.
    """
    return _text_fields(kind, PROBE)


def address_fields(kind: str) -> tuple[Way, ...]:
    """Where it holds an address on the web: what other words cannot replace, and another address can."""
    return tuple(
        way for way in _text_fields(kind, f"https://x.example/{PROBE}") if way not in text_fields(kind)
    )


@cache
def _text_fields(kind: str, probe: str) -> tuple[Way, ...]:
    whole = record(kind)
    return tuple(
        way
        for way, value in _leaves(whole)
        if isinstance(value, str) and way[-1] != "unit" and _valid(MODELS[kind], changed(whole, way, probe))
    )


@cache
def record(kind: str) -> Any:
    """A kept sample as data."""
    document, problems = read_yaml(KEPT / f"{kind}.yaml", kind)
    assert document is not None
    assert problems == []
    return document.data


def filled(kind: str, whole: Any, text: Text) -> Any:
    """The record with every free text replaced; a field that is not there any more is passed over."""
    for n, way in enumerate(text_fields(kind)):
        if _there(whole, way):
            whole = changed(whole, way, text(n))
    return whole


def changed(whole: Any, way: Way, value: Any) -> Any:
    """The record with another value at one place."""
    if not way:
        return value
    step, rest = way[0], way[1:]
    if isinstance(whole, dict):
        return {**whole, step: changed(whole.get(step), rest, value)}
    assert isinstance(step, int)
    return (*whole[:step], changed(whole[step], rest, value), *whole[step + 1 :])


def _product(k: int) -> Any:
    """The kept product with every key; lighter and dearer one after the other, every third under a notice."""
    whole = changed(record("product-1"), ("id",), f"pedal-{k}")
    whole = changed(whole, ("family",), "none")
    whole = changed(whole, ("observations", "weight_g", 1, "value"), 404 - 9 * k)
    ended = "none" if k % 3 == 2 else date(2025, 8, 29)
    return changed(whole, ("safety_notices", 0, "ended"), ended)


def _buyer(k: int) -> Any:
    whole = changed(record("buyer-1"), ("id",), f"buyer-{k}")
    whole = changed(whole, ("present_pedals",), "pedal-1")
    whole = changed(whole, ("private",), ("kept", "shown")[k % 2])
    if k % 2 == 0:  # one whose needs can be met, and one who names patterns that nothing has
        whole = changed(whole, ("needs",), {"rider_mass_kg": 82, "shoes": {"bolts": "three-bolt"}})
    return whole


def write_yaml(path: Path, whole: Any) -> None:
    """A record as an author's file."""

    class Plain(yaml.SafeDumper):
        def ignore_aliases(self, data: Any) -> bool:
            return True

    Plain.add_representer(tuple, yaml.SafeDumper.represent_list)
    path.write_text(yaml.dump(whole, Dumper=Plain, allow_unicode=True, sort_keys=False, width=10**6), "utf-8")


def _there(whole: Any, way: Way) -> bool:
    try:
        for step in way:
            whole = whole[step]
    except (KeyError, IndexError, TypeError):
        return False
    return isinstance(whole, str)


def _valid(model: type[BaseModel], whole: Any) -> bool:
    try:
        model.model_validate(whole)
    except ValidationError:
        return False
    return True


def _leaves(value: Any, way: Way = ()) -> Iterator[tuple[Way, Any]]:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from _leaves(inner, (*way, key))
    elif isinstance(value, tuple):
        for n, inner in enumerate(value):
            yield from _leaves(inner, (*way, n))
    else:
        yield way, value
