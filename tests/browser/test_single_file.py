"""The whole site as one file in a real browser: one page at a time, by address, with and without script."""

from pathlib import Path

import pytest

from browser.page_kinds import PAGES
from spindlewise.answer.asking import open_buyers
from spindlewise.catalog.opening import open_catalog
from spindlewise.site.build import publish_single
from spindlewise.site.single_file import leaf_name

pytestmark = pytest.mark.browser

CATALOG = Path(__file__).parents[2] / "catalog"
SHOWN = "[...document.querySelectorAll('.leaf')].filter((e) => e.checkVisibility()).map((e) => e.id)"
RANKED = "() => [...document.querySelectorAll('#w-table tbody th a')].map((a) => a.textContent)"


@pytest.fixture(scope="session")
def one(tmp_path_factory: pytest.TempPathFactory) -> str:
    catalog, problems = open_catalog(CATALOG)
    assert catalog is not None, problems
    buyers, _ = open_buyers(CATALOG / "buyers", catalog)
    file = tmp_path_factory.mktemp("single") / "all.html"
    assert not isinstance(catalog.settings.as_of, str)
    publish_single(catalog, buyers, catalog.settings.as_of, file)
    return file.as_uri()


@pytest.mark.parametrize("script", [True, False])
def test_one_page_is_shown_at_a_time_and_links_lead_from_one_to_the_other(read, one, script):
    page = read(java_script_enabled=script).page
    page.goto(one)
    shown = page.locator(".leaf:visible")
    assert shown.count() == 1
    assert shown.get_attribute("id") == "index.html"
    for label, leaf in (
        ("Cautions", "cautions.html"),
        ("Buyers", "buyers.index.html"),
        ("Pedals", "index.html"),
    ):
        page.locator(".leaf:visible").get_by_role("navigation", name="Site").get_by_text(label).click()
        assert page.locator(".leaf:visible").get_attribute("id") == leaf
    page.goto(f"{one}#products.yttervane-koldrane.html:prices")
    assert page.locator(".leaf:visible").get_attribute("id") == "products.yttervane-koldrane.html"
    top = page.locator('[id="products.yttervane-koldrane.html:prices"]').bounding_box()["y"]
    assert -1 <= top <= 900
    page.go_back()
    assert page.locator(".leaf:visible").get_attribute("id") == "index.html"


def test_the_skip_link_stays_on_its_page(read, one):
    page = read().page
    page.goto(f"{one}#cautions.html")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate(SHOWN) == ["cautions.html"]
    assert page.evaluate("document.activeElement.id") == "cautions.html:content"


def test_the_window_is_named_after_the_page(read, one):
    page = read().page
    page.goto(f"{one}#method.html")
    assert page.title() == "How it is worked out – Spindlewise"
    page.goto(f"{one}#nobody-knows-this")
    assert page.evaluate(SHOWN) == ["index.html"]


def test_a_question_in_the_address_is_weighed_and_leads_on(read, one, folder):
    reader = read()
    question = (folder / "buyers/club-racer.html").read_text("utf-8").split("weigh.html#")[1].split('"')[0]
    question = question.replace("&amp;", "&")
    reader.open("weigh.html").goto(f"{(folder / 'weigh.html').as_uri()}#{question}")
    in_the_folder = reader.page.evaluate(RANKED)
    reader.page.goto(f"{one}#{question}")
    page = reader.page
    assert page.evaluate(SHOWN) == ["weigh.html"]
    assert page.evaluate(RANKED) == in_the_folder
    page.locator("#w-points-weight").fill("77")
    page.locator("#w-points-weight").blur()
    assert page.evaluate(SHOWN) == ["weigh.html"]
    assert "weight:77" in page.url
    page.locator("#w-table tbody th a").first.click()
    [now] = page.evaluate(SHOWN)
    assert now.startswith("products.")
    page.go_back()
    assert page.evaluate(SHOWN) == ["weigh.html"]
    assert page.locator("#w-points-weight").input_value() == "77"


def test_sorting_is_announced_on_the_page_that_is_sorted(read, one):
    page = read().page
    page.goto(f"{one}#buyers.club-racer.html")
    leaf = page.locator(".leaf:visible")
    leaf.get_by_role("button", name="Pedal").click()
    assert leaf.get_by_role("status").text_content() == "Sorted by Pedal, ascending."


def test_each_ride_is_looked_at_closer_on_its_own_page(read, one, folder):
    page = read().page
    rides = sorted(path.name for path in (folder / "bench/rides").glob("*.html"))
    assert len(rides) >= 2
    for name in rides:
        page.goto(f"{one}#bench.rides.{name}")
        page.locator(".leaf:visible").get_by_role("button", name="Closer").click()
        assert "0:00:00 to" not in page.locator(".leaf:visible .closer").get_by_role("status").text_content()


def test_a_file_is_saved_from_it_without_a_network(read, one, folder):
    reader = read()
    reader.page.goto(one)
    reader.page.locator(".leaf:visible").get_by_role("link", name="prices.csv").first.click()
    with reader.page.expect_download() as saving:
        reader.page.get_by_role("region", name="Files").get_by_role("link", name="prices.csv").click()
    assert Path(saving.value.path()).read_bytes() == (folder / "data/prices.csv").read_bytes()
    assert reader.said == []
    assert [url for url in reader.requests if not url.startswith(("file://", "data:"))] == []


@pytest.mark.parametrize("width", [320, 1280])
def test_no_leaf_scrolls_sideways_and_nothing_goes_wrong(read, one, width):
    reader = read(width)
    sideways = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    for name in [*map(leaf_name, PAGES), "files.html"]:
        reader.page.goto(f"{one}#{name}")
        assert reader.page.evaluate(SHOWN) == [name]
        assert reader.page.evaluate(sideways) <= 0, name
    assert reader.said == []
