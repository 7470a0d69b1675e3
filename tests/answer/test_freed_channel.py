"""What the channel of a separate cadence sensor would change."""

import worlds
from spindlewise.answer.freed_channel import freed

TWO = worlds.product("heron", links=(worlds.link("ANT+", "two channels", "absent"),))
ONE = worlds.product("siskin", links=(worlds.link("ANT+"),))


def asked(*products, pairs="can", total=4, kept=("heart rate", "trainer control", "cadence")):
    receiver = {
        "name": "head unit",
        "protocols": ("ANT+",),
        "channels": {"total": total, "kept": kept} if total else "unlimited",
        "pairs_two_sensors": pairs,
    }
    return freed(products, worlds.buyer(receivers=(receiver,)), worlds.DAY)


def test_two_pedals_that_are_sensors_of_their_own_need_the_channel():
    (found,) = asked(ONE, TWO)

    assert (found.product, found.now.mode, found.then.mode) == ("heron", "one side only", "both sides")
    assert (found.now.balance, found.then.balance) == ("does not arrive", "arrives")


def test_with_no_channel_left_even_one_sensor_needs_it():
    (found,) = asked(ONE, total=3)

    assert (found.now.mode, found.then.mode) == ("nothing", "both sides")


def test_where_it_changes_nothing_nothing_is_said():
    assert asked(TWO, pairs="cannot") == ()
    assert asked(TWO, kept=("heart rate", "speed", "trainer control")) == ()
    assert asked(TWO, total=8) == ()
    assert asked(TWO, total=None) == ()
    assert asked() == ()
