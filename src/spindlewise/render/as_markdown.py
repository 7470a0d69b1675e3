"""Markdown for pasting into a page or a post: what the text says is escaped, never taken for markup."""

import re
from collections.abc import Iterable

from spindlewise.problems import shown
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph, Table

_SPECIAL = re.compile(r"([\\`*_\[\]<>|~$&])")
_LINE_START = re.compile(r"^(\s*)(#{1,6}(?=\s|$)|[-+](?=\s|$)|=+\s*$|-+\s*$|:(?=\s))")
_ORDERED = re.compile(r"^(\s*\d+)([.)])(?=\s|$)")


def as_markdown(blocks: Iterable[Block]) -> str:
    """The blocks as Markdown (CommonMark, with pipe tables), with one line feed at the end."""
    parts = [_block(block) for block in blocks]
    return "\n\n".join(parts) + "\n" if parts else ""


def escaped(text: str) -> str:
    r"""Text that Markdown shows as it stands.

    >>> print(escaped("2. a*b <i> [x](y) | z"))
    2\. a\*b \<i\> \[x\](y) \| z
    """
    safe = _SPECIAL.sub(r"\\\1", shown(text))
    safe = _LINE_START.sub(r"\1\\\2", safe)
    return _ORDERED.sub(r"\1\\\2", safe)


def _block(block: Block) -> str:
    match block:
        case Heading(text=text, level=level):
            return f"{'#' * level} {escaped(text)}"
        case Paragraph(text=text, tone=tone):
            return {"important": f"**{escaped(text)}**", "caution": f"> **{escaped(text)}**"}.get(
                tone, escaped(text)
            )
        case Bullets(items=items):
            return "\n".join(f"- {escaped(item)}" for item in items)
        case Table():
            return _table(block)


def _table(table: Table) -> str:
    marks = ("---:" if column.align == "right" else "---" for column in table.columns)
    lines = [
        _row(escaped(column.title) for column in table.columns),
        _row(marks),
        *(_row(escaped(cell) for cell in row) for row in table.rows),
    ]
    caption = f"{escaped(table.caption)}:\n\n" if table.caption else ""
    return caption + "\n".join(lines)


def _row(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |"
