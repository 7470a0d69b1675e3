"""How sure a pick is, in sentences that a viewer understands."""

import numpy as np
import pytest

import small_answers
import worlds
from spindlewise.answer.reply import reply_to
from spindlewise.decide.second_opinions import Reason, SecondOpinion, Stretch
from spindlewise.decide.stability import Stability
from spindlewise.decide.warnings import CountedTwice, NobodyLeft, WithoutEffect
from spindlewise.render.naming import Naming
from spindlewise.render.words_sureness import (
    agreement_words,
    doubt_sentences,
    idle_sentences,
    nobody_words,
    opinion_words,
    sureness_sentences,
    twice_words,
    world_words,
    worlds_of_100,
)

NAMES = Naming({"heron": "Shore Heron", "auk": "Shore Auk", "gull": "Shore Gull"}, {"price": "Price"})


def worlds_with(first):
    n = len(first)
    return Stability(
        ("auk", "gull", "heron")[:n],
        np.zeros((n, n)),
        np.array(first),
        np.zeros((n, 1)),
        10_000,
        1,
        lambda: np.zeros((n, n)),
    )


def test_first_in_so_many_of_100_worlds_with_its_error_and_the_others():
    said = world_words(worlds_with([0.826, 0.17, 0.004]), "auk", NAMES)

    assert said == "Shore Auk comes first in 83 of 100 worlds (give or take 0.8); Shore Gull in 17."


def test_certain_is_said_plainly():
    assert world_words(worlds_with([1.0, 0.0]), "auk", NAMES) == "Shore Auk comes first in all worlds drawn."


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (0.5, "50 of 100 worlds"),
        (0.9996, "more than 99 of 100 worlds"),
        (0.0004, "less than 1 of 100 worlds"),
        (0.0, "0 of 100 worlds"),
    ],
)
def test_no_chance_is_rounded_to_none_or_all(chance, said):
    assert worlds_of_100(chance) == said


def opinion(reason, tau=0.5):
    return SecondOpinion("TOPSIS", np.zeros(2), "heron", tau, reason)


def test_a_second_opinion_that_agrees_or_differs_with_the_reason():
    assert opinion_words(opinion(None), NAMES) == (
        "By another method, TOPSIS, Shore Heron comes first (tau-b 0.50), as here."
    )
    told = Reason(("gull",), (Stretch("price", 0.2, 0.3, 1.5), Stretch("detail", 0.1, 0.2, 2.0)))
    said = opinion_words(opinion(told, None), NAMES)
    assert "without Shore Gull it would agree (a rank reversal)" in said
    assert (
        "since it stretches each scale from the worst to the best of these products, price counts 30.0 % "
        "there in place of your 20.0 % and detail counts 20.0 % there in place of your 10.0 %." in said
    )
    assert "tau-b" not in said


def test_a_stretch_too_small_to_tell_is_not_given_as_the_reason():
    said = opinion_words(opinion(Reason((), (Stretch("price", 0.3, 0.31, 1.03),))), NAMES)

    assert said.endswith("It measures each product by the others; the scales here are fixed.")


@pytest.mark.parametrize(
    ("kind", "said"),
    [
        ("kin", "Price and weight partly count the same thing twice."),
        (
            "move together",
            "Among these candidates price and weight go together: they may count one thing twice.",
        ),
        ("pull apart", "Among these candidates price and weight pull against each other."),
    ],
)
def test_criteria_that_count_twice(kind, said):
    assert twice_words(CountedTwice(kind, "price", "weight", None, None), NAMES) == said


def test_which_need_to_drop():
    found = NobodyLeft("nobody left", (("budget", ("auk", "gull", "heron", "ibis")),), ())

    assert nobody_words(found, NAMES) == [
        "Without the budget there would be Shore Auk, Shore Gull, Shore Heron and 1 more."
    ]
    none = NobodyLeft("nobody left", (), ())
    assert nobody_words(none, NAMES) == [
        "Nothing meets all needs, and no single need, dropped, would bring anything back."
    ]


def replied(**buyer):
    products = [
        worlds.product(name, {"weight_g": (worlds.weighed(weight),)})
        for name, weight in (("auk", 330.0), ("gull", 300.0), ("heron", 360.0))
    ]
    prices = [worlds.price(name, amount) for name, amount in (("auk", 500), ("gull", 650), ("heron", 400))]
    return reply_to(worlds.desk(products, prices), worlds.buyer(**buyer))


def test_a_whole_reply_says_how_many_worlds_were_drawn_and_how_sure_the_buyer_is():
    said = sureness_sentences(replied(), NAMES)

    assert "10,000 were drawn" in said[1]
    assert "you are fairly sure of them" in said[1]
    assert [text.startswith("By another method, ") for text in said[2:-1]] == [True, True]
    assert said[-1].startswith("Kendall's tau-b tells how alike two orders are")
    assert sureness_sentences(replied(budget=10), NAMES) == ()


def test_doubts_of_a_reply():
    alike = doubt_sentences(replied(points={"price": 2, "weight": 1, "warranty": 1}), NAMES)
    assert "All candidates are alike on warranty: its 25.0 % of the weight tells nobody apart." in alike
    assert not any("decides nothing" in text and "warranty (" in text for text in alike)

    idle = doubt_sentences(replied(points={"price": 1000, "weight": 1}), NAMES)
    assert (
        "The weight of weight (0.1 %) decides nothing here: the other weights alone put all 3 products in "
        "the same order." in idle
    )
    found = [WithoutEffect("order stays", name, 0.1) for name in ("weight", "detail")]
    some = [*found, WithoutEffect("first stays", "price", 0.8)]
    assert idle_sentences(some, replied(), NAMES) == [
        "The weights of weight (10.0 %) and detail (10.0 %) decide nothing here, each for itself: leave out "
        "any one of them, and the others put all 3 products in the same order."
    ]
    assert idle_sentences(some[2:], replied(), NAMES) == []

    missed = doubt_sentences(replied(budget=395), NAMES)
    assert "Without the budget there would be Shore Auk, Shore Gull and Shore Heron." in missed
    assert "Shore Heron misses the budget by little: EUR 5.00, 1.3 %." in missed


def test_pairwise_statements_say_how_far_they_agree():
    def pairs(times):
        stated = (
            {"more": "price", "than": "weight", "times": 2.0},
            {"more": "weight", "than": "running_time", "times": 3.0},
            {"more": "price", "than": "running_time", "times": times},
        )
        return doubt_sentences(replied(weights={"pairs": stated}), NAMES)[-1]

    assert pairs(6.0) == (
        "Your comparisons agree well enough (consistency ratio 0.000; 0 is without any contradiction, up to "
        "0.1 will do)."
    )
    assert pairs(4.0).startswith("Your comparisons agree well enough (consistency ratio 0.01")
    assert "fits least: the others suggest" in pairs(4.0)
    assert pairs(0.5).startswith("Your comparisons disagree (consistency ratio 0.")
    assert agreement_words(None) == "Your comparisons do not quite agree."


def test_the_small_catalogs_reply_speaks_of_worlds():
    assert any("worlds" in text for text in sureness_sentences(small_answers.reply(), small_answers.names()))
