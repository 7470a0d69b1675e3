"""Why a product stands where it stands: points won and lost, and who is level with it."""

from collections.abc import Sequence

from spindlewise.answer.level_reasons import LevelWith, NotKnown
from spindlewise.answer.ranking import Placed
from spindlewise.decide.differences import Differences
from spindlewise.render.naming import Naming, listed, listed_most
from spindlewise.units import points_text

LEVEL = "their scores differ by less than the figures leave open"
"""What being level means, once a reply."""
UNKNOWN = "Level only by what is not known, not by merit"
MOST_NOT_KNOWN = 3
SAME_SCORE = "the same score"
TAKE = "Between level products, take the one that you like better."


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
        return SAME_SCORE
    return f"{points} points {'below' if found.total < 0 else 'above'}"


def level_sentences(reasons: Sequence[LevelWith], names: Naming, explained: bool = True) -> tuple[str, ...]:
    """Who is level with it, and who is so only by what nobody knows; `explained` says what level means.

    Of many, the first are named and the others counted; JSON and the sheet list all.
    """
    known = [each for each in reasons if not each.only_by]
    said = []
    if known:
        others = listed_most(names.product(each.product) for each in known)
        said.append(f"Level with it: {others}; {LEVEL}. {TAKE}" if explained else f"Level with it: {others}.")
    unknown = [each for each in reasons if each.only_by]
    if unknown:
        others = listed_most(_standing_apart(each, names) for each in unknown)
        figures = tuple(dict.fromkeys(figure for each in unknown for figure in each.only_by))
        said.append(f"{UNKNOWN}: {others}. {not_known_words(figures, names)}")
    return tuple(said)


def _standing_apart(each: LevelWith, names: Naming) -> str:
    points = points_text(abs(each.behind))
    if points == "0.0":
        return names.product(each.product)
    side = "behind" if each.behind > 0 else "ahead"
    return f"{names.product(each.product)} ({points} points {side} by what is known)"


def not_known_words(figures: Sequence[NotKnown], names: Naming) -> str:
    """What nobody knows of which product: 'Not known of Shore Heron: price.'"""
    by_product: dict[str, list[str]] = {}
    for each in figures:
        parts = f" ({listed(each.missing)})" if each.missing else ""
        by_product.setdefault(each.product, []).append(f"{names.criterion(each.criterion)}{parts}")
    said = [f"of {names.product(product)}, {listed(what)}" for product, what in by_product.items()]
    if len(said) > MOST_NOT_KNOWN:
        said = [*said[:MOST_NOT_KNOWN], f"the like of {len(said) - MOST_NOT_KNOWN} more"]
    return f"Not known: {'; '.join(said)}."


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
