"""A large price log read column by column, for logs of which every line is plainly right.

The strict reader looks at each field of each line, and a log of a million lines makes one wait. Here each
column is checked by its distinct values. Whatever is not plainly right is left to the strict reader, which
says what is wrong and where; so both give the same rows, or this one gives none.
"""

import csv
import io
from collections.abc import Callable
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from spindlewise.catalog.csv_fields import FieldReader
from spindlewise.catalog.csv_text import LONGEST_LINE, Row
from spindlewise.catalog.price_row import HEADER, KINDS, TAXES, PriceRow
from spindlewise.problems import Problem

if TYPE_CHECKING:
    import pandas as pd

LARGE_BYTES = 1024 * 1024
"""From this size on, importing pandas costs less than it saves."""

Read = Callable[[FieldReader, str], Any]
READERS: dict[str, Read] = {
    "date": lambda reader, name: reader.day(name),
    "currency": lambda reader, name: reader.currency(name),
    "tax": lambda reader, name: reader.word(name, TAXES),
    "kind": lambda reader, name: reader.word(name, KINDS),
    "valid_until": lambda reader, name: reader.day(name, may_be_empty=True),
}
"""Columns of few distinct values, each read once by the strict reader's own rules."""

LONGEST = {"product": 60, "region": 8, "seller": 120, "source": 300}
"""Text columns, whose values may all differ, and how long a text may be: as in the strict reader."""


def read_large_log(raw: bytes) -> list[PriceRow] | None:
    """All rows of the log in its order, or None where anything is not plainly right.

    Quotes, carriage returns and byte order marks are fine in a log, but not plain: None.
    """
    table = _table(raw)
    if table is None:
        return None
    if _contradicts(table) or not all(_plain(table[name], longest) for name, longest in LONGEST.items()):
        return None
    columns: dict[str, list[Any]] = {name: table[name].tolist() for name in LONGEST}
    for name in READERS:
        typed = _read(table[name], name)
        if typed is None:
            return None
        columns[name] = typed
    amounts = _amounts(table)
    if amounts is None:
        return None
    columns["amount"] = amounts
    lines = zip(*(columns[name] for name in HEADER), strict=True)
    return [PriceRow(number, *fields) for number, fields in enumerate(lines, start=2)]


def _plain(column: "pd.Series[str]", longest: int) -> bool:
    """Whether every text stands there, within its length and without stray spaces."""
    return all(text and len(text) <= longest and text == text.strip() for text in column.tolist())


def _table(raw: bytes) -> "pd.DataFrame | None":
    """The log as text columns, if it is plain text of as many fields in each line as the header has."""
    import pandas as pd

    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError:
        return None
    lines = text.split("\n")
    if lines.pop() or not lines or lines[0] != ",".join(HEADER):
        return None
    if '"' in text or not all(lines) or max(map(len, lines)) > LONGEST_LINE:
        return None
    if not text.replace("\n", "").isprintable() or any(line.count(",") != len(HEADER) - 1 for line in lines):
        return None
    table = pd.read_csv(
        io.BytesIO(raw), dtype=str, keep_default_na=False, quoting=csv.QUOTE_NONE, skip_blank_lines=False
    )
    return None if table.duplicated().any() else table


def _read(column: "pd.Series[str]", name: str) -> list[Any] | None:
    """The column's typed values, each distinct one read once by the strict reader's own rules."""
    typed: dict[str, Any] = {}
    for text in column.unique().tolist():
        problems: list[Problem] = []
        typed[text] = READERS[name](_alone(name, text, problems), name)
        if problems:
            return None
    return [typed[text] for text in column.tolist()]


def _amounts(table: "pd.DataFrame") -> list[Decimal] | None:
    """The amounts in their currencies' minor units."""
    pairs: list[tuple[str, str]] = list(
        zip(table["currency"].tolist(), table["amount"].tolist(), strict=True)
    )
    typed: dict[tuple[str, str], Decimal] = {}
    for currency, text in dict.fromkeys(pairs):
        problems: list[Problem] = []
        reader = _alone("amount", text, problems)
        amount = reader.amount("amount", currency)
        if amount is None:
            return None
        typed[(currency, text)] = amount
    return [typed[pair] for pair in pairs]


def _alone(name: str, text: str, problems: list[Problem]) -> FieldReader:
    return FieldReader(Row("", 1, (text,), text), (name,), problems)


def _contradicts(table: "pd.DataFrame") -> bool:
    """Whether an offer has no last day, or a last day lies before the first; days compare as text."""
    until = table["valid_until"]
    endless = (table["kind"] == "offer") & (until == "")
    ended = (until != "") & (until < table["date"])
    return bool((endless | ended).any())
