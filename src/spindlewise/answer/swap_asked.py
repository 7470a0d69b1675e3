"""The swap that somebody asked for, with what hangs on the rider besides: head unit and climb."""

from dataclasses import dataclass
from datetime import date

from spindlewise.answer.crank_caution import CrankCaution, crank_caution
from spindlewise.answer.gram_worth import NO_CLIMB, GramWorth, gram_worth
from spindlewise.answer.swap import Swap, swap
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.product import Product


@dataclass(frozen=True, slots=True)
class SwapAsked:
    """What moves, a wrong crank length in the head unit, and what the grams are worth uphill."""

    swap: Swap
    crank: CrankCaution | None
    gram_worth: GramWorth | str
    """The seconds on the buyer's climb, or what is missing to tell them."""


def swap_asked(
    old: Product, new: Product, day: date, buyer: Buyer | None, general: tuple[str, ...]
) -> SwapAsked:
    """What the swap does; without a buyer there is no head unit and no climb."""
    found = swap(old, new, day, buyer, general)
    if buyer is None:
        return SwapAsked(found, None, NO_CLIMB)
    return SwapAsked(found, crank_caution(buyer), gram_worth(buyer, found.weight))
