"""The brief answer says what the whole reply says, in less."""

from datetime import date

import pytest

import small_answers
import worlds
from spindlewise.answer.asking import open_buyers
from spindlewise.answer.brief import brief
from spindlewise.answer.reply import reply_to

BUYERS = sorted(open_buyers(small_answers.SMALL / "buyers")[0])


@pytest.mark.parametrize("name", BUYERS)
def test_it_agrees_with_the_reply(name):
    desk, buyer = small_answers.desk(), small_answers.buyer(name)
    short, whole = brief(desk, buyer), reply_to(desk, buyer)

    assert short.pick == whole.pick
    assert short.near_miss == (whole.near_misses[0] if whole.near_misses else None)
    assert short.notices == whole.notices
    if whole.followers:
        assert (short.next, short.against_pick) == (
            whole.followers[0].placed,
            whole.followers[0].against_pick,
        )
    if short.swap is not None and whole.swap is not None:
        assert short.swap.saddle == whole.swap.saddle


def test_a_swap_is_worked_out_once_for_all_who_are_alike_on_the_bike():
    desk = worlds.desk([worlds.product("heron"), worlds.plain("gull")], [worlds.price("heron", 500)])
    first = brief(desk, worlds.buyer(present_pedals="gull"))
    second = brief(desk, worlds.buyer(present_pedals="gull", budget=900))

    assert first.swap is second.swap is not None


def test_nothing_met_and_notices_are_told():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "May crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    risky = worlds.product("risky", safety_notices=(notice,))
    found = brief(worlds.desk([risky], [worlds.price("risky", 500)]), worlds.buyer())

    assert (found.pick, found.next, found.disclosure) == (None, None, None)
    assert [name for name, _ in found.notices] == ["risky"]
