import worlds
from spindlewise.catalog.packing import packed, unpacked
from spindlewise.site.facts import Facts
from spindlewise.site.told import BenchTold, bench_told, buyer_told, market_missing


def facts(*amounts, **buyer):
    names = ("heron", "siskin")
    rows = [worlds.price(n, a, line=2 + i) for i, (n, a) in enumerate(zip(names, amounts, strict=False))]
    desk = worlds.desk([worlds.product(name) for name in names], rows)
    return Facts(desk, {"tester": worlds.buyer(**buyer)})


def test_a_buyer_s_answer_in_short():
    told = buyer_told(facts(500, 450), "tester")
    assert told.pick.product == "siskin"
    assert told.pick.price == "EUR 450.00"
    assert (told.pair.first, told.pair.second) == ("siskin", "heron")
    assert set(told.places) == {"heron", "siskin"}
    assert told.places["siskin"].is_pick
    assert unpacked(packed(told)) == told


def test_nothing_to_recommend_and_nothing_to_serve_are_told_apart():
    nothing = buyer_told(facts(500, 450, budget=1), "tester")
    assert (nothing.pick, nothing.unserved, nothing.pair) == (None, "", None)
    assert nothing.nothing_because
    far = buyer_told(facts(500, 450, region="XX"), "tester")
    assert far.pick is None
    assert "region XX" in far.unserved
    assert far.places == {}


def test_a_region_is_missing_where_its_money_cannot_be_changed():
    found = facts(500)
    assert market_missing(found, "EU") == ""
    assert "no rate" in market_missing(facts_without_rates(), "JP")


def facts_without_rates():
    from dataclasses import replace

    from spindlewise.answer.desk import Desk

    desk = worlds.desk([worlds.product("heron")], [])
    poor = replace(desk.catalog, rates=type(desk.catalog.rates)(()))
    return Facts(Desk(poor, desk.day), {})


def test_the_bench_tells_each_product_s_rides_and_sessions(site):
    from spindlewise.answer.desk import Desk

    bench = Facts(Desk(site.catalog, site.day), {}).bench
    told = bench_told(bench)
    assert isinstance(told, BenchTold)
    assert {ride.path for own in told.rides.values() for ride in own} == {ride.path for ride in bench.rides}
    assert set(told.with_sessions) == bench.with_sessions
    assert unpacked(packed(told)) == told
