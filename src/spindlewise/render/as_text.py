"""Plain text for pasting: no markup, wrapped at 78, tables only where they fit."""

from collections.abc import Iterable

from spindlewise.problems import shown
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph, Table
from spindlewise.render.fitting import GAP, as_entries, cells_wide, column_widths, fitted, table_width
from spindlewise.render.wrapping import wrapped

WIDTH = 78


def as_text(blocks: Iterable[Block], width: int = WIDTH) -> str:
    """The blocks as plain text, with one line feed at the end; "" for no blocks."""
    parts = [_block(block, width) for block in blocks]
    return "\n\n".join(part for part in parts if part) + "\n" if parts else ""


def _block(block: Block, width: int) -> str:
    match block:
        case Heading(text=text, level=level):
            lines = wrapped(shown(text), width)
            longest = max(cells_wide(line) for line in lines.split("\n"))
            return f"{lines}\n{('=' if level == 1 else '-') * longest}"
        case Paragraph(text=text, tone=tone):
            return wrapped(("! " if tone == "caution" else "") + shown(text), width)
        case Bullets(items=items):
            return "\n".join(wrapped(shown(item), width, "- ", "  ") for item in items)
        case Table():
            return _table(block, width)


def _table(table: Table, width: int) -> str:
    small = fitted(table, width)
    caption = f"{shown(table.caption)}:\n" if table.caption else ""
    if table_width(small) > width:
        return caption + _block(as_entries(table), width)
    widths = column_widths(small)
    head = tuple(column.title for column in small.columns)
    rule = tuple("-" * size for size in widths)
    lines = [_line(small, cells, widths) for cells in (head, rule, *small.rows)]
    return caption + "\n".join(lines)


def _line(table: Table, cells: tuple[str, ...], widths: list[int]) -> str:
    padded = []
    for column, cell, size in zip(table.columns, cells, widths, strict=True):
        text = shown(cell)
        space = " " * (size - cells_wide(text))
        padded.append(space + text if column.align == "right" else text + space)
    return (" " * GAP).join(padded).rstrip()
