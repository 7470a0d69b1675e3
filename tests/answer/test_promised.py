"""Promised firmware counts as absent; a what-if shows what it would change."""

import worlds
from spindlewise.answer.promised import promised
from spindlewise.answer.ranking import rank

PROMISE = {"since": "promised", "firmware": "4.0", "source": "maker"}


def promising(name, weight=330.0):
    carries = (
        {"what": "power", "how": "one side doubled", **worlds.START},
        {"what": "power", "how": "both sides", **PROMISE},
        {"what": "balance", "how": "carried", **PROMISE},
    )
    observed = {"weight_g": (worlds.weighed(weight),)}
    return worlds.product(name, observed, links=({"protocol": "ANT+", "carries": carries},))


def asked(products, **buyer):
    desk = worlds.desk(products, [worlds.price(p.id, 500) for p in products])
    asker = worlds.buyer(points={"detail": 1, "weight": 1}, **buyer)
    ranking = rank(desk, asker)
    return ranking, promised(desk, asker, ranking)


def test_a_kept_promise_would_change_the_pick_but_does_not_now():
    ranking, found = asked([promising("heron", 290), worlds.product("siskin")])

    assert ranking.pick.product == "siskin"
    assert (found.pick_then, found.changes_pick) == ("heron", True)
    (promise,) = found.promises
    assert (promise.product, promise.firmware) == ("heron", ("4.0",))
    assert (promise.now.mode, promise.then.mode, promise.then.balance) == (
        "one side doubled",
        "both sides",
        "arrives",
    )


def test_a_promise_that_the_receiver_would_not_hear_is_no_promise_to_this_buyer():
    phone = {
        "name": "phone",
        "protocols": ("Bluetooth",),
        "channels": "unlimited",
        "pairs_two_sensors": "cannot",
    }
    _, found = asked([promising("heron"), worlds.product("siskin")], receivers=(phone,))

    assert found.promises == ()
    assert not found.changes_pick


def test_without_promises_nothing_is_asked_twice():
    ranking, found = asked([worlds.product("siskin")])

    assert (found.promises, found.pick_then) == ((), ranking.pick.product)


def test_where_nothing_is_picked_now_or_then_nothing_changes():
    _, found = asked([promising("heron")], budget=10)

    assert (found.pick_then, found.changes_pick) == (None, False)
    _, none = asked([worlds.product("siskin")], budget=10)
    assert none.pick_then is None
