"""A terminal: tables and colour by rich, no colour where none is wanted, columns chosen to fit."""

from __future__ import annotations

import io
from collections.abc import Iterable
from typing import TYPE_CHECKING

from spindlewise.problems import shown
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph, Table
from spindlewise.render.fitting import as_entries, fitted, table_width
from spindlewise.render.wrapping import wrapped

if TYPE_CHECKING:
    from rich.console import Console

STYLES = {"plain": "", "important": "bold", "caution": "bold red", "quiet": "dim"}
LONGEST_LINE = 100
"""Prose is wrapped here even on a wider screen, since longer lines are hard to read."""


def as_terminal(blocks: Iterable[Block], width: int, colour: bool) -> str:
    """The blocks for a screen of this width, with one line feed at the end; "" for no blocks."""
    from rich.console import Console

    console = Console(
        file=io.StringIO(),
        width=width,
        force_terminal=colour,
        no_color=not colour,
        color_system="standard" if colour else None,
        highlight=False,
        markup=False,
        emoji=False,
        legacy_windows=False,
        _environ={},
    )
    with console.capture() as captured:
        for number, block in enumerate(blocks):
            if number:
                console.print()
            _print(console, block, width)
    lines = captured.get().rstrip("\n")
    return "\n".join(line.rstrip() for line in lines.split("\n")) + "\n" if lines else ""


def _print(console: Console, block: Block, width: int) -> None:
    prose = min(width, LONGEST_LINE)
    match block:
        case Heading(text=text, level=level):
            _say(console, wrapped(shown(text), prose), "bold underline" if level == 1 else "bold")
        case Paragraph(text=text, tone=tone):
            _say(console, wrapped(("! " if tone == "caution" else "") + shown(text), prose), STYLES[tone])
        case Bullets(items=items):
            _say(console, "\n".join(wrapped(shown(item), prose, " - ", "   ") for item in items), "")
        case Table():
            _print_table(console, block, width)


def _say(console: Console, lines: str, style: str) -> None:
    from rich.text import Text

    console.print(Text(lines, style=style), soft_wrap=True)


def _print_table(console: Console, table: Table, width: int) -> None:
    from rich.box import SIMPLE_HEAD
    from rich.table import Table as Drawn
    from rich.text import Text

    small = fitted(table, width)
    if table.caption:
        _say(console, shown(table.caption) + ":", "")
    if table_width(small) > width:
        _print(console, as_entries(table), width)
        return
    # rich's own divider and a space before each cell but the first: the gap of two that `fitted` counts with;
    # a space of the cell's own, since padding is drawn cell by cell and takes a third of the time
    drawn = Drawn(box=SIMPLE_HEAD, show_edge=False, pad_edge=False, padding=0, header_style="bold")
    gaps = ["", *[" "] * (len(small.columns) - 1)]
    for gap, column in zip(gaps, small.columns, strict=True):
        drawn.add_column(Text(gap + shown(column.title)), justify=column.align, no_wrap=True)
    for row in small.rows:
        drawn.add_row(*(Text(gap + shown(cell)) for gap, cell in zip(gaps, row, strict=True)))
    console.print(drawn)
