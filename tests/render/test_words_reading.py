from dataclasses import replace

import pytest

from small_answers import buyer, desk, reply
from spindlewise.answer.ranking import rank
from spindlewise.reception.doubled_side import doubled_error
from spindlewise.render.blocks import Bullets, Paragraph
from spindlewise.render.words_reading import (
    doubled_words,
    other_reading_words,
    reading_blocks,
    reception_words,
    trust_words,
)


def placed(product: str, name: str = "phone-only"):  # type: ignore[no-untyped-def]
    return next(p for p in reply(name).ranking.placed if p.product == product)


def test_both_sides_with_balance_and_firmware() -> None:
    found = reply().ranking.placed[0].received.reception
    text = reception_words(found)
    assert text.startswith(
        "On head unit on the bars: shows the power of both legs over ANT+ from firmware 3.1 on"
    )
    assert "balance arrives, stroke metrics arrive." in text


@pytest.mark.parametrize(
    ("mode", "said"),
    [("one side only", "half a reading"), ("nothing", "shows nothing"), ("one side doubled", "doubled")],
)
def test_what_is_less_says_why(mode: str, said: str) -> None:
    found = replace(placed("tarnquell-liskar-mono").received.reception, mode=mode, because=("of this",))
    assert said in reception_words(found)
    assert "(of this)" in reception_words(found)


def test_an_unknown_mode_says_its_bounds() -> None:
    found = placed("tarnquell-liskar-mono").received.reception
    unsure = replace(found, mode="unknown", at_least="nothing", at_most="both sides")
    assert "unknown: at least nothing, at most both sides" in reception_words(unsure)
    assert "what it shows is unknown" in reception_words(replace(unsure, at_least="both sides"))
    doubtful = replace(
        reply().ranking.placed[0].received.reception, balance="unknown", stroke_metrics="unknown"
    )
    assert "balance may or may not arrive" in reception_words(doubtful)


def test_a_doubled_side_in_percent_and_watts() -> None:
    text = doubled_words(doubled_error((0.47, 0.49), "left", 250), "phone")
    assert text == (
        "Doubling one leg reads low there: -6.0 % to -2.0 % at your own balance, "
        "which is -15 W to -5 W at your threshold power (phone)."
    )
    assert "for 19 riders of 20, since your balance is unknown" in doubled_words(doubled_error(None), "phone")
    single = doubled_words(doubled_error((0.47, 0.47), "left", 250), "phone")
    assert "-6.0 % at your own balance, which is -15 W at" in single


def test_the_doubled_side_stands_beside_its_receiver() -> None:
    product = desk().catalog.products["tarnquell-liskar-mono"]
    blocks = reading_blocks(placed("tarnquell-liskar-mono"), product, buyer("phone-only"))
    assert isinstance(blocks[0], Bullets)
    assert any("Doubling one leg" in item for item in blocks[0].items)
    text = other_reading_words("Mono", placed("tarnquell-liskar-mono"), product, buyer("phone-only"))
    assert text.startswith("Mono: On phone on the bars: shows one leg's power doubled over Bluetooth")
    assert "Doubling one leg" in text


def test_an_assumed_receiver_is_said_to_be_assumed() -> None:
    ranking = rank(desk(), buyer("phone-only").model_copy(update={"receivers": ()}))
    first = ranking.placed[0]
    blocks = reading_blocks(first, desk().catalog.products[first.product], ranking.buyer)
    assert isinstance(blocks[0], Paragraph)
    assert "best case" in blocks[0].text


def test_how_far_a_reading_may_stray_or_why_nobody_can_say() -> None:
    found = reply().ranking.placed[0]
    assert "of the truth in about 19 cases of 20; bench spread does most of it" in trust_words(found)
    budget = replace(found.received.budget, expanded_pct=None, missing=("claimed tolerance",))
    lacking = replace(found, received=replace(found.received, budget=budget))
    assert trust_words(lacking).endswith("cannot be said; not known: claimed tolerance.")
    nothing = replace(
        found, received=replace(found.received, budget=replace(budget, missing=(), note="nothing arrives"))
    )
    assert trust_words(nothing).endswith("cannot be said; nothing arrives.")
