from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest

from small_answers import names, reply
from spindlewise.answer.near_misses import NearMiss
from spindlewise.answer.needs import Failure
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.decide.smallest_change import WeightChange
from spindlewise.decide.weight_range import WeightRange
from spindlewise.render.words_outlook import (
    break_even_words,
    change_words,
    near_miss_words,
    outlook_sentences,
    range_words,
    room_words,
)

AT = BreakEven(Outcome.AT_PRICE, 57850, Decimal("578.50"))


def test_all_that_would_change_the_answer_is_named() -> None:
    said = outlook_sentences(reply(), names())
    assert said[0].startswith("Brellowick Ferrowen 2 stays first up to a price of EUR ")
    assert any(
        s == "Tarnquell Liskar Duo would draw level with the pick at EUR 578.50; it costs EUR 619.00."
        for s in said
    )
    assert any(s.startswith("The pick stays first while price counts for ") for s in said)
    assert said[-1].startswith("The smallest change of weights")


def test_without_a_pick_there_is_nothing_to_lose() -> None:
    assert outlook_sentences(reply("nothing-for-it"), names()) == ()


@pytest.mark.parametrize(
    ("outcome", "said"),
    [
        (Outcome.NO_PRICE, "not even for nothing"),
        (Outcome.HELD_BACK, "while its safety notice stands"),
        (Outcome.ANY_PRICE, "at any price"),
    ],
)
def test_break_even_prices_that_are_no_price(outcome: Outcome, said: str) -> None:
    assert said in break_even_words("X", BreakEven(outcome), "EUR 9.00", "EUR")


def test_room_upwards() -> None:
    assert room_words("X", AT, "EUR") == "X stays first up to a price of EUR 578.50."
    assert (
        room_words("X", BreakEven(Outcome.ANY_PRICE), "EUR") == "X stays first at any price within the needs."
    )
    assert room_words("X", BreakEven(Outcome.NO_PRICE), "EUR") == room_words("X", None, "EUR") == ""


def test_ranges_of_weight() -> None:
    both = WeightRange("price", 0.3, 0.1, 0.5, "tarnquell-liskar-duo", "pellamund-orrestad")
    assert range_words(both, names()) == (
        "The pick stays first while price counts for 10.0 % to 50.0 % (now 30.0 %); below that "
        "Tarnquell Liskar Duo leads and above it Pellamund Orrestad leads."
    )
    never = WeightRange("price", 0.3, 0.0, 1.0, None, None)
    assert range_words(never, names()) == "However much price counts (now 30.0 %), the pick stays first."


def test_the_smallest_change_and_none_at_all() -> None:
    found = reply()
    assert change_words(None, found, names()) == "No weights at all would put another product first."
    shares = found.ranking.weighed.shares
    tiny = WeightChange("a", "tarnquell-liskar-duo", shares, 0.0)
    assert "too small to print" in change_words(tiny, found, names())
    moved = WeightChange("a", "tarnquell-liskar-duo", np.roll(shares, 1), 0.1)
    assert "price 10.0 % instead of 30.0 %" in change_words(moved, found, names())


def test_near_misses() -> None:
    paid = reply().ranking.placed[0].paid
    budget = NearMiss("pellamund-orrestad", 64.6, Failure("budget", "costs too much"), paid)
    assert near_miss_words(budget, names(), True) == (
        "Pellamund Orrestad: costs too much. It would score 64.6, at or above the pick."
    )
    unsafe = replace(budget, failure=Failure("cleats", "cleat drilling unknown", safety=True))
    text = near_miss_words(unsafe, names(), False)
    assert text.startswith(
        "Pellamund Orrestad: out for safety, cleat drilling unknown. It would score 64.6, had"
    )
    assert "EUR 689.00 (" in text
