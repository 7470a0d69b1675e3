"""Law: written into the price log, a break-even price is the last at which its product stands no lower.

The whole way is gone again: a price in the region's own money, rates, curves, upkeep, needs, ranks.
"""

from dataclasses import replace
from decimal import Decimal

from hypothesis import assume, given, settings
from hypothesis import strategies as st

import worlds
from spindlewise.answer.break_evens import break_evens
from spindlewise.answer.ranking import rank
from spindlewise.decide.break_even import Outcome

NAMES = ("auk", "brant", "crake", "dunlin")
MONEY = {"EU": ("EUR", 2), "US": ("USD", 2), "JP": ("JPY", 0)}


@st.composite
def questions(draw):
    names = NAMES[: draw(st.integers(2, 4))]
    products = [
        worlds.product(name, {**worlds.TRIED, "weight_g": (worlds.weighed(draw(st.integers(290, 430))),)})
        for name in names
    ]
    region = draw(st.sampled_from(sorted(MONEY)))
    currency, digits = MONEY[region]
    cheap, dear = (150, 1300) if digits else (24_000, 200_000)
    units = {name: draw(st.integers(cheap * 10**digits, dear * 10**digits)) for name in names}
    points = draw(
        st.fixed_dictionaries(
            {draw(st.sampled_from(["price", "ownership"])): st.integers(1, 50), "weight": st.integers(1, 50)}
        )
    )
    buyer = worlds.buyer(points=points, region=region, currency=currency)
    return products, units, buyer, digits


def ranked(products, units, buyer, digits):
    rows = [
        replace(
            worlds.price(name, 1, region=buyer.region, currency=buyer.currency),
            amount=Decimal(amount).scaleb(-digits),
        )
        for name, amount in units.items()
    ]
    desk = worlds.desk(products, rows)
    return desk, rank(desk, buyer)


@given(questions(), st.data())
@settings(deadline=None, max_examples=60)
def test_one_minor_unit_below_it_is_first_or_level_and_one_above_it_is_not(question, data):
    products, units, buyer, digits = question
    desk, ranking = ranked(products, units, buyer, digits)
    even = break_evens(desk, ranking)
    follower = data.draw(st.sampled_from(sorted(even.against_leader)))
    found = even.against_leader[follower]
    assume(found.outcome is Outcome.AT_PRICE and found.minor_units > 1)
    leader = ranking.placed[0].product

    def leads_by(minor_units):
        _, again = ranked(products, {**units, follower: minor_units}, buyer, digits)
        scores = {p.product: p.score.expected for p in again.placed}
        return scores[follower] - scores[leader], again.placed[0].product

    for below in (found.minor_units, found.minor_units - 1):
        lead, first = leads_by(below)
        assert lead >= 0
        assert first == follower or lead == 0
    lead, first = leads_by(found.minor_units + 1)
    assert lead < 0
    assert first == leader


@given(questions())
@settings(deadline=None, max_examples=40)
def test_the_leader_stays_first_up_to_its_room_and_no_further(question):
    products, units, buyer, digits = question
    desk, ranking = ranked(products, units, buyer, digits)
    room, leader = break_evens(desk, ranking).room, ranking.placed[0].product
    assume(room.outcome is Outcome.AT_PRICE)

    def best_of_the_others(minor_units):
        _, again = ranked(products, {**units, leader: minor_units}, buyer, digits)
        scores = {p.product: p.score.expected for p in again.placed}
        return scores.pop(leader) - max(scores.values())

    assert best_of_the_others(room.minor_units) >= 0
    assert best_of_the_others(room.minor_units + 1) < 0
