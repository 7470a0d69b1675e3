"""Wraps sentences to a width without parting a number from its unit or a currency from its amount."""

import re
import textwrap

_UNITS = r"(?:g|mm|kg|h|years|days|W|%|N m|points|of 100)"
_PAIRS = re.compile(rf"(?<=[0-9]) (?={_UNITS}(?![\w%]))|(?<=\b[A-Z]{{3}}) (?=[0-9])")
_HELD = "\ue000"
"""Stands for a space at which no line may end; from the private use area, so that no text holds it."""


def wrapped(text: str, width: int, first: str = "", rest: str = "") -> str:
    """The text in lines of at most `width`; `first` leads the first line and `rest` all others.

    A word that is longer than a line stays whole, since it may be an address.

    >>> print(wrapped("It weighs 346 g.", 12))
    It weighs
    346 g.
    """
    held = _PAIRS.sub(_HELD, text)
    lines = textwrap.fill(
        held,
        width,
        initial_indent=first,
        subsequent_indent=rest,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return lines.replace(_HELD, " ")
