"""A place in a ranking as one number or, where the figures cannot tell places apart, as the range of them."""

from spindlewise.answer.ranking import Placed


def place_text(placed: Placed) -> str:
    """'3' for a place of its own, '2 to 4' for one that three pedals share; empty for one that is held back.

    The rank is 1 more than the number of pedals that stand clearly above; those that are level follow within
    the range, whatever their own level neighbours are.
    """
    if placed.held_back:
        return ""
    last = placed.rank + len(placed.level_with)
    return str(placed.rank) if last == placed.rank else f"{placed.rank} to {last}"
