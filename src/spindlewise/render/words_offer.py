"""What a reader is told of a price that runs out: its last day, what holds then, whether the pick stays."""

from decimal import Decimal

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.offer_end import OfferEnd
from spindlewise.answer.paid import Paid
from spindlewise.decide.break_even import Outcome
from spindlewise.render.words_figures import paid_words


def offer_words(end: OfferEnd, even: BreakEvens, budget: Decimal | None) -> str:
    """The end of the pick's price in two sentences: when, and what then."""
    day = end.last_day.isoformat()
    last = (
        f"This price ends today, on {day}" if end.days_left == 0 else f"The last day of this price is {day}"
    )
    if not isinstance(end.after, Paid):
        return f"{last}; {end.after.because}."
    said = f"{last}. After that the least known is {paid_words(end.after)}"
    if budget is not None and end.after.amount > budget:
        return f"{said}, which is over the budget."
    room = even.room
    if room is None or room.outcome not in (Outcome.AT_PRICE, Outcome.ANY_PRICE):
        return f"{said}."
    if room.amount is None or end.after.amount <= room.amount:
        return f"{said}; it would stay first at that price."
    return f"{said}; at that price it would no longer be first."
