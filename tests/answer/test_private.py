"""What is kept private is counted nowhere but in what it keeps out."""

import pytest

import worlds
from spindlewise.answer.private import barred, for_all_eyes, without_private
from spindlewise.answer.ranking import rank
from spindlewise.answer.reply import reply_to

PRIVATE = {
    "needs": {"rider_mass_kg": 100.0},
    "riding": {"balance_left_pct": {"low": 41.0, "high": 43.0}, "years": 3.0},
    "body": {"height_mm": 1771.0},
}


def limited(name, kilos, **changes):
    limit = kilos if isinstance(kilos, str) else (worlds.seen(kilos, grade="claimed"),)
    return worlds.product(name, {"rider_limit_kg": limit}, **changes)


def world(*more):
    products = [limited("heron", 110.0), limited("siskin", 90.0), limited("wren", "unknown"), *more]
    prices = [worlds.price("heron", 500), worlds.price("siskin", 400), worlds.price("wren", 300)]
    return worlds.desk(products, [*prices, *(worlds.price(p.id, 350) for p in more)])


def test_the_question_without_what_is_private_says_nothing_of_it():
    buyer = without_private(worlds.buyer(**PRIVATE))
    assert buyer.needs.rider_mass_kg == "not stated"
    assert buyer.riding.balance_left_pct == "unknown"
    assert buyer.body.height_mm == "not stated"
    assert buyer.riding.years == 3.0
    assert without_private(buyer) == buyer


@pytest.mark.parametrize("mass", ["not stated", 80.0, 90.0, 100.0, 120.0])
def test_what_the_weight_keeps_out_is_what_the_ranking_keeps_out(mass):
    desk = world()
    buyer = worlds.buyer(needs={"rider_mass_kg": mass})
    out = {e.product for e in rank(desk, buyer).excluded if any(f.need == "rider weight" for f in e.because)}
    assert barred(desk, buyer, desk.day) == out
    assert out == {"not stated": set(), 80.0: {"wren"}, 90.0: {"wren"}}.get(
        mass, {"wren", "siskin"} | ({"heron"} if mass == 120.0 else set())
    )


def test_for_all_eyes_a_buyer_is_asked_without_it_unless_the_file_says_shown():
    desk = world()
    kept, shown = worlds.buyer(**PRIVATE), worlds.buyer(**PRIVATE, private="shown")
    assert for_all_eyes(desk, kept) == (without_private(kept), frozenset({"siskin", "wren"}))
    assert for_all_eyes(desk, shown) == (shown, frozenset())


def test_no_promise_brings_back_what_the_riders_weight_keeps_out():
    promise = {"since": "promised", "firmware": "4.0", "source": "maker"}
    carries = (
        {"what": "power", "how": "none", **worlds.START},
        {"what": "power", "how": "both sides", **promise},
    )
    weak = limited("aaa", 60.0, links=({"protocol": "ANT+", "carries": carries},))
    buyer = worlds.buyer({"detail": 1.0, "price": 1.0}, **PRIVATE)
    reply = reply_to(world(weak), *for_all_eyes(world(weak), buyer))

    assert [promise.product for promise in reply.what_if.promises] == ["aaa"]
    assert reply.pick is not None
    assert (reply.pick.product, reply.what_if.pick_then) == ("heron", "heron")
    assert {out.product for out in reply.ranking.excluded} == {"aaa", "siskin", "wren"}
    assert all("100" not in failure.because for out in reply.ranking.excluded for failure in out.because)
