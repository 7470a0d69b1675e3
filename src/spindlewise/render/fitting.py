"""Fits a table to a width: columns that can be spared go first, then the table becomes a list of entries."""

import unicodedata
from itertools import zip_longest

from spindlewise.render.blocks import Bullets, Column, Table
from spindlewise.render.wrapping import wrapped

GAP = 2
"""Spaces between two columns."""
NARROWEST = 16
"""A column that is cut narrower than this reads worse than a list."""


def cells_wide(text: str) -> int:
    """Terminal cells that a text takes: wide East Asian characters take two, combining marks none.

    >>> cells_wide("EUR 399.00"), cells_wide("重量")
    (10, 4)
    """
    if text.isascii():
        return len(text)
    return sum(
        0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text
    )


def column_widths(table: Table) -> list[int]:
    """The width of each column by its widest cell."""
    lines = [tuple(column.title for column in table.columns), *table.rows]
    return [max(cells_wide(line[k]) for line in lines) for k in range(len(table.columns))]


def table_width(table: Table) -> int:
    """The width of the whole table, gaps included."""
    widths = column_widths(table)
    return sum(widths) + GAP * (len(widths) - 1)


def fitted(table: Table, width: int) -> Table:
    """The table with so many columns that it fits, the highest `spare` left out first."""
    while table_width(table) > width and any(column.spare for column in table.columns):
        out = max(range(len(table.columns)), key=lambda k: (table.columns[k].spare, k))
        table = without_column(table, out)
    return wrapped_cells(table, width)


def wrapped_cells(table: Table, width: int) -> Table:
    """The table with cells of columns that may wrap cut into lines, where that makes it fit.

    The widest such column gives way first. A row whose cells go on is followed by rows with the rest of them.

    >>> columns = (Column("Cause"), Column("Note", wraps=True))
    >>> wrapped_cells(Table("", columns, (("drift", "over ten degrees of heat"),)), 25).rows
    (('drift', 'over ten degrees'), ('', 'of heat'))
    """
    widths = column_widths(table)
    over = table_width(table) - width
    while over > 0:
        k = max(
            (k for k, column in enumerate(table.columns) if column.wraps), key=widths.__getitem__, default=-1
        )
        if k < 0 or widths[k] <= NARROWEST:
            return table
        widths[k] -= 1
        over -= 1
    rows = [line for row in table.rows for line in _cut(table, row, widths)]
    return Table(table.caption, table.columns, tuple(rows))


def _cut(table: Table, row: tuple[str, ...], widths: list[int]) -> list[tuple[str, ...]]:
    parts = [
        wrapped(cell, size).split("\n") if column.wraps else [cell]
        for column, cell, size in zip(table.columns, row, widths, strict=True)
    ]
    return list(zip_longest(*parts, fillvalue=""))


def without_column(table: Table, out: int) -> Table:
    """The table less one column."""
    columns = tuple(column for k, column in enumerate(table.columns) if k != out)
    rows = tuple(tuple(cell for k, cell in enumerate(row) if k != out) for row in table.rows)
    return Table(table.caption, columns, rows)


def as_entries(table: Table) -> Bullets:
    """The table as one entry a row, for where it does not fit: `Head: cell; head: cell`.

    >>> as_entries(Table("", (Column("Product"), Column("Price")), (("Heron One", "EUR 9.00"),))).items
    ('Heron One; price: EUR 9.00',)
    """
    items = []
    for row in table.rows:
        first, *rest = zip(table.columns, row, strict=True)
        parts = [f"{_within(column)}: {cell}" for column, cell in rest if cell]
        items.append("; ".join([first[1], *parts]))
    return Bullets(tuple(items))


def _within(column: Column) -> str:
    return column.title if column.is_name else column.title[:1].lower() + column.title[1:]
