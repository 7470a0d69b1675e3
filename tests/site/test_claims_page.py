import worlds
from spindlewise.answer.desk import Desk
from spindlewise.site.claims_page import claims_page


def test_the_demo_s_claims_are_all_there(site):
    page = claims_page(Desk(site.catalog, site.day))
    (weights,) = page.weights
    rows = {row[0]: row for row in weights.table.rows}
    assert rows["Tarnquell Liskar Duo"][1:3] == ("318 g", "weighed 328 g")
    assert any(row[2].startswith("predicted") for row in rows.values())
    assert page.claims == sum(len(found) for _, found in page.checked) > 20
    assert 0 < page.within < page.claims


def test_each_verdict():
    basis = {"count": "pair", "batteries": "in", "cleats": "off"}

    def both(name, claimed, weighed):
        return worlds.product(
            name,
            {"weight_g": (worlds.weighed(weighed), worlds.seen(claimed, basis, grade="claimed"))},
        )

    bare = worlds.product("dunlin", {"weight_g": (worlds.seen(300, basis, grade="claimed"),)})
    products = [both("heron", 300, 310), both("plover", 300, 290), both("siskin", 300, 301), bare]
    (weights,) = claims_page(worlds.desk(products, [])).weights
    assert [row[-1] for row in weights.table.rows] == [
        "not known",
        "heavier than claimed",
        "lighter than claimed",
        "within the plus-minus",
    ]


def test_without_claims_there_is_nothing():
    page = claims_page(worlds.desk([worlds.product("heron")], []))
    assert (page.weights, page.checked, page.claims) == ((), (), 0)
