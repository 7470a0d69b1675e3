from dataclasses import replace

import pytest

from small_answers import buyer, desk, names, reply
from spindlewise.answer.freed_channel import Freed
from spindlewise.answer.ranking import rank
from spindlewise.buyer.receiver import Channels
from spindlewise.render.blocks import Bullets, Paragraph, Table
from spindlewise.render.words_reading import (
    channel_words,
    freed_words,
    other_reading_words,
    reading_blocks,
    reception_words,
)


def placed(product: str, name: str = "phone-only"):  # type: ignore[no-untyped-def]
    return next(p for p in reply(name).ranking.placed if p.product == product)


def test_both_sides_with_balance_and_firmware() -> None:
    found = reply().ranking.placed[0].received.reception
    text = reception_words(found)
    assert text.startswith(
        "On head unit on the bars: shows the power of both legs over ANT+ on 1 channel from firmware 3.1 on"
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
    also = replace(found, because=("of this", f"over ANT+: {mode}", "over Bluetooth: both sides"))
    assert "(of this; over Bluetooth: both sides)" in reception_words(also)


def test_an_unknown_mode_says_its_bounds() -> None:
    found = placed("tarnquell-liskar-mono").received.reception
    unsure = replace(found, mode="unknown", at_least="nothing", at_most="both sides")
    assert "unknown: at least nothing, at most both sides" in reception_words(unsure)
    assert "what it shows is unknown" in reception_words(replace(unsure, at_least="both sides"))
    doubtful = replace(
        reply().ranking.placed[0].received.reception, balance="unknown", stroke_metrics="unknown"
    )
    assert "balance may or may not arrive" in reception_words(doubtful)


def test_the_doubled_side_stands_beside_its_receiver() -> None:
    product = desk().catalog.products["tarnquell-liskar-mono"]
    blocks = reading_blocks(placed("tarnquell-liskar-mono"), product, buyer("phone-only"))
    assert isinstance(blocks[0], Bullets)
    assert any("Doubling one leg" in item for item in blocks[0].items)
    assert isinstance(blocks[-1], Table)
    (text,) = other_reading_words("Mono", placed("tarnquell-liskar-mono"), product, buyer("phone-only"))
    assert text.startswith("Mono: On phone on the bars: shows one leg's power doubled over Bluetooth")
    assert "Doubling one leg" in text


def test_an_assumed_receiver_is_said_to_be_assumed() -> None:
    ranking = rank(desk(), buyer("phone-only").model_copy(update={"receivers": ()}))
    first = ranking.placed[0]
    blocks = reading_blocks(first, desk().catalog.products[first.product], ranking.buyer)
    assert isinstance(blocks[0], Paragraph)
    assert "best case" in blocks[0].text


def test_stroke_metrics_may_arrive_of_a_doubled_side() -> None:
    found = replace(placed("tarnquell-liskar-mono").received.reception, stroke_metrics="arrives")
    assert "; balance does not arrive, stroke metrics arrive (" in reception_words(found)
    nothing = replace(found, mode="nothing", protocol=None, channels_used=0, because=("no radio",))
    assert reception_words(nothing) == "On phone on the bars: shows nothing (no radio)."


def test_two_sensors_take_two_channels_and_the_reason_for_no_balance_is_told() -> None:
    both = replace(
        reply().ranking.placed[0].received.reception,
        channels_used=2,
        firmware=None,
        balance="does not arrive",
        because=("each pedal is a sensor", "the receiver does not show balance"),
    )
    assert reception_words(both) == (
        "On head unit on the bars: shows the power of both legs over ANT+ on 2 channels; balance does not "
        "arrive, stroke metrics arrive (the receiver does not show balance)."
    )


def test_channels_that_other_sensors_take_are_counted() -> None:
    (receiver,) = buyer("club-racer").receivers
    assert channel_words(receiver) == (
        "Of 8 channels of head unit on the bars, heart rate and speed take 2; free for power: 6."
    )
    crowded = receiver.model_copy(update={"channels": Channels(total=1, kept=("heart rate", "cadence"))})
    assert channel_words(crowded).endswith("free for power: 0, and the sensors lack 1 already.")
    assert channel_words(receiver.model_copy(update={"channels": Channels(total=1)})) == ""
    assert channel_words(receiver.model_copy(update={"channels": "unlimited"})) == ""


def test_a_channel_freed_by_the_cadence_sensor() -> None:
    then = reply().ranking.placed[0].received.reception
    now = replace(then, mode="one side only", balance="does not arrive", stroke_metrics="does not arrive")
    assert freed_words(Freed("tarnquell-liskar-duo", now, then), names()) == (
        "Tarnquell Liskar Duo: pedals send cadence with the power. With the cadence sensor's channel free, "
        "head unit on the bars would show both sides, receive balance and receive stroke metrics "
        "(now: one side only)."
    )
