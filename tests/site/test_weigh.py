"""The page on which readers weigh for themselves, as bytes."""

import json
import re

import pytest

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.catalog.money import RateTable
from spindlewise.render.fragment import fragment
from spindlewise.site.export import weigh_export
from spindlewise.site.frame import frame_of
from spindlewise.site.weigh import WATER, weigh_page


def page_of(desk, buyers=None):
    return weigh_page(desk, frame_of(desk, buyers or {}), buyers or {}).decode()


def data_in(page):
    return json.loads(re.search(r'<script type="application/json" id="w-data">(.*?)</script>', page, re.S)[1])


@pytest.fixture(scope="module")
def demo(site):
    desk = Desk(site.catalog, site.day)
    return page_of(desk, site.buyers), desk, site


def test_the_data_in_it_is_the_export(demo):
    page, desk, _ = demo
    assert data_in(page) == json.loads(json.dumps(weigh_export(desk)))


def test_same_input_same_bytes(demo):
    page, _, site = demo
    assert page_of(Desk(site.catalog, site.day), site.buyers) == page


def test_ready_made_buyers_are_offered_without_anything_private(demo):
    page, _, site = demo
    for buyer in site.buyers.values():
        assert f'value="{fragment(buyer).replace("&", "&amp;")}"' in page
    assert "mass=" not in re.sub(r"<script.*?</script>", "", page, flags=re.S)


def test_a_buyer_in_foreign_money_is_not_offered():
    desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])
    page = page_of(desk, {"abroad": worlds.buyer(id="abroad", name="Abroad", currency="USD")})
    assert "Abroad" not in page
    assert 'id="w-ready"' not in page


def test_names_that_look_like_markup_stay_text():
    hostile = {"maker": "</script><script>alert(1)</script>", "name": "<img src=x>"}
    product = worlds.product("heron").model_copy(update=hostile)
    page = page_of(worlds.desk([product], [worlds.price("heron", 500)]))
    assert "<script>alert" not in page
    assert "<img" not in page
    assert page.count("<script") == 2


def test_regions_water_and_cleats_can_be_chosen(demo):
    page, _, site = demo
    for code in (*site.catalog.settings.regions, *WATER):
        assert f'<option value="{code}">' in page
    for product in site.catalog.products.values():
        assert f'<option value="{product.id}">' in page


def test_every_field_has_a_label(demo):
    page, _, _ = demo
    body = re.sub(r"<script.*?</script>", "", page, flags=re.S)
    labelled = set(re.findall(r'<label[^>]* for="([^"]+)"', body))
    for tag in re.findall(r"<(?:input|select|textarea)[^>]*>", body):
        name = re.search(r'id="([^"]+)"', tag)
        known = "aria-label=" in tag or "data-field" in tag or 'type="checkbox"' in tag
        assert known or (name and name[1] in labelled), tag


def test_without_a_market_the_page_still_stands_and_says_nothing_false():
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    regions = {"US": catalog.settings.regions["US"]}
    object.__setattr__(catalog, "settings", catalog.settings.model_copy(update={"regions": regions}))
    object.__setattr__(catalog, "rates", RateTable([]))
    page = page_of(Desk(catalog))
    assert data_in(page)["markets"][0]["missing"].startswith("no rate from USD")
    assert "<tbody" in page
    assert "heron.html" not in re.sub(r"<script.*?</script>", "", page, flags=re.S)
