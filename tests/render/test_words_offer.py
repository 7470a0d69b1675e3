"""The end of an offer in words."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import worlds
from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.offer_end import OfferEnd
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.render.words_offer import offer_words

STREET = Paid(Decimal("560.00"), "EUR", worlds.price("heron", 560), (), 50)
ENDS = OfferEnd(date(2026, 11, 25), 5, STREET)
ONCE = "After its last day the least known is EUR 560.00 "
SEEN = "(street price at Quayside Wheels, seen 2026-10-01)"


def even(amount: str | None, outcome: Outcome = Outcome.AT_PRICE) -> BreakEvens:
    room = BreakEven(outcome, None, None if amount is None else Decimal(amount))
    return BreakEvens({}, "heron", room, {}, Decimal(1200))


def test_whether_the_pick_would_stay_is_said() -> None:
    assert offer_words(ENDS, even("580.00"), None) == f"{ONCE}{SEEN}; it would stay first at that price."
    assert offer_words(ENDS, even(None, Outcome.ANY_PRICE), None).endswith(
        "it would stay first at that price."
    )
    assert offer_words(ENDS, even("540.00"), None) == (
        f"{ONCE}{SEEN}; at that price it would no longer be first."
    )


def test_over_the_budget_it_would_be_out() -> None:
    assert offer_words(ENDS, even("580.00"), Decimal(550)) == f"{ONCE}{SEEN}, which is over the budget."


def test_on_the_last_day_it_ends_today_and_nothing_may_be_known_of_tomorrow() -> None:
    last = replace(ENDS, last_day=date(2026, 11, 20), days_left=0)
    today = offer_words(last, even("580.00"), None)
    assert today.startswith("It ends today; after that the least known is EUR 560.00")
    nothing = replace(ENDS, after=Unpriced("no price is known that holds"))
    assert offer_words(nothing, even("1.00"), None) == "After its last day no price is known that holds."


def test_without_a_room_upwards_nothing_is_said_of_the_place() -> None:
    assert offer_words(ENDS, replace(even("1.00"), room=None), None) == f"{ONCE}{SEEN}."
