"""odd-date: no day lies before 2000 or years ahead, since a slip of a digit hides what was seen.

PASS: `date: 2026-03-12`
FAIL: `date: 2206-03-12`, which no as-of date will ever reach
"""

import re
from collections.abc import Iterator
from datetime import date, timedelta

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.document import Path, dotted
from spindlewise.catalog.finding import at_price, at_value
from spindlewise.catalog.price_rows import rows_dated_outside
from spindlewise.problems import Problem

EARLIEST = date(2000, 1, 1)
"""No power pedal was sold before. Common practice, no source."""
AHEAD = timedelta(days=2 * 366)
"""So far ahead of a catalog's pinned day a line may be dated. Design choice, no source."""
LATEST = date(2099, 12, 31)
"""Where the catalog is read as of today: the clock decides nothing here."""
RULE = "odd-date"
WRITTEN = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
"""A day as YAML has it; the text may hold more of them than the data, such as in a remark."""


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each odd day in the product files, the bench's observations and the price log."""
    pinned = catalog.settings.as_of
    latest = LATEST if isinstance(pinned, str) else pinned + AHEAD
    for product in catalog.products:
        document = catalog.documents.get(product)
        if document is None or _nothing_odd(document.text, latest):
            continue
        for path, day in _days(document.content(), ()):
            if not EARLIEST <= day <= latest:
                yield at_value(catalog, product, path, RULE, *_words(day, latest))
    for record in {id(document): document for document, _ in catalog.added.values()}.values():
        for path, day in _days(record.content(), ()):
            if not EARLIEST <= day <= latest:
                told, tip = _words(day, latest)
                field = dotted(path)
                yield Problem(record.place(path), "error", RULE, f"{field}: {told}", tip, field)
    for row in rows_dated_outside(catalog.prices, EARLIEST, latest):
        yield at_price(catalog, row, "date", RULE, *_words(row.date, latest))


def _nothing_odd(text: str, latest: date) -> bool:
    """Whether no day that is written in the text at all is odd; days compare as text."""
    first, last = EARLIEST.isoformat(), latest.isoformat()
    days = WRITTEN.findall(text)
    return not days or (first <= min(days) and max(days) <= last)


def _words(day: date, latest: date) -> tuple[str, str]:
    told = f"found {day.isoformat()}"
    return told, f"write a day from {EARLIEST.isoformat()} to {latest.isoformat()}"


def _days(value: object, path: Path) -> Iterator[tuple[Path, date]]:
    if isinstance(value, date):
        yield path, value
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield from _days(inner, (*path, key))
    elif isinstance(value, tuple):
        for index, inner in enumerate(value):
            yield from _days(inner, (*path, index))
