"""Trades, promises, cranks and seconds, in sentences."""

from dataclasses import replace
from decimal import Decimal

import pytest

import worlds
from spindlewise.answer.crank_caution import CrankCaution
from spindlewise.answer.reply import reply_to
from spindlewise.answer.trades import Trade
from spindlewise.reception.crank_setting import crank_setting_error
from spindlewise.render.naming import Naming
from spindlewise.render.words_extras import (
    crank_words,
    gram_price,
    gram_sentence,
    promise_sentences,
    trade_sentences,
    trade_words,
)

NAMES = Naming({"heron": "Shore Heron"}, {"weight": "Weight", "detail": "Detail"})


def test_so_much_weighs_as_much_as_so_much_money_or_comes_to_points():
    grams = Trade("weight", 0.2, 10.0, "g", "", "", 1.2, Decimal("48.67"))

    assert trade_words(grams, "EUR", NAMES) == "Weight (20.0 %): 10 g weigh as much as about EUR 49."
    points = Trade("weight", 0.2, 10.0, "g", "", "", 1.2, None)
    assert trade_words(points, "EUR", NAMES) == "Weight (20.0 %): 10 g come to 1.2 points."
    named = Trade("detail", 0.1, None, "", "power and balance", "power only", 2.0, Decimal(90))
    assert trade_words(named, "EUR", NAMES) == (
        "Detail (10.0 %): the step from 'power only' to 'power and balance' weighs as much as about EUR 90."
    )
    year = Trade("weight", 0.2, 1.0, "years", "", "", 1.2, Decimal("140.10"))
    assert trade_words(year, "EUR", NAMES) == "Weight (20.0 %): 1 year weighs as much as about EUR 140."


def test_money_is_told_in_points_and_what_no_price_reaches_is_not_told_as_a_price():
    price = Trade("price", 0.4, 10_000.0, "JPY", "", "", 2.7, None)
    assert trade_words(price, "JPY", NAMES) == "price (40.0 %): JPY 10,000 more cost 2.7 points."
    span = (Decimal(300), Decimal(1100))
    vast = Trade("detail", 0.5, None, "", "power and balance", "power only", 20.0, Decimal(1660), span)
    assert trade_words(vast, "EUR", NAMES) == (
        "Detail (50.0 %): the step from 'power only' to 'power and balance' weighs more than all that lies "
        "between EUR 300 and EUR 1,100."
    )


@pytest.mark.parametrize(
    ("stated", "watts", "said"),
    [
        (
            True,
            250.0,
            "The head unit has another crank length than you will ride (170 mm set, 172.5 mm ridden): "
            "power reads 1.4 % low, 4 W at threshold power. "
            "Set it right; no score here counts that error.",
        ),
        (
            False,
            None,
            "Set the new crank length in the head unit: left as it is (170 mm set, 172.5 mm ridden), "
            "power would read 1.4 % low.",
        ),
    ],
)
def test_a_wrong_crank_length_is_told_with_what_it_does(stated, watts, said):
    assert crank_words(CrankCaution(crank_setting_error(170.0, 172.5, watts), stated)) == said


def replied(links=None, **buyer):
    changes = {} if links is None else {"links": links}
    heron = worlds.product("heron", {"weight_g": (worlds.weighed(300.0),)}, **changes)
    desk = worlds.desk([heron, worlds.plain("gull", 360.0)], [worlds.price("heron", 500)])
    return reply_to(desk, worlds.buyer(present_pedals="gull", **buyer))


def test_seconds_on_the_buyers_climb_or_nothing():
    climb = {"climb": {"length_m": 10_000.0, "gradient_pct": 8.0, "power_w": 250.0}}
    said = gram_sentence(
        replied(riding=climb, needs={"rider_mass_kg": 72.0}, bike={"bike_mass_kg": 8.0}).gram_worth
    )

    assert said.startswith("On your climb of about 46 minutes that weight saves 1.9 s (")
    assert "Martin et al. 1998" in said
    assert gram_sentence(replied().gram_worth) == ""
    assert gram_sentence(replied(riding=climb, needs={"rider_mass_kg": 72.0}).gram_worth) == (
        "What the weight is worth on your climb needs the bike's weight."
    )


def test_a_gram_in_money_stands_beside_a_gram_in_seconds():
    climb = {"climb": {"length_m": 10_000.0, "gradient_pct": 8.0, "power_w": 250.0}}
    reply = replied(riding=climb, needs={"rider_mass_kg": 72.0}, bike={"bike_mass_kg": 8.0})

    assert gram_price(reply) == "EUR 8.33"
    said = gram_sentence(reply.gram_worth, gram_price(reply))
    assert said.endswith(" So EUR 8.33 a gram stand beside 0.031 s a gram.")
    assert gram_price(replace(reply, climb=None)) == gram_price(replace(reply, pick=None)) == ""
    assert gram_price(replace(reply, climb=replace(reply.climb, steps=reply.climb.steps[:1]))) == ""


def test_a_promise_of_no_stated_version_says_so():
    promise = {"since": "promised", "firmware": "unknown", "source": "maker"}
    carries = (
        {"what": "power", "how": "one side doubled", **worlds.START},
        {"what": "power", "how": "both sides", **promise},
    )
    (said,) = promise_sentences(replied(links=({"protocol": "ANT+", "carries": carries},)), NAMES)

    assert said.startswith("Shore Heron: firmware of a version that nobody states is promised, not there; ")


def test_a_promise_is_told_and_not_bought():
    promise = {"since": "promised", "firmware": "4.0", "source": "maker"}
    carries = (
        {"what": "power", "how": "one side doubled", **worlds.START},
        {"what": "power", "how": "both sides", **promise},
        {"what": "balance", "how": "carried", **promise},
    )
    said = promise_sentences(replied(links=({"protocol": "ANT+", "carries": carries},)), NAMES)

    assert said == (
        "Shore Heron: firmware 4.0 is promised, not there; with it head unit would show both sides and "
        "receive balance (today: one side doubled).",
    )


def test_every_weight_has_its_sentence():
    assert len(trade_sentences(replied(), NAMES)) == 3


def test_kept_promises_that_would_change_the_pick_are_said_and_more_than_power_is_told():
    promise = {"since": "promised", "firmware": "4.0", "source": "maker"}
    carries = (
        {"what": "power", "how": "both sides", **worlds.START},
        {"what": "balance", "how": "carried", **promise},
        {"what": "stroke metrics", "how": "carried", **promise},
    )
    heron = worlds.product(
        "heron", {"weight_g": (worlds.weighed(300.0),)}, links=({"protocol": "ANT+", "carries": carries},)
    )
    other = worlds.product("siskin", {"weight_g": (worlds.weighed(400.0),)})
    desk = worlds.desk([heron, other], [worlds.price("heron", 500), worlds.price("siskin", 500)])
    reply = reply_to(desk, worlds.buyer(points={"detail": 9, "weight": 1}))
    said = promise_sentences(reply, NAMES)

    assert said == (
        "Shore Heron: firmware 4.0 is promised, not there; with it head unit would receive balance and "
        "receive stroke metrics (today: both sides).",
        "If all promises were kept, the pick would be Shore Heron. A promise is not bought here.",
    )
