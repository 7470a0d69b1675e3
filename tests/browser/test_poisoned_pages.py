"""Pages whose every text is a payload, in a real browser: nothing runs, nothing is fetched, nothing is added.

The whole site as one file puts every text of every page before the browser at once.
"""

from pathlib import Path

import pytest

from hostile.payloads import PAYLOADS, payload, plain
from hostile.poisoned import DAY, opened, written
from spindlewise.site.build import publish, publish_single

pytestmark = [pytest.mark.browser, pytest.mark.slow]

PRODUCTS = 8
COUNT = """() => {
  const found = {};
  for (const element of document.querySelectorAll("*")) {
    if (element.closest("svg") && element.localName !== "svg") continue;
    if (element.matches("span.whole")) continue;
    const name = [element.localName, ...element.getAttributeNames().sort()].join(" ");
    found[name] = (found[name] || 0) + 1;
  }
  return found;
}"""
DRAWN = "[...new Set([...document.querySelectorAll('svg *')].map((e) => e.localName))]"
# such a span depends on the text that it stands in; it may hold nothing but a piece of that text
NOT_ONLY_TEXT = """[...document.querySelectorAll(".whole")].filter((e) =>
  e.localName !== "span" || e.getAttributeNames().join() !== "class" || e.childNodes.length !== 1
    || e.firstChild.nodeType !== Node.TEXT_NODE
    || !/^[-+−±A-Z0-9][-+−±A-Za-z0-9 .,%]*$/.test(e.textContent))"""
HANDLERS = (
    "[...document.querySelectorAll('*')].filter((e) => e.getAttributeNames().some((n) => n.startsWith('on')))"
)
SVG = {
    "g",
    "path",
    "text",
    "tspan",
    "rect",
    "line",
    "circle",
    "title",
    "desc",
    "clipPath",
    "defs",
    "polyline",
}


def settled(page) -> dict[str, int]:
    """The count once nothing more is drawn: what is not seen at once is drawn a little later."""
    found, same = page.evaluate(COUNT), 0
    while same < 3:
        page.wait_for_timeout(200)
        before, found = found, page.evaluate(COUNT)
        same = same + 1 if found == before else 0
    return found


def counted(read, address: str) -> dict[str, int]:
    reader = read()
    asked: list[str] = []
    reader.page.on("dialog", lambda dialog: (asked.append(dialog.message), dialog.dismiss()))
    reader.page.goto(address)
    found = settled(reader.page)
    assert reader.page.evaluate("typeof window.ran") == "undefined"
    assert reader.page.evaluate(f"{HANDLERS}.length") == 0
    assert set(reader.page.evaluate(DRAWN)) <= SVG
    assert reader.page.evaluate(f"{NOT_ONLY_TEXT}.length") == 0
    assert asked == []
    assert reader.said == []  # a policy that had to stop something would say so here
    assert all(request.startswith(("file:", "data:")) for request in reader.requests)
    assert len([request for request in reader.requests if request.startswith("file:")]) == 1
    reader.page.close()
    return found


@pytest.mark.parametrize("turn", range(0, len(PAYLOADS), 13))
def test_nothing_of_a_poisoned_site_runs(read, tmp_path: Path, turn: int) -> None:
    counts = []
    for name, text in (("poisoned", payload), ("plain", plain)):
        catalog, buyers = opened(written(tmp_path / name, lambda n, text=text: text(n + turn), PRODUCTS))
        file = tmp_path / f"{name}.html"
        publish_single(catalog, buyers, DAY, file)
        counts.append(counted(read, file.as_uri()))
    assert counts[0] == counts[1]
    assert sum(counts[0].values()) > 5000


@pytest.mark.parametrize("turn", [5, 60])
def test_nothing_of_any_poisoned_page_runs(read, tmp_path: Path, turn: int) -> None:
    out = {}
    for name, text in (("poisoned", payload), ("plain", plain)):
        catalog, buyers = opened(written(tmp_path / name, lambda n, text=text: text(n + turn), 2))
        out[name] = tmp_path / f"{name}-site"
        publish(catalog, buyers, DAY, out[name])
    pages = sorted(path.relative_to(out["plain"]) for path in out["plain"].rglob("*.html"))
    assert len(pages) >= 12
    for page in pages:
        assert counted(read, (out["poisoned"] / page).as_uri()) == counted(
            read, (out["plain"] / page).as_uri()
        ), page
