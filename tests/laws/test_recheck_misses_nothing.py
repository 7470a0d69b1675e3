"""Law: rechecking a log finds exactly the answers that a full recomputation of both days finds.

Between the two readings anything may change that an answer rests on: prices, corrected or first weighings,
safety notices, what a firmware sends, states of sale, products that come and go, a bench ride.
"""

from datetime import date
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

import worlds
from spindlewise.answer.answer_log import to_log
from spindlewise.answer.ranking import rank
from spindlewise.answer.recheck import recheck

NAMES = ("auk", "brant", "crake", "dunlin")
NOTICE = {
    "date": date(2026, 11, 1),
    "ended": "none",
    "what": "The spindle may crack.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}
amounts = st.integers(30_000, 90_000).map(lambda cents: Decimal(cents) / 100)


@st.composite
def pedals(draw, name):
    observed = {
        **(worlds.TRIED if draw(st.booleans()) else {}),
        "weight_g": draw(
            st.one_of(
                st.just("unknown"),
                st.integers(290, 420).map(lambda grams: (worlds.weighed(grams, 2.0),)),
            )
        ),
        "rider_limit_kg": (worlds.seen(draw(st.sampled_from([80.0, 100.0, 120.0])), grade="claimed"),),
    }
    return worlds.product(
        name,
        observed,
        links=(worlds.link("ANT+", draw(st.sampled_from(["both sides", "one side doubled", "unknown"]))),),
        statuses=(
            {
                "state": draw(st.sampled_from(["current", "current", "discontinued"])),
                "since": date(2025, 1, 1),
                "source": "maker",
            },
        ),
        safety_notices=draw(st.sampled_from(["none", "none", (NOTICE,)])),
    )


@st.composite
def shops(draw):
    names = draw(st.lists(st.sampled_from(NAMES), min_size=1, unique=True).map(sorted))
    kept = [draw(pedals(name)) for name in names]
    return worlds.desk(kept, [worlds.price(name, draw(amounts)) for name in names if draw(st.integers(0, 4))])


@st.composite
def two_days(draw):
    """Two readings of one shop: most of it stays, since all that changes at once tells little."""
    then = draw(shops())
    now = draw(shops())
    kept = {name for name in NAMES if draw(st.booleans())}
    products = {
        **{name: p for name, p in now.catalog.products.items() if name not in kept},
        **{name: p for name, p in then.catalog.products.items() if name in kept},
    }
    prices = [
        row
        for shop, mine in ((then, True), (now, False))
        for row in shop.catalog.prices
        if (row.product in kept) is mine
    ]
    return then, worlds.desk(products.values(), prices)


buyers = st.builds(
    lambda points, needs, budget: worlds.buyer(points=points, needs=needs, budget=budget),
    st.fixed_dictionaries({name: st.integers(1, 50) for name in ("price", "weight", "reading_uncertainty")}),
    st.sampled_from(
        [{}, {"reading": "both sides"}, {"states": ("current",)}, {"rider_mass_kg": 90.0}, {"water": "IPX5"}]
    ),
    st.sampled_from(["none", Decimal(500)]),
)


def told(ranking):
    """What an answer tells: the pick, and what stands level with it."""
    pick = ranking.pick
    return (None, set()) if pick is None else (pick.product, set(pick.level_with))


@given(two_days(), st.lists(buyers, min_size=1, max_size=4))
@settings(deadline=None, max_examples=150)
def test_recheck_finds_exactly_what_a_full_recomputation_finds(days, asked):
    then, now = days
    entries = [to_log(then, rank(then, buyer), keep_private=True) for buyer in asked]
    for buyer, found in zip(asked, recheck(now, entries), strict=True):
        before, after = told(rank(then, buyer)), told(rank(now, buyer))
        assert (found.verdict == "no longer holds") is (before != after)
        assert found.pick_now == after[0]
        if found.verdict == "holds":
            assert [p.score for p in rank(then, buyer).placed] == [p.score for p in rank(now, buyer).placed]


@given(shops(), st.lists(buyers, min_size=1, max_size=3))
@settings(deadline=None, max_examples=40)
def test_where_nothing_changed_every_answer_holds_on_the_same_figures(shop, asked):
    again = worlds.desk(shop.catalog.products.values(), shop.catalog.prices)
    entries = [to_log(shop, rank(shop, buyer), keep_private=True) for buyer in asked]
    assert [(e.verdict, e.because) for e in recheck(again, entries)] == [("holds", ())] * len(entries)
