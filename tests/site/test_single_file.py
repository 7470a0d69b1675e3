import base64
from urllib.parse import urlsplit

import html5lib
import pytest

import worlds
from spindlewise.render.fragment import PAGE as WEIGH_PAGE
from spindlewise.site.pages import gather, single
from spindlewise.site.policy import source_hash
from spindlewise.site.single_file import leaf_name, single_file

XHTML = "{http://www.w3.org/1999/xhtml}"


@pytest.fixture(scope="module")
def one(site):
    return single(site.catalog, site.buyers, site.day)


@pytest.fixture(scope="module")
def tree(one):
    return html5lib.HTMLParser(strict=True).parse(one)


def named(tree, tag):
    return list(tree.iter(XHTML + tag))


def ids(tree):
    return [e.get("id") for e in tree.iter() if isinstance(e.tag, str) and e.get("id")]


def test_every_page_of_the_site_is_a_leaf_of_it_and_the_front_page_comes_first(site, tree):
    leaves = [e.get("id") for e in named(tree, "div") if e.get("class") == "leaf"]
    pages = {leaf_name(page.relative_to(site.folder).as_posix()) for page in site.pages()}
    assert leaves[0] == "index.html"
    assert set(leaves) == pages | {"files.html"}
    assert len(leaves) == len(pages) + 1


def test_every_id_is_there_once_and_every_anchor_leads_to_one(site, tree):
    known = ids(tree)
    assert len(known) == len(set(known))
    links = [e.get("href") for e in named(tree, "a")]
    within = [href[1:] for href in links if href.startswith("#") and not href.startswith("#v=")]
    assert len(within) > 1000
    assert set(within) <= set(known)
    others = [href for href in links if not href.startswith("#")]
    assert {urlsplit(href).scheme for href in others} <= {"https", "http", "data"}
    for element in tree.iter():
        for name in ("aria-labelledby", "aria-describedby", "for", "headers"):
            for wanted in (element.get(name) or "").split():
                assert wanted in known, (name, wanted)


def test_questions_keep_their_addresses(one, site):
    asked = [page for page in site.pages() if b"weigh.html#v=" in page.read_bytes()]
    assert len(asked) >= 10
    assert one.count(b'href="#v=') >= len(asked)


def test_it_says_what_the_pages_say(site, tree):
    """Leaf by leaf the words are those of the page in the folder."""
    leaves = {e.get("id"): e for e in named(tree, "div") if e.get("class") == "leaf"}
    for page in site.pages():
        body = next(html5lib.parse(page.read_bytes()).iter(XHTML + "body"))
        name = page.relative_to(site.folder).as_posix()
        assert words(leaves[leaf_name(name)]) == words(body), name


def words(element):
    if element.tag == XHTML + "script":
        return []
    found = (element.text or "").split()
    for child in element:
        found += words(child) + (child.tail or "").split()
    return found


def test_the_other_files_can_be_saved_from_it_as_they_are(site, tree):
    saved = {e.get("download"): e.get("href") for e in named(tree, "a") if e.get("download")}
    others = [p for p in site.folder.rglob("*") if p.is_file() and p.suffix != ".html"]
    others = [p for p in others if p.name != "manifest.json"]
    assert set(saved) == {path.name for path in others}
    for path in others:
        head, _, data = saved[path.name].partition(",")
        assert head.startswith("data:")
        assert head.endswith(";base64")
        assert base64.b64decode(data) == path.read_bytes()


def test_one_style_one_script_and_a_policy_that_allows_these_alone(tree):
    [style], [script] = named(tree, "style"), [e for e in named(tree, "script") if not e.get("type")]
    [policy] = [e.get("content") for e in named(tree, "meta") if e.get("http-equiv")]
    assert source_hash(style.text) in policy
    assert source_hash(script.text) in policy
    assert "default-src 'none'" in policy
    assert [e.tag for e in tree.iter() if e.get("src") or e.get("style")] == []
    assert len(named(tree, "main")) == 1


def test_the_same_world_gives_the_same_bytes():
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    assert single(catalog, {}, worlds.DAY) == single(catalog, {}, worlds.DAY)


def test_a_page_that_leads_nowhere_is_refused():
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    made = gather(catalog, {}, worlds.DAY)
    frame = worlds_frame(catalog)
    broken = {
        **made,
        "method.html": made["method.html"].replace(b'href="cautions.html"', b'href="gone.html"'),
    }
    with pytest.raises(ValueError, match=r"method\.html leads to gone\.html"):
        single_file(broken, frame)
    with pytest.raises(ValueError, match="one main part"):
        single_file({**made, "method.html": b"<body>\n</body>"}, frame)


def worlds_frame(catalog):
    from spindlewise.answer.desk import Desk
    from spindlewise.site.frame import frame_of

    return frame_of(Desk(catalog, worlds.DAY), {})


def test_the_weighing_page_keeps_the_ids_that_its_script_knows(tree):
    assert {"w-form", "w-data", "w-table"} <= set(ids(tree))
    [weigh] = [e for e in named(tree, "div") if e.get("id") == "weigh"]
    assert weigh.get("data-products") == "#products.{}.html"
    assert WEIGH_PAGE in ids(tree)
