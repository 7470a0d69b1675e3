"""Every page of the demo: strict HTML, links that lead somewhere, nothing fetched, the notice on each."""

import json
from datetime import date
from urllib.parse import unquote, urlsplit

import html5lib
import pytest

import worlds
from spindlewise.site.pages import gather
from spindlewise.site.policy import source_hash

XHTML = "{http://www.w3.org/1999/xhtml}"
FETCHING = ("src", "srcset", "poster", "data", "action", "formaction", "background", "manifest", "ping")


def parsed(data: bytes):
    return html5lib.HTMLParser(strict=True).parse(data)


def elements(tree):
    for element in tree.iter():
        if isinstance(element.tag, str):
            yield element.tag.removeprefix(XHTML), element


def ids(tree):
    return [element.get("id") for _, element in elements(tree) if element.get("id")]


def test_every_page_is_strict_html(site):
    pages = site.pages()
    for page in pages:
        tree = parsed(page.read_bytes())
        found = ids(tree)
        assert len(found) == len(set(found)), page
    single = {"buyers/index", "cautions", "changes", "claims", "disclosure", "method"}
    made = {page.relative_to(site.folder).with_suffix("").as_posix() for page in pages}
    assert single <= made
    assert {f"products/{name}" for name in site.catalog.products} <= made
    assert {f"buyers/{name}" for name in site.buyers} <= made
    assert {"index", "regions/us", "regions/jp"} <= made


def test_every_link_and_anchor_leads_somewhere(site):
    trees = {page.resolve(): parsed(page.read_bytes()) for page in site.pages()}
    anchors = {page: set(ids(tree)) for page, tree in trees.items()}
    followed = 0
    for page, tree in trees.items():
        for tag, element in elements(tree):
            href = element.get("href")
            if tag != "a" or href is None or urlsplit(href).scheme:
                continue
            parts = urlsplit(href)
            target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
            assert not parts.path.startswith("/"), href
            assert target.is_file(), (page, href)
            assert target.is_relative_to(site.folder.resolve())
            if parts.fragment.startswith("v="):
                assert target.name == "weigh.html", (page, href)  # a question, not an anchor
            elif parts.fragment:
                assert parts.fragment in anchors[target], (page, href)
            followed += 1
    assert followed > 1000


def test_labels_and_regions_point_at_what_is_there(site):
    for page in site.pages():
        tree = parsed(page.read_bytes())
        known = set(ids(tree))
        for _, element in elements(tree):
            if element.get("aria-labelledby"):
                assert element.get("aria-labelledby") in known, page


def test_nothing_is_fetched(site):
    for page in site.pages():
        for tag, element in elements(parsed(page.read_bytes())):
            assert not any(element.get(name) for name in FETCHING), (page, tag)
            assert element.get("style") is None
            assert not any(name.startswith("on") for name in element.attrib if isinstance(name, str))
            if tag == "link":
                within = element.get("href").startswith("#") and element.get("rel") == "expect"
                assert within or element.get("href") == "data:," or element.get("rel") == "alternate"
            if tag == "a" and urlsplit(element.get("href", "")).scheme:
                assert element.get("href").startswith(("https://", "http://"))
                assert "noreferrer" in element.get("rel", "")


def is_data(element):
    """A block of data, which no browser runs (HTML, the script element)."""
    return element.get("type") in ("application/json", "application/ld+json")


def test_the_policy_of_each_page_allows_exactly_its_style_and_script(site):
    for page in site.pages():
        tree = parsed(page.read_bytes())
        found = list(elements(tree))
        policy = next(e.get("content") for tag, e in found if tag == "meta" and e.get("http-equiv"))
        for tag, element in found:
            if tag == "script" and is_data(element):
                assert "<" not in element.text
            elif tag in ("style", "script"):
                assert source_hash(element.text) in policy, page


def test_every_page_says_that_all_is_invented_and_as_of_when(site):
    for page in site.pages():
        text = page.read_text("utf-8")
        assert site.catalog.settings.invented[:40] in text
        assert "as of <time" in text
        assert text.count("<h1") == 1, page


def test_no_page_of_a_real_catalog_says_so():
    desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])
    real = desk.catalog.settings.model_copy(update={"invented": "no"})
    from dataclasses import replace

    made = gather(replace(desk.catalog, settings=real), {}, worlds.DAY)
    assert not any(b'class="invented"' in data for data in made.values())


HOSTILE = '"><script>alert(1)</script><b onmouseover=x>&amp; {{ 7*7 }}'


def hostile_catalog():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": HOSTILE,
        "action": HOSTILE,
        "issued_by": HOSTILE,
    }
    report = {
        "date": date(2026, 5, 1), "what": HOSTILE, "count": 2, "of_units": "unknown", "grade": "reported",
        "status": "open", "source": HOSTILE,
    }  # fmt: skip
    product = worlds.product(
        "heron",
        {"weight_g": (worlds.weighed(300, source=HOSTILE, note=HOSTILE, url="https://x.example/?a=1&b=2"),)},
        maker=HOSTILE,
        summary=HOSTILE,
        safety_notices=(notice,),
        reliability=(report,),
    ).model_copy(update={"name": HOSTILE})
    return worlds.catalog(
        [product, worlds.product("siskin")],
        [worlds.price("heron", 500, seller=HOSTILE), worlds.price("siskin", 450)],
    )


def test_hostile_text_stays_text():
    buyer = worlds.buyer(name=HOSTILE, question=HOSTILE)
    made = gather(hostile_catalog(), {"tester": buyer}, worlds.DAY)
    pages = {path: data for path, data in made.items() if path.endswith(".html")}
    for path, data in pages.items():
        tree = parsed(data)
        scripts = [e.text for tag, e in elements(tree) if tag == "script" and not is_data(e)]
        assert all("alert(1)" not in text for text in scripts), path
        assert not any(e.get("onmouseover") for _, e in elements(tree))
        assert b"{{ 7*7 }}" in data or HOSTILE.encode() not in data
    assert b"&lt;script&gt;" in pages["products/heron.html"]


def test_a_script_address_becomes_no_link():
    """The catalog refuses such an address already; the page would too."""
    product = worlds.product("heron")
    sheet = product.observations.weight_g[0].model_copy(update={"url": "javascript:alert(1)"})
    observations = product.observations.model_copy(update={"weight_g": (sheet,)})
    bad = product.model_copy(update={"observations": observations})
    made = gather(worlds.catalog([bad], [worlds.price("heron", 500)]), {}, worlds.DAY)
    assert b"javascript:" not in made["products/heron.html"]


def test_the_same_world_gives_the_same_bytes_whatever_the_order_of_buyers():
    catalog = worlds.catalog(
        [worlds.product("heron"), worlds.product("siskin")],
        [worlds.price("heron", 500), worlds.price("siskin", 450)],
    )
    one, two = worlds.buyer(id="one"), worlds.buyer({"price": 1}, id="two")
    assert gather(catalog, {"one": one, "two": two}, worlds.DAY) == gather(
        catalog, {"two": two, "one": one}, worlds.DAY
    )


def test_a_buyer_of_a_region_that_cannot_be_served_gets_a_page_that_says_why():
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    made = gather(catalog, {"far": worlds.buyer(id="far", region="XX")}, worlds.DAY)
    assert b"the catalog knows no region XX" in made["buyers/far.html"]
    assert "data/ranking-far.json" not in made


def test_a_buyer_whom_nothing_fits_gets_an_answer_too():
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    made = gather(catalog, {"poor": worlds.buyer(id="poor", budget=1)}, worlds.DAY)
    assert b"No recommendation" in made["buyers/poor.html"]
    assert json.loads(made["data/ranking-poor.json"])["order"] == []


def test_nothing_dated_later_is_on_any_page():
    late = date(2026, 12, 24)
    product = worlds.product(
        "heron",
        {"weight_g": (worlds.weighed(330), worlds.weighed(222, date=late, source="a later weighing"))},
    )
    catalog = worlds.catalog(
        [product], [worlds.price("heron", 500), worlds.price("heron", 333, date=late, line=3)]
    )
    made = gather(catalog, {"tester": worlds.buyer()}, worlds.DAY)
    assert all(b"2026-12-24" not in data and b"a later weighing" not in data for data in made.values())
    later = gather(catalog, {}, late)
    assert b"a later weighing" in later["products/heron.html"]


@pytest.mark.parametrize("count", [1, 3])
def test_progress_sees_every_file(count):
    seen = []

    def watch(jobs, total):
        for job in jobs:
            seen.append(job.path)
            yield job
        assert total == len(seen)

    products = [worlds.product(name) for name in ("heron", "siskin", "plover")[:count]]
    made = gather(worlds.catalog(products, []), {}, worlds.DAY, watch)
    assert sorted(seen) == list(made)
