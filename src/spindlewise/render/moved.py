"""A move of the saddle in words."""

from collections.abc import Sequence

from spindlewise.render.naming import listed
from spindlewise.units import millimetres_text, number_text


def moved(change_mm: float) -> str:
    """A move of the saddle: `up 2.5 mm`, `down 1.0 mm` or `no change`.

    >>> moved(2.5), moved(-1.0), moved(0.1)
    ('up 2.5 mm', 'down 1.0 mm', 'no change')
    """
    text = millimetres_text(abs(change_mm))
    if text == millimetres_text(0.0):
        return "no change"
    return f"{'up' if change_mm > 0 else 'down'} {text}"


def give_or_take(plus_minus_mm: float, without: Sequence[str] = ()) -> str:
    """The plus-minus as the end of a phrase, and whose figures came `without` one; empty where neither is.

    >>> give_or_take(0.62)
    ', give or take 0.6 mm'
    >>> give_or_take(0.3, ["Shore Heron"])
    ', give or take 0.3 mm and more (no plus-minus is stated for Shore Heron)'
    >>> give_or_take(0.0, ["Shore Heron", "Shore Auk"])
    ' (no plus-minus is stated for Shore Heron and Shore Auk)'
    """
    said = f", give or take {number_text(plus_minus_mm, 1)} mm" if plus_minus_mm else ""
    if not without:
        return said
    return f"{said}{' and more' if said else ''} (no plus-minus is stated for {listed(without)})"
