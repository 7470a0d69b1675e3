from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest

import worlds
from small_answers import names, reply
from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.near_misses import NearMiss
from spindlewise.answer.needs import Failure
from spindlewise.answer.reply import reply_to
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.decide.smallest_change import WeightChange
from spindlewise.decide.weight_range import WeightRange
from spindlewise.render.naming import naming
from spindlewise.render.words_outlook import (
    break_even_words,
    change_words,
    near_miss_words,
    outlook_sentences,
    range_sentences,
    range_words,
    room_words,
)

AT = BreakEven(Outcome.AT_PRICE, 57850, Decimal("578.50"))
WEIGHTS = {"auk": 300, "brant": 400, "crake": 410}


def test_all_that_would_change_the_answer_is_named() -> None:
    said = outlook_sentences(reply(), names())
    assert said[0].startswith("Brellowick Ferrowen 2 stays first up to a price of EUR ")
    assert any(
        s == "Tarnquell Liskar Duo would score as much as the pick at EUR 578.50; it costs EUR 619.00."
        for s in said
    )
    assert any(s.startswith("The pick stays first while price counts for ") for s in said)
    assert said[-1].startswith("The smallest change of weights")


def test_without_a_pick_there_is_nothing_to_lose() -> None:
    assert outlook_sentences(reply("nothing-for-it"), names()) == ()


@pytest.mark.parametrize(
    ("outcome", "said"),
    [
        (Outcome.HELD_BACK, "while its safety notice stands"),
        (Outcome.ANY_PRICE, "at any price"),
    ],
)
def test_break_even_prices_that_are_no_price(outcome: Outcome, said: str) -> None:
    assert said in break_even_words("X", BreakEven(outcome), "EUR 9.00", "EUR")


def test_room_upwards() -> None:
    free, tight = worlds.buyer(), worlds.buyer(budget=Decimal(500))
    rich = worlds.buyer(budget=Decimal(1300))

    def said(room: BreakEven | None, buyer: Buyer = free, others: bool = True) -> str:
        against = {"y": AT} if others else {}
        return room_words("X", BreakEvens(against, "x", room, {}, Decimal(1200)), buyer)

    assert said(AT) == said(AT, rich) == "X stays first up to a price of EUR 578.50."
    assert said(AT, tight) == (
        "X stays first up to the budget of EUR 500.00; by its score, up to EUR 578.50."
    )
    anyhow = BreakEven(Outcome.ANY_PRICE)
    flat = ": beyond EUR 1,200.00 dearer costs no more points."
    assert said(anyhow) == f"X stays first at any price{flat}"
    assert said(anyhow, rich) == f"X stays first at any price up to the budget of EUR 1,300.00{flat}"
    assert said(anyhow, tight) == "X stays first at any price up to the budget of EUR 500.00."
    assert said(anyhow, others=False) == "X stays first at any price, since nothing else meets the needs."
    assert said(BreakEven(Outcome.NO_PRICE)) == said(None) == ""


def test_those_that_no_price_would_help_share_a_sentence() -> None:
    products = [worlds.product(n, {"weight_g": (worlds.weighed(w),)}) for n, w in WEIGHTS.items()]
    desk = worlds.desk(products, [worlds.price(p.id, 500) for p in products])
    found = reply_to(desk, worlds.buyer(points={"weight": 90, "price": 10}))
    said = outlook_sentences(found, naming(desk.catalog))
    assert (
        "Invented Works Brant and Invented Works Crake would score less than the pick at any price, even for "
        "nothing." in said
    )


def test_where_no_money_is_weighed_no_price_is_named() -> None:
    products = [worlds.product(n, {"weight_g": (worlds.weighed(w),)}) for n, w in WEIGHTS.items()]
    desk = worlds.desk(products, [worlds.price(p.id, 500) for p in products])
    said = outlook_sentences(reply_to(desk, worlds.buyer(points={"weight": 1})), naming(desk.catalog))
    assert said == ("Neither price nor ownership is weighed, so no price changes the order.",)


def test_ranges_of_weight() -> None:
    both = WeightRange("price", 0.3, 0.1, 0.5, "tarnquell-liskar-duo", "pellamund-orrestad")
    assert range_words(both, names()) == (
        "The pick stays first while price counts for 10.0 % to 50.0 % (now 30.0 %); below that "
        "Tarnquell Liskar Duo leads and above it Pellamund Orrestad leads."
    )
    low = WeightRange("price", 0.3, 0.0, 0.5, None, "pellamund-orrestad")
    assert range_words(low, names()) == (
        "The pick stays first while price counts for at most 50.0 % (now 30.0 %); "
        "above that Pellamund Orrestad leads."
    )
    high = WeightRange("price", 0.3, 0.1, 1.0, "pellamund-orrestad", None)
    assert "for at least 10.0 % (now 30.0 %); below that" in range_words(high, names())


def test_criteria_that_never_take_the_first_place_share_a_sentence() -> None:
    never = [WeightRange(name, 0.3, 0.0, 1.0, None, None) for name in ("price", "warranty", "weight")]
    (said,) = range_sentences(never, names())
    assert said == (
        "However much price (now 30.0 %), warranty (now 30.0 %) or weight (now 30.0 %) counts, the pick "
        "stays first. The other weights keep their proportions here."
    )
    assert range_sentences((), names()) == []


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
