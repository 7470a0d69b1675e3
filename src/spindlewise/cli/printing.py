"""Prints: answers to stdout, everything else to stderr, colour only where somebody looks at it."""

import os
import shutil
import sys
from collections.abc import Iterable

from spindlewise.render.blocks import Block

PLAIN = {"─": "-", "±": "+/-", "…": "..."}
PIPED_WIDTH = 100
"""How wide a page is made that nobody looks at directly, unless COLUMNS says otherwise."""


def answer(text: str) -> None:
    """The answer, to stdout; where the screen has plain letters only, signs are written in those."""
    sys.stdout.write(shown_in(text, sys.stdout.encoding or "utf-8"))


def shown_in(text: str, encoding: str) -> str:
    """The text with its few signs in plain letters, where the encoding has not got them.

    >>> shown_in("── ± 1 g", "ascii")
    '-- +/- 1 g'
    """
    try:
        "".join(PLAIN).encode(encoding)
    except UnicodeEncodeError:
        for sign, plain in PLAIN.items():
            text = text.replace(sign, plain)
    return text


def remark(text: str) -> None:
    """Anything that is not the answer, to stderr."""
    sys.stderr.write(f"{text}\n")


def page(blocks: Iterable[Block]) -> None:
    """Blocks to stdout, as wide as the screen is."""
    from spindlewise.render.as_terminal import as_terminal

    answer(as_terminal(blocks, width(), colour()))


def width() -> int:
    """The screen's width, what COLUMNS says, or 100 where the answer goes into a file or a pipe."""
    fallback = 80 if sys.stdout.isatty() else PIPED_WIDTH
    columns = os.environ.get("COLUMNS", "")
    if columns.isascii() and columns.isdigit() and int(columns[:6]) > 0:
        return max(20, int(columns[:6]))
    return max(20, shutil.get_terminal_size((fallback, 24)).columns) if sys.stdout.isatty() else fallback


def colour() -> bool:
    """Whether to colour: on a terminal that can, unless NO_COLOR is set to anything."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
