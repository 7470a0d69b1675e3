"""What a reader is told of a price that runs out: its last day, what holds then, whether the pick stays."""

from decimal import Decimal

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.offer_end import OfferEnd
from spindlewise.answer.paid import Paid
from spindlewise.decide.break_even import Outcome
from spindlewise.render.words_figures import paid_words


def offer_words(end: OfferEnd, even: BreakEvens, budget: Decimal | None) -> str:
    """What holds after the last day of the pick's price, beside which it stands."""
    then = "It ends today; after that" if end.days_left == 0 else "After its last day"
    if not isinstance(end.after, Paid):
        return f"{then} {end.after.because}."
    said = f"{then} the least known is {paid_words(end.after)}"
    if budget is not None and end.after.amount > budget:
        return f"{said}, which is over the budget."
    room = even.room
    if room is None or room.outcome not in (Outcome.AT_PRICE, Outcome.ANY_PRICE):
        return f"{said}."
    if room.amount is None or end.after.amount <= room.amount:
        return f"{said}; it would stay first at that price."
    return f"{said}; at that price it would no longer be first."
