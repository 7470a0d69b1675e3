"""Why a product stands where it stands: points won and lost, and who is level with it."""

from spindlewise.answer.ranking import Placed
from spindlewise.decide.differences import Differences
from spindlewise.render.naming import Naming, listed
from spindlewise.units import points_text

LEVEL = "the difference lies within what the figures are sure of"


def difference_words(found: Differences, names: Naming) -> str:
    """Where it gains and where it loses points against its rival: 'gains 6.0 points on weight, loses …'."""
    said = []
    for verb, sign in (("gains", 1), ("loses", -1)):
        parts = [
            (points_text(abs(part.points)), names.criterion(part.criterion))
            for part in found.parts
            if part.points * sign > 0 and points_text(abs(part.points)) != "0.0"
        ]
        if parts:
            first, *rest = parts
            words = [f"{first[0]} points on {first[1]}", *(f"{points} on {name}" for points, name in rest)]
            said.append(f"{verb} {listed(words)}")
    return ", ".join(said) if said else "is alike on every count"


def behind_words(found: Differences) -> str:
    """By how much it trails or leads its rival in all."""
    points = points_text(abs(found.total))
    if points == "0.0":
        return "the same score"
    return f"{points} points {'below' if found.total < 0 else 'above'}"


def level_words(placed: Placed, names: Naming) -> str:
    """Who is level with it, in a sentence; empty where nobody is."""
    if not placed.level_with:
        return ""
    others = listed(names.product(name) for name in placed.level_with)
    return f"Level with it: {others}; {LEVEL}. Between level products, take the one that you like better."


def score_words(placed: Placed) -> str:
    """The expected score with its range."""
    low, expected, high = (
        points_text(v) for v in (placed.score.low, placed.score.expected, placed.score.high)
    )
    if low == high:
        return f"{expected} of 100"
    return f"{expected} of 100, between {low} and {high} as far as the figures are sure"


def place_words(placed: Placed) -> str:
    """The place as a table shows it: a range where it is shared with those that are level.

    The first number counts those that stand clearly above. A product that a safety notice holds back has no
    place.
    """
    if placed.held_back:
        return "-"
    last = placed.rank + len(placed.level_with)
    return str(placed.rank) if last == placed.rank else f"{placed.rank} to {last}"
