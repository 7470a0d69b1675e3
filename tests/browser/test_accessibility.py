"""Every kind of page, light and dark, wide and narrow, against the rules of axe (WCAG 2.2, A and AA)."""

from importlib.resources import files

import pytest

pytestmark = pytest.mark.browser

PAGES = [
    "index.html",
    "products/yttervane-koldrane.html",
    "products/lommerside-trasket.html",
    "buyers/club-racer.html",
    "buyers/nothing-for-it.html",
    "buyers/index.html",
    "changes.html",
    "claims.html",
    "method.html",
    "disclosure.html",
    "cautions.html",
    "bench/index.html",
    "bench/rides/2025-10-18-three-meters.html",
    "bench/sessions.html",
    "bench/weighings.html",
]
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


@pytest.fixture(scope="module")
def axe() -> str:
    package = pytest.importorskip("axe_playwright_python", reason="axe-playwright-python is not installed")
    return (files(package) / "axe.min.js").read_text("utf-8")


def violations(page, axe):
    # by evaluate, since the page's policy refuses any other script element
    page.evaluate(axe)
    found = page.evaluate("(tags) => axe.run({runOnly: {type: 'tag', values: tags}})", RULES)
    return [(v["id"], v["help"], [n["html"][:160] for n in v["nodes"][:3]]) for v in found["violations"]]


@pytest.mark.slow
@pytest.mark.parametrize(("scheme", "width"), [("light", 1280), ("dark", 390)])
def test_no_rule_is_broken(read, axe, scheme, width):
    reader = read(width, color_scheme=scheme)
    for name in PAGES:
        assert violations(reader.open(name), axe) == [], name


def test_a_planted_fault_is_found(read, axe):
    page = read().open("cautions.html")
    page.evaluate("document.querySelector('main h1').outerHTML = '<h1></h1><img>'")
    assert "image-alt" in [rule for rule, *_ in violations(page, axe)]
