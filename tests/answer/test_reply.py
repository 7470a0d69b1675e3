"""The whole reply to one buyer."""

from datetime import date

import worlds
from spindlewise.answer.reply import reply_to

NOTICE = {
    "date": date(2026, 5, 1),
    "ended": "none",
    "what": "May crack.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def of(name, weight, **changes):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight),)}, **changes)


WORLD = [of("heron", 330), of("siskin", 300), worlds.plain("gull")]
PRICES = [worlds.price("heron", 500), worlds.price("siskin", 650)]


def replied(products=WORLD, prices=PRICES, **buyer):
    return reply_to(worlds.desk(products, prices), worlds.buyer(**buyer))


def test_pick_followers_and_what_each_gains_and_loses():
    found = replied(present_pedals="gull")

    assert found.pick.product == "heron"
    assert [f.placed.product for f in found.followers] == ["siskin"]
    assert found.followers[0].against_pick.total < 0
    assert found.nothing_because == ""
    assert found.swap.old.id == "gull"
    assert found.climb.baseline == "gull"
    assert found.outlook.stability.draws == 10_000
    assert found.break_evens.leader == "heron"


def test_without_present_pedals_there_is_no_swap_and_no_ladder_and_the_reply_says_so():
    found = replied()

    assert found.swap is None
    assert (found.climb, found.climb_missing) == (None, "the buyer states no present pedals")


def test_nothing_meets_the_needs():
    found = replied(budget=100, present_pedals="gull")

    assert found.pick is None
    assert found.nothing_because == "nothing in the catalog meets all the needs"
    assert [m.product for m in found.near_misses] == ["heron", "siskin"]
    assert found.followers == ()
    assert found.swap is None
    assert found.outlook.stability is None


def test_all_held_back_is_said_and_the_notice_is_told():
    found = replied([of("risky", 300, safety_notices=(NOTICE,))], [worlds.price("risky", 300)])

    assert found.pick is None
    assert found.nothing_because == "everything that no need keeps out is held back by a safety notice"
    assert [name for name, _ in found.notices] == ["risky"]


def test_what_is_level_with_the_pick_is_compared_with_it_before_others_that_score_more():
    def tried(name, weight):
        return worlds.product(name, {**worlds.TRIED, "weight_g": (worlds.weighed(weight),)})

    untried = worlds.product("gull", {"weight_g": (worlds.weighed(330.0),)})
    weights = {"auk": 330, "brant": 341, "crake": 342, "dunlin": 343}
    known = [tried(name, weight) for name, weight in weights.items()]
    products = [*known, untried]
    found = reply_to(
        worlds.desk(products, [worlds.price(p.id, 500) for p in products]),
        worlds.buyer(points={"weight": 95, "reading_uncertainty": 5}),
    )
    assert found.pick.product == "auk"
    assert found.pick.level_with == ("gull",), "an untried reading may turn out as good"
    assert [f.placed.product for f in found.followers] == ["gull", "brant", "crake"]


def test_unknowns_of_pick_and_followers_are_listed():
    bare = worlds.product("bare", {"weight_g": "unknown", "ingress": "unknown"})
    found = replied(
        [of("heron", 330), bare],
        [worlds.price("heron", 500), worlds.price("bare", 450)],
        needs={"water": "IPX6"},
    )

    assert ("bare", "weight", "nobody has stated it") in found.unknowns
    assert ("bare", "need", "IPX6: ingress code unknown") in found.unknowns


def test_disclosure_comes_for_all_that_are_named_and_cautions_always():
    found = replied()

    assert [name for name, _ in found.disclosures] == ["heron", "siskin"]
    assert found.cautions == ("Small steps; see a qualified fitter.",)


def test_what_owning_costs_is_told_of_pick_and_followers_where_years_or_hours_are_stated():
    found = replied(riding={"years": 2.0, "hours_per_year": 100.0})

    assert [name for name, _ in found.owned] == ["heron", "siskin"]
    assert found.owned[0][1].years == 2
    assert replied().owned == ()


def test_a_freed_channel_is_looked_for_in_what_is_told():
    crowded = {
        "name": "head unit",
        "protocols": ("ANT+",),
        "channels": {"total": 1, "kept": ("cadence",)},
        "pairs_two_sensors": "cannot",
    }
    found = replied(receivers=(crowded,))

    assert {each.product for each in found.freed} == {"heron", "siskin"}
