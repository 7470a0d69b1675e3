"""Every kind of page, light and dark, wide and narrow, against the rules of axe (WCAG 2.2, A and AA)."""

from importlib.resources import files

import pytest

from browser.page_kinds import KINDS, PAGES, kind

pytestmark = pytest.mark.browser

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


@pytest.fixture(scope="module")
def axe() -> str:
    package = pytest.importorskip("axe_playwright_python", reason="axe-playwright-python is not installed")
    return (files(package) / "axe.min.js").read_text("utf-8")


def violations(page, axe):
    # all of it at once, so that nothing sticks over anything else
    width, height = page.viewport_size["width"], page.evaluate("document.documentElement.scrollHeight")
    page.set_viewport_size({"width": width, "height": height + 400})
    # by evaluate, since the page's policy refuses any other script element
    page.evaluate(axe)
    found = page.evaluate("(tags) => axe.run({runOnly: {type: 'tag', values: tags}})", RULES)
    return [(v["id"], v["help"], [n["html"][:160] for n in v["nodes"][:3]]) for v in found["violations"]]


@pytest.mark.slow
@pytest.mark.parametrize("width", [1280, 390])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_rule_is_broken(read, axe, scheme, width):
    reader = read(width, color_scheme=scheme)
    found = {}
    for name in PAGES:
        found[name] = violations(reader.open(name), axe)
        reader.page.set_viewport_size({"width": width, "height": 900})
    assert {name: broken for name, broken in found.items() if broken} == {}


def test_every_kind_of_page_is_among_those_that_are_looked_at(folder):
    pages = {page.relative_to(folder).as_posix() for page in folder.rglob("*.html")}
    assert {kind(page) for page in pages} == set(KINDS)
    assert set(PAGES) <= pages


def test_a_planted_fault_is_found(read, axe):
    page = read().open("cautions.html")
    page.evaluate("document.querySelector('main h1').outerHTML = '<h1></h1><img>'")
    assert "image-alt" in [rule for rule, *_ in violations(page, axe)]
