"""A terminal: tables and colour, no colour where none is wanted, columns chosen to fit."""

from collections.abc import Iterable

from spindlewise.problems import shown
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.fitting import GAP, as_entries, cells_wide, column_widths, fitted, table_width
from spindlewise.render.wrapping import wrapped

BOLD, FAINT, UNDERLINED, RED = "1", "2", "4", "31"
"""Parameters of Select Graphic Rendition (ECMA-48, 8.3.117)."""
STYLES = {"plain": (), "important": (BOLD,), "caution": (BOLD, RED), "quiet": (FAINT,)}
LONGEST_LINE = 100
"""Prose is wrapped here even on a wider screen, since longer lines are hard to read."""


def as_terminal(blocks: Iterable[Block], width: int, colour: bool) -> str:
    """The blocks for a screen of this width, with one line feed at the end; "" for no blocks."""
    lines = "\n\n".join(_lines(block, width, colour) for block in blocks).rstrip("\n")
    return lines + "\n" if lines else ""


def _lines(block: Block, width: int, colour: bool) -> str:
    prose = min(width, LONGEST_LINE)
    match block:
        case Heading(text=text, level=level):
            style = (BOLD, UNDERLINED) if level == 1 else (BOLD,)
            return _styled(wrapped(shown(text), prose), style, colour)
        case Paragraph(text=text, tone=tone):
            said = wrapped(("! " if tone == "caution" else "") + shown(text), prose)
            return _styled(said, STYLES[tone], colour)
        case Bullets(items=items):
            return "\n".join(wrapped(shown(item), prose, " - ", "   ") for item in items)
        case Table():
            return _table(block, width, colour)


def _styled(lines: str, style: tuple[str, ...], colour: bool) -> str:
    """Each line in this style by itself, so that nothing of it runs on where a pager cuts."""
    if not colour or not style:
        return lines
    return "\n".join(f"\x1b[{';'.join(style)}m{line}\x1b[0m" if line else "" for line in lines.split("\n"))


def _table(table: Table, width: int, colour: bool) -> str:
    caption = f"{shown(table.caption)}:\n" if table.caption else ""
    small = fitted(_shown(table), width)
    if table_width(small) > width:
        return caption + _lines(as_entries(table), width, colour)
    widths = column_widths(small)
    head = _styled(_line(small, tuple(column.title for column in small.columns), widths), (BOLD,), colour)
    rule = "─" * table_width(small)
    return caption + "\n".join([head, rule, *(_line(small, row, widths) for row in small.rows)])


def _shown(table: Table) -> Table:
    """The table with all that cannot be seen written as escapes, which take room."""
    columns = tuple(Column(shown(c.title), c.align, c.spare, c.is_name) for c in table.columns)
    return Table(table.caption, columns, tuple(tuple(map(shown, row)) for row in table.rows))


def _line(table: Table, cells: tuple[str, ...], widths: list[int]) -> str:
    padded = []
    for column, cell, size in zip(table.columns, cells, widths, strict=True):
        space = " " * (size - cells_wide(cell))
        padded.append(space + cell if column.align == "right" else cell + space)
    return (" " * GAP).join(padded).rstrip()
