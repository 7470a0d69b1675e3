import worlds
from spindlewise.site.facts import Facts
from spindlewise.site.kept_site import KeptSite
from spindlewise.site.parts import Sources, site_parts
from spindlewise.site.rests_on import RestsOn

BUYERS = {"tester": worlds.buyer(), "us": worlds.buyer(id="us", region="US", currency="USD")}


def parts(*rows):
    catalog = worlds.catalog(
        [worlds.product(name) for name in ("heron", "plover", "siskin")],
        [worlds.price("heron", 500), worlds.price("siskin", 450, line=3), *rows],
    )
    desk = worlds.desk(catalog.products.values(), catalog.prices)
    return site_parts(Sources(Facts(desk, BUYERS), RestsOn(catalog, BUYERS, desk.day), KeptSite()))


def changed(*rows):
    before = {part.name: part.rests_on for part in parts()}
    return {part.name for part in parts(*rows) if before[part.name] != part.rests_on}


def test_no_two_parts_share_a_file_or_a_name():
    found = parts()
    assert len({part.name for part in found}) == len(found)
    paths = [job.path for part in found for job in part.jobs({p.key: "" for p in part.pictures()})]
    assert len(set(paths)) == len(paths)


def test_a_price_makes_anew_what_it_can_reach():
    """A dearer offer beside the one in force: its product, its region, its buyers, and what shows all."""
    assert changed(worlds.price("siskin", 470, line=4, seller="another")) == {
        "product siskin", "region EU", "buyer tester", "weigh", "changes", "prices",
    }  # fmt: skip


def test_a_price_that_moves_a_pick_reaches_the_lists_and_every_product_it_passes():
    found = changed(worlds.price("plover", 300, line=4))
    assert {"lists", "product plover", "product siskin", "product heron", "buyer tester"} <= found
    assert not found & {"region US", "buyer us", "bench", "lasting"}
