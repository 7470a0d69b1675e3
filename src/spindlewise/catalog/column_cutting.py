"""The lines of a plain log cut into fields, all at once: where each field ends, and what its amount is.

Every answer is None or False where a line is not plainly right; the strict reader then has its say.
"""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from spindlewise.catalog.csv_fields import MOST_DIGITS
from spindlewise.catalog.csv_text import split_line
from spindlewise.catalog.price_row import HEADER
from spindlewise.catalog.text_numbers import Ints

Letters: TypeAlias = NDArray[np.uint8]

MOST_WHOLE = 10**12
"""Amounts from here on are left to the strict reader: their minor units might not fit."""

_COMMA, _END, SPACE, _POINT, _ZERO = b",\n .0"
QUOTED_COMMA = "\x1f"
"""Stands for a comma inside quotes while a line is cut at commas; no line of a log may hold it."""


def line_starts(chunk: bytes) -> Ints:
    """Where each line begins, and the end of the last."""
    ends = np.flatnonzero(np.frombuffer(chunk, np.uint8) == _END)
    return np.concatenate([[0], ends + 1])


def visible(chunk: bytes, lines: int) -> bool:
    """Whether the lines are UTF-8, and every character of theirs can be seen."""
    if not chunk.isascii():
        try:
            return chunk.decode().replace("\n", "").isprintable()
        except UnicodeDecodeError:
            return False
    letters = np.frombuffer(chunk, np.uint8)
    return int(np.count_nonzero(letters < SPACE)) == lines and b"\x7f" not in chunk


def unquoted(chunk: bytes) -> bytes | None:
    """The lines as if no field were in quotes, with another character for commas inside a field."""
    lines = chunk.decode().split("\n")
    for number, line in enumerate(lines):
        if '"' in line:
            fields, fault = split_line(line)
            if fault is not None:
                return None
            lines[number] = ",".join(field.replace(",", QUOTED_COMMA) for _, field in fields)
    return "\n".join(lines).encode()


def field_ends(letters: Letters) -> Ints | None:
    """Where each field of each line ends, or None where a line has too few or too many."""
    ends = np.flatnonzero((letters == _COMMA) | (letters == _END))
    if len(ends) % len(HEADER):
        return None
    table: Ints = ends.reshape(-1, len(HEADER))
    is_end = letters[table] == _END
    return table if is_end[:, -1].all() and not is_end[:, :-1].any() else None


def plain_amounts(letters: Letters, begins: Ints, ends: Ints) -> tuple[Ints, Ints] | None:
    """The digits of each amount as a whole number, and how many of them stand behind the point.

    Plain numbers above zero alone, as the strict reader has them: digits, at most one point between two of
    them, no zero in front of another digit.
    """
    lengths = ends - begins
    if int(lengths.min()) < 1 or int(lengths.max()) > MOST_DIGITS:
        return None
    whole, points = np.zeros(len(begins), np.int64), np.zeros(len(begins), np.int64)
    decimals = np.zeros(len(begins), np.int64)
    for at in range(int(lengths.max())):
        inside = at < lengths
        letter = letters[np.where(inside, begins + at, 0)]
        is_point = inside & (letter == _POINT)
        digit = letter.astype(np.int64) - _ZERO
        is_digit = inside & (digit >= 0) & (digit <= 9)
        if not (is_digit | is_point | ~inside).all():
            return None
        points += is_point
        decimals += is_digit & (points == 1)
        whole = np.where(is_digit, whole * 10 + digit, whole)
    fine = (whole > 0) & (whole < MOST_WHOLE) & (points < 2) & (decimals >= points)
    first, second = letters[begins], letters[begins + 1]
    fine &= first != _POINT
    fine &= (first != _ZERO) | (lengths == 1) | (second == _POINT)
    return (whole, decimals) if fine.all() else None
