"""Which notices an answer tells."""

from datetime import date

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.answer.notices import notices_told
from spindlewise.answer.ranking import rank

NOTICE = {
    "date": date(2026, 5, 1),
    "ended": "none",
    "what": "The end cap may come off.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def told(present="none", **needs):
    products = [
        worlds.product("heron"),
        worlds.product("risky", safety_notices=(NOTICE,)),
        worlds.product("mended", safety_notices=({**NOTICE, "ended": date(2026, 6, 1)},)),
        worlds.plain("cracked", safety_notices=(NOTICE,)),
    ]
    prices = [worlds.price(product.id, 500) for product in products]
    desk = Desk(worlds.catalog(products, prices), worlds.DAY)
    ranking = rank(desk, worlds.buyer(present_pedals=present, needs=needs))
    return [name for name, _ in notices_told(desk, ranking)]


def test_a_standing_notice_on_what_is_placed_is_told_and_a_lifted_one_is_not():
    assert told() == ["risky"]


def test_pedals_that_are_ridden_today_come_first_though_nobody_asked_for_them():
    assert told("cracked") == ["cracked", "risky"]
    assert told("risky") == ["risky"]
    assert told("mended") == told("unknown") == told("heron") == ["risky"]


def test_what_a_need_keeps_out_is_told_only_where_it_is_ridden():
    assert told(weight_g_at_most=100.0) == []
    assert told("risky", weight_g_at_most=100.0) == ["risky"]
