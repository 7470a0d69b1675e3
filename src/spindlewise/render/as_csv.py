"""CSV for spreadsheets (RFC 4180): quoted where needed, CRLF line ends, no field taken for a formula."""

import csv
import io
from collections.abc import Iterable, Sequence

from spindlewise.problems import shown

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def as_csv(header: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Header and rows as CSV text. Raises ValueError for a row of another length."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([formula_safe(name) for name in header])
    for row in rows:
        if len(row) != len(header):
            raise ValueError(f"a row of {len(row)} fields was given; the header has {len(header)}")
        writer.writerow([formula_safe(cell) for cell in row])
    return text.getvalue()


def formula_safe(cell: str) -> str:
    """The field with an apostrophe in front where a spreadsheet would run it; numbers stay as they are.

    >>> formula_safe("=1+1"), formula_safe("-86"), formula_safe("+6.5 mm")
    ("'=1+1", '-86', "'+6.5 mm")
    """
    text = shown(cell)
    if text.startswith(_FORMULA_STARTS) and not _is_number(text):
        return f"'{text}"
    return text


def _is_number(text: str) -> bool:
    return text.lstrip("+-").replace(".", "", 1).isdecimal() and len(text) - len(text.lstrip("+-")) <= 1
