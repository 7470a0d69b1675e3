"""Level by figures that lie close, or only by what nobody has measured."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import worlds
from spindlewise.answer.level_reasons import OWN_BALANCE, LevelReasons, NotKnown, level_reasons
from spindlewise.answer.ranking import rank
from spindlewise.answer.versus import versus

POINTS = {"price": 40, "weight": 30, "reading_uncertainty": 30}


def of(name, weight, spread=1.0, tried=True, **changes):
    seen = dict(worlds.TRIED) if tried else {}
    return worlds.product(name, {**seen, "weight_g": (worlds.weighed(weight, spread),)}, **changes)


def ranked(*products, prices=500, **buyer):
    rows = [worlds.price(p.id, prices) for p in products]
    return rank(worlds.desk(products, rows), worlds.buyer(**{"points": POINTS, **buyer}))


def reasons(ranking):
    return {p.product: {r.product: r.only_by for r in level_reasons(ranking, p)} for p in ranking.placed}


def test_weighings_that_lie_close_make_two_level_by_what_is_known():
    ranking = ranked(of("heron", 330, 10.0), of("siskin", 331, 10.0))
    assert reasons(ranking) == {"heron": {"siskin": ()}, "siskin": {"heron": ()}}


def test_a_reading_that_no_bench_has_tried_makes_level_without_merit():
    ranking = ranked(of("heron", 345), of("siskin", 330, tried=False))
    only = NotKnown("siskin", "reading_uncertainty", ("bench spread", "temperature"))
    assert reasons(ranking) == {"heron": {"siskin": (only,)}, "siskin": {"heron": (only,)}}
    first = level_reasons(ranking, ranking.placed[0])[0]
    assert first.behind == pytest.approx(ranking.placed[0].score.expected - ranking.placed[1].score.expected)


def test_a_weight_that_nobody_knows_is_missing_altogether():
    blank = worlds.product("siskin", {**worlds.TRIED, "weight_g": "unknown"})
    ranking = ranked(of("heron", 400), blank, points={"weight": 100})
    assert reasons(ranking)["heron"] == {"siskin": (NotKnown("siskin", "weight", ()),)}


def test_a_reading_of_which_not_even_a_tolerance_is_claimed_is_missing_altogether():
    blank = worlds.product("siskin", {"tolerance_pct": "unknown", "weight_g": (worlds.weighed(290.0),)})
    ranking = ranked(of("heron", 380), blank, points={"reading_uncertainty": 70, "weight": 30})
    only = NotKnown("siskin", "reading_uncertainty", ())
    assert reasons(ranking) == {"heron": {"siskin": (only,)}, "siskin": {"heron": (only,)}}


def test_with_the_own_balance_unknown_a_doubled_side_is_level_by_that():
    one_side = (worlds.link("ANT+", "one side doubled", "absent"),)
    doubled = of("siskin", 330, sides="left", links=one_side)
    receiver = {
        "name": "head unit",
        "protocols": ("ANT+",),
        "channels": "unlimited",
        "pairs_two_sensors": "cannot",
    }
    points = {"reading_uncertainty": 70, "weight": 30}
    asked = {"points": points, "receivers": (receiver,)}
    ranking = ranked(of("heron", 380), doubled, **asked)
    assert reasons(ranking)["heron"] == {
        "siskin": (NotKnown("siskin", "reading_uncertainty", (OWN_BALANCE,)),)
    }

    stated = ranked(of("heron", 380), doubled, riding={"balance_left_pct": {"low": 44, "high": 50}}, **asked)
    assert reasons(stated)["heron"] == {"siskin": ()}, "the range of a stated balance is known, not unknown"


def test_an_upkeep_without_a_price_is_not_known():
    products = (of("heron", 330, battery="unknown"), of("siskin", 330, battery="unknown"))
    desk = worlds.desk(products, [worlds.price("heron", 400), worlds.price("siskin", 500)])
    ranking = rank(desk, worlds.buyer(points={"ownership": 100}))
    only = level_reasons(ranking, ranking.placed[0])[0].only_by
    assert only == (
        NotKnown("heron", "ownership", ("batteries",)),
        NotKnown("siskin", "ownership", ("batteries",)),
    )


def test_two_side_by_side_are_told_the_same():
    products = (of("heron", 345), of("siskin", 330, tried=False))
    desk = worlds.desk(products, [worlds.price("heron", 500), worlds.price("siskin", 500)])
    found = versus(desk, worlds.buyer(points=POINTS), "heron", "siskin")
    assert found.level
    assert [figure.product for figure in found.level_only_by] == ["siskin"]
    known = (of("heron", 330, 10.0), of("siskin", 331, 10.0))
    alike = versus(
        worlds.desk(known, [worlds.price("heron", 500), worlds.price("siskin", 500)]),
        worlds.buyer(points=POINTS),
        "heron",
        "siskin",
    )
    assert alike.level
    assert alike.level_only_by == ()


@given(
    st.lists(
        st.tuples(st.integers(290, 420), st.floats(0.5, 15.0), st.booleans(), st.integers(300, 900)),
        min_size=2,
        max_size=6,
    )
)
@settings(deadline=None, max_examples=30)
def test_one_place_looked_at_alone_has_the_same_reasons_and_both_sides_agree(drawn):
    names = ("auk", "brant", "crake", "dunlin", "eider", "fulmar")
    products = [of(name, w, s, tried) for name, (w, s, tried, _) in zip(names, drawn, strict=False)]
    rows = [worlds.price(p.id, price) for p, (*_, price) in zip(products, drawn, strict=True)]
    ranking = rank(worlds.desk(products, rows), worlds.buyer(points=POINTS))
    whole = LevelReasons(ranking)
    found = {p.product: {r.product: bool(r.only_by) for r in whole.of(p)} for p in ranking.placed}
    for placed in ranking.placed:
        assert level_reasons(ranking, placed) == whole.of(placed)
        assert {r.product for r in whole.of(placed)} == set(placed.level_with)
        for other, only in found[placed.product].items():
            assert found[other][placed.product] is only


def test_a_reason_can_be_asked_for_against_one_other_alone():
    ranking = ranked(*(of(name, 330, 10.0) for name in ("crake", "heron", "siskin")))
    whole = LevelReasons(ranking)
    first = ranking.placed[0]
    assert len(first.level_with) == 2
    for other in first.level_with:
        assert whole.of(first, only=other) == tuple(r for r in whole.of(first) if r.product == other)
    assert whole.of(first, only=first.product) == ()
