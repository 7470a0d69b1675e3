import worlds
from spindlewise.site.gathered import gather_facts


def test_everything_is_worked_out_once_and_every_picture_listed():
    rows = [worlds.price("heron", 500), worlds.price("siskin", 450)]
    desk = worlds.desk([worlds.product("heron"), worlds.product("siskin")], rows)
    facts = gather_facts(desk, {"tester": worlds.buyer(), "far": worlds.buyer(id="far", region="XX")})
    assert list(facts.replies) == ["tester"]
    assert "region XX" in facts.unserved["far"]
    names = [picture.name for picture in facts.pictures]
    assert sorted(names) == ["contributions", "price-score", "stability"]
