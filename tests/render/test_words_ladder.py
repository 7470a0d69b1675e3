from dataclasses import replace
from datetime import date
from decimal import Decimal

from small_answers import names
from spindlewise.answer.ladder import HELD_BACK, Climb
from spindlewise.answer.standing import Standing
from spindlewise.cost.ladder import ladder
from spindlewise.cost.quadrants import Offer
from spindlewise.render.blocks import Bullets, Paragraph, Table
from spindlewise.render.words_ladder import ladder_blocks, ladder_sentences, off_words, pick_sentence


def offer(name: str, price: int, grams: float, spread: float = 1.0) -> Offer:
    return Offer(name, Decimal(price), grams, grams - spread, grams + spread)


def climbed(*offers: Offer, owned: bool = True, start: int = 0) -> Climb:
    first = offer("start", start, 320.0)
    weights = {
        o.product: Standing("weight", o.weight_g, None, None, "g", "measured", None, "")
        for o in (first, *offers)
    }
    return Climb(
        "start",
        owned,
        "EUR",
        date(2026, 11, 20),
        ladder(first, offers),
        (("ghost", "weight unknown: why"),),
        weights,
    )


STEPS = climbed(
    offer("light", 60, 300), offer("lightest", 160, 280), offer("silly", 170, 300), offer("same", 50, 320)
)


def test_steps_are_told_with_the_price_of_each_further_gram() -> None:
    first, second = ladder_sentences(STEPS, names())[:2]
    assert first == "light: 20 g lighter, costs EUR 60.00, EUR 3.00 a gram."
    assert second == (
        "lightest: 40 g lighter, costs EUR 160.00, EUR 4.00 a gram; "
        "each further gram after the light costs EUR 5.00."
    )


def test_what_a_safety_notice_holds_back_is_said_to_be_left_out() -> None:
    held = replace(STEPS, left_out=(("frail", HELD_BACK), ("brittle", HELD_BACK), *STEPS.left_out))
    assert ladder_sentences(held, names())[-1] == (
        "Left out: frail and brittle, since a safety notice holds them back."
    )
    bullets = ladder_blocks(held, names())[-1]
    assert isinstance(bullets, Bullets)
    assert bullets.items[0] == "frail: a safety notice holds it back."


def test_a_notice_on_the_present_pedals_cannot_be_missed() -> None:
    blocks = ladder_blocks(STEPS, names(), {"start"})
    (caution,) = [b for b in blocks if isinstance(b, Paragraph) and b.tone == "caution"]
    assert caution.text == "start has a standing safety notice: read it first."


def test_what_is_not_on_the_ladder_says_why() -> None:
    why = {step.product: off_words(step, STEPS, names()) for step in STEPS.steps}
    assert why["silly"].endswith("no lighter and no cheaper than light or lightest")
    assert why["same"] == "costs EUR 50.00; the weighings cannot tell which of the two is lighter"


def test_extended_dominance_and_dominance_by_the_start() -> None:
    extended = climbed(offer("a", 100, 310), offer("b", 110, 290))
    step = next(s for s in extended.steps if s.product == "a")
    assert off_words(step, extended, names()).endswith("a gram is cheaper between start and b")
    worse = climbed(offer("heavy", 100, 350))
    assert off_words(worse.steps[1], worse, names()) == (
        "30 g heavier, costs EUR 100.00; no lighter and no cheaper than start"
    )


def test_heavier_and_cheaper_saves_money_for_each_gram() -> None:
    found = climbed(offer("cheap", 40, 340), owned=False, start=100)
    assert pick_sentence("cheap", found, names()) == (
        "cheap: 20 g heavier, costs EUR 60.00 less, EUR 3.00 saved for each gram added."
    )
    assert pick_sentence("nobody", found, names()) == ""


def test_lighter_and_not_dearer() -> None:
    found = climbed(offer("gift", 100, 300), owned=False, start=100)
    assert pick_sentence("gift", found, names()) == "", "a step is told as a step"
    assert ladder_sentences(found, names())[0] == "gift: 20 g lighter, costs the same."
    table = next(b for b in ladder_blocks(found, names()) if isinstance(b, Table))
    assert table.rows[0][5] == "not dearer"


def test_an_empty_ladder_says_so_and_what_was_left_out() -> None:
    found = climbed(offer("heavy", 100, 350))
    assert ladder_sentences(found, names()) == (
        "Nothing that could be bought here is reliably lighter than the start.",
    )
    blocks = ladder_blocks(found, names())
    assert any("reliably lighter than start" in b.text for b in blocks if isinstance(b, Paragraph))
    assert any("ghost: weight unknown: why." in b.items for b in blocks if isinstance(b, Bullets))
