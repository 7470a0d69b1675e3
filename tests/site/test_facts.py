import worlds
from spindlewise.site.facts import Facts
from spindlewise.site.kept_site import KeptSite
from spindlewise.site.parts import Sources, site_parts
from spindlewise.site.rests_on import RestsOn


def facts():
    rows = [
        worlds.price("heron", 500),
        worlds.price("siskin", 450),
        worlds.price("siskin", 300, line=4, region="US", currency="USD", tax="out"),
    ]
    desk = worlds.desk([worlds.product("heron"), worlds.product("siskin")], rows)
    return Facts(desk, {"tester": worlds.buyer(), "far": worlds.buyer(id="far", region="XX")})


def test_every_fact_is_worked_out_once():
    found = facts()
    assert found.reply("tester") is found.reply("tester")
    assert found.table("EU") is found.table("EU")
    assert found.bench is found.bench
    assert "region XX" in found.reply("far")
    assert found.figures("far") == ()
    assert found.pair("far") is None


def test_whoever_buys_in_a_region_is_answered_from_its_prices_alone():
    found = facts()
    assert {row.region for row in found.desk_in("EU").catalog.prices} == {"EU"}
    assert found.reply("tester").pick.product == "siskin"


def test_every_picture_of_a_site_stands_in_one_of_its_parts():
    found = facts()
    on = RestsOn(found.desk.catalog, found.buyers, found.desk.day)
    parts = site_parts(Sources(found, on, KeptSite()))
    names = [picture.name for part in parts for picture in part.pictures()]
    assert sorted(names) == [
        "contributions",
        "contributions",
        "price-score",
        "price-score",
        "price-score",
        "stability",
    ]
