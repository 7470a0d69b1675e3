"""At which price a product would draw level, exact to the cent, and how dear the leader may become."""

from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

import worlds
from spindlewise.answer.break_evens import break_even_between, break_evens
from spindlewise.answer.ranking import rank
from spindlewise.decide.break_even import Outcome

CENT = Decimal("0.01")


def of(name, weight):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight, "unknown"),)})


def asked(amounts, weights=(330, 300, 350), **buyer):
    names = ("heron", "siskin", "gannet")[: len(amounts)]
    desk = worlds.desk(
        [of(n, w) for n, w in zip(names, weights, strict=False)],
        [worlds.price(n, a) for n, a in zip(names, amounts, strict=True)],
    )
    return desk, rank(desk, worlds.buyer(**buyer))


def test_a_follower_draws_level_at_a_price_below_its_own():
    desk, ranking = asked((500, 650))
    found = break_evens(desk, ranking)

    assert found.leader == "heron"
    assert set(found.against_leader) == {"siskin"}
    assert found.against_leader["siskin"].outcome is Outcome.AT_PRICE
    assert Decimal(500) < found.against_leader["siskin"].amount < Decimal(650)


@given(st.tuples(*[st.integers(25_000, 110_000)] * 3), st.tuples(*[st.integers(290, 440)] * 3))
@settings(deadline=None, max_examples=50)
def test_at_the_break_even_it_is_first_or_level_on_score_and_one_cent_above_it_is_not(cents, weights):
    desk, ranking = asked([Decimal(c) / 100 for c in cents], weights)
    leader = ranking.placed[0]
    for name, found in break_evens(desk, ranking).against_leader.items():
        if found.outcome is not Outcome.AT_PRICE or found.amount == 0:
            continue
        names = ("heron", "siskin", "gannet")
        for amount, at_least in ((found.amount, True), (found.amount + CENT, False)):
            moved = [amount if n == name else Decimal(c) / 100 for n, c in zip(names, cents, strict=True)]
            _, again = asked(moved, weights)
            scores = {p.product: p.score.expected for p in again.placed}
            assert (scores[name] >= scores[leader.product]) is at_least


def test_the_leaders_room_ends_where_the_next_takes_over():
    desk, ranking = asked((500, 650))
    room = break_evens(desk, ranking).room

    _, at = asked((room.amount, 650))
    _, above = asked((room.amount + CENT, 650))
    assert at.placed[0].product == "heron"
    assert above.placed[0].product == "siskin"


def test_without_a_weight_on_money_no_price_would_do_or_any():
    desk, ranking = asked((500, 650), points={"weight": 1})
    found = break_evens(desk, ranking)

    assert found.leader == "siskin"
    assert found.against_leader["heron"].outcome is Outcome.NO_PRICE


def test_any_two_can_be_held_against_each_other():
    desk, ranking = asked((500, 650, 640))
    found = break_even_between(desk, ranking, "gannet", "siskin")

    assert found.outcome is Outcome.AT_PRICE
    assert found.amount < Decimal(640)


def test_an_empty_ranking_has_no_break_even():
    desk, ranking = asked((500, 650), budget=10)

    assert break_evens(desk, ranking).leader is None


def test_yen_have_no_cents():
    names = ("heron", "siskin")
    desk = worlds.desk(
        [of("heron", 330), of("siskin", 300)],
        [
            worlds.price(n, a, region="JP", currency="JPY")
            for n, a in zip(names, ("80000", "104000"), strict=True)
        ],
    )
    ranking = rank(desk, worlds.buyer(region="JP", currency="JPY"))
    amount = break_evens(desk, ranking).against_leader["siskin"].amount

    assert amount == amount.to_integral_value()


def test_with_ownership_the_break_even_is_still_a_price():
    desk, ranking = asked((500, 505), (330, 330), points={"ownership": 1})
    found = break_evens(desk, ranking)

    assert found.against_leader["siskin"].amount == Decimal("500.00")


def test_what_is_over_the_budget_would_be_in_and_no_worse_at_some_price():
    desk, ranking = asked((500, 650, 900), weights=(330, 300, 295), budget=600)
    out = break_evens(desk, ranking).out

    assert set(out) == {"siskin", "gannet"}
    amount = out["siskin"].amount
    _, at = asked((500, amount, 900), weights=(330, 300, 295), budget=600)
    assert at.placed[0].product in ("heron", "siskin")
    assert amount <= Decimal(600)
    scores = {p.product: p.score.expected for p in at.placed}
    assert scores["siskin"] >= scores["heron"]


def test_what_fails_a_need_or_trails_even_for_nothing_has_no_price():
    limit = {"rider_limit_kg": (worlds.seen(80.0, grade="claimed"),)}
    weak = worlds.product("weak", limit)
    heavy = worlds.product("heavy", {"weight_g": (worlds.weighed(450.0),)})
    notice = {
        "date": worlds.DAY,
        "ended": "none",
        "what": "May crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    risky = worlds.product("risky", safety_notices=(notice,))
    light = of("light", 281)
    desk = worlds.desk(
        [weak, heavy, risky, light],
        [worlds.price(n, a) for n, a in (("weak", 100), ("heavy", 700), ("risky", 700), ("light", 300))],
    )
    needs = {"rider_mass_kg": 90.0}
    ranking = rank(desk, worlds.buyer(points={"price": 1, "weight": 9}, budget=600, needs=needs))
    out = break_evens(desk, ranking).out

    assert out["weak"].because.startswith("no price would do: the maker's rider limit is 80 kg")
    assert out["heavy"].because == "no price would do: it trails even for nothing"
    assert out["risky"].because == "no price would do: a safety notice holds it back"


def test_where_nothing_is_in_the_budget_itself_is_the_price():
    desk, ranking = asked((500, 650), budget=400)

    assert {o.amount for o in break_evens(desk, ranking).out.values()} == {Decimal(400)}
