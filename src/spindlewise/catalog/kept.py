"""A catalog that was read and found whole, kept for the next question, for as long as its files say the same.

It is kept by the content of every file that it rests on and by the program that read it; whoever changes a
byte of either reads the catalog anew. Its warnings are not kept: `check` says them, and reads everything.
"""

import hashlib
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TypeGuard

import pydantic

from spindlewise.catalog.bench_files import FOLDER, bench_files
from spindlewise.catalog.by_columns import ByColumns
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.collector import collector_paused
from spindlewise.catalog.file_digest import SINGLE
from spindlewise.catalog.money import RateTable, TaxTable
from spindlewise.catalog.packing import NotOurs, packed, unpacked
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.price_rows import PriceRows
from spindlewise.catalog.shelf import Shelf
from spindlewise.problems import Problem

MOST_PRICES = 100_000
"""Packing more rows takes the first question longer than it saves the next one."""
BY_COLUMNS = "by columns"
"""Kept in place of a log that is in columns: reading it again takes less than unpacking its rows would."""
LOG = "prices.csv"
PACKAGE = Path(__file__).parents[1]
ROOMS = ("", "catalog", "catalog/checks")
"""Where the code stands that reads a catalog and holds it to its rules."""


def open_kept(folder: Path, shelf: Shelf | None) -> tuple[Catalog | None, list[Problem]]:
    """The catalog and its problems, as `open_catalog` gives them, or at once from the shelf, then without
    its warnings and without its documents. Without a shelf nothing is kept.
    """
    if shelf is None:
        return _read(folder)
    name, log = _named(folder)
    parts = None if name is None else shelf.take(name)
    kept = None if parts is None else _from_parts(folder, parts, log)
    if kept is not None:
        return kept, []
    catalog, problems = _read(folder)
    # what was written while it was read belongs under neither name
    if name is not None and _worth_keeping(catalog) and name_of(folder) == name:
        shelf.put(name, _parts(catalog))
    return catalog, problems


def _read(folder: Path) -> tuple[Catalog | None, list[Problem]]:
    # what reads and checks it is imported only where it has to be read
    from spindlewise.catalog.opening import open_catalog

    return open_catalog(folder, warnings=False)


def _worth_keeping(catalog: Catalog | None) -> TypeGuard[Catalog]:
    return catalog is not None and (
        isinstance(catalog.prices, ByColumns) or len(catalog.prices) <= MOST_PRICES
    )


def name_of(folder: Path) -> str | None:
    """What the catalog is kept by: a digest of its content and of the program; None where one is unread."""
    return _named(folder)[0]


def _named(folder: Path) -> tuple[str | None, bytes]:
    """The same, and the bytes of the price log that went into it."""
    found = hashlib.sha256()
    try:
        content = _content(folder)
        for part in (*_program(), *content):
            # each with its length, so that no two catalogs run into the same bytes
            found.update(len(part).to_bytes(8, "big"))
            found.update(part)
    except (OSError, ValueError):
        return None, b""
    return found.hexdigest(), content[2 * SINGLE.index(LOG) + 1]


def _content(folder: Path) -> list[bytes]:
    """Names and bytes of all that a catalog rests on: files, products, the bench's records and names."""
    parts: list[bytes] = []
    for name in SINGLE:
        path = folder / name
        parts += [name.encode(), path.read_bytes() if path.exists() else b"not there"]
    parts += _files(os.fspath(folder / "products"))
    if (folder / FOLDER).is_dir():
        parts += _files(os.fspath(folder / FOLDER))
    return [*parts, *(name.encode() for name in sorted(bench_files(folder)))]


def _program() -> list[bytes]:
    """What tells one program from another: every line that reads or checks a catalog, and what it runs on."""
    package = os.fspath(PACKAGE)
    parts = [pydantic.VERSION.encode(), sys.version.encode()]
    for room in ROOMS:
        code = _files(f"{package}/{room}", ".py")
        if not code:
            raise ValueError(f"no code to be seen in {package}/{room}")
        parts += code
    return parts


def _files(folder: str, ending: str = "") -> list[bytes]:
    """Names and bytes of the files in a folder, in order of name, hidden ones left out. Raises OSError."""
    with os.scandir(folder) as entries:
        names = sorted(e.name for e in entries if not e.name.startswith(".") and e.name.endswith(ending))
    parts = []
    for name in names:
        parts.append(os.fsencode(name))
        # plainly, since a thousand Path objects take longer than a thousand files
        with open(os.open(f"{folder}/{name}", os.O_RDONLY | os.O_NONBLOCK), "rb", buffering=0) as file:  # noqa: PTH123
            parts.append(file.readall())
    return parts


def _parts(catalog: Catalog) -> list[bytes]:
    frame = (catalog.settings, catalog.criteria, catalog.rates.rows, catalog.taxes.rows, catalog.bench_files)
    prices = BY_COLUMNS if isinstance(catalog.prices, ByColumns) else tuple(catalog.prices)
    return [packed(frame), packed(dict(catalog.products)), packed(prices)]


def _from_parts(folder: Path, parts: list[bytes], log: bytes) -> Catalog | None:
    """The catalog that these parts and the log's bytes make; None where they make none."""
    try:
        with collector_paused():
            frame, products, rows = (unpacked(part) for part in parts)
        settings, criteria, rates, taxes, files = frame
        prices = _by_columns(log) if rows == BY_COLUMNS else PriceRows(rows)
    except (NotOurs, ValueError, TypeError):
        return None
    if prices is None:
        return None
    return Catalog(
        folder=folder,
        settings=settings,
        criteria=criteria,
        products=products,
        prices=prices,
        rates=RateTable(rates),
        taxes=TaxTable(taxes),
        documents={},
        bench_files=files,
    )


def _by_columns(log: bytes) -> Sequence[PriceRow] | None:
    from spindlewise.catalog.long_log import long_log

    return long_log(log)
