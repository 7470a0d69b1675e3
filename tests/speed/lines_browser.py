"""The bench's lines about the page on which readers weigh for themselves, in Debian's chromium.

Counted is the browser's own work on one core, since other programs may want the same cores.
"""

import importlib.util
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from speed.timing import Line, shown, workshop
from speed.weighing_page import page_of

CHROMIUM = Path("/usr/bin/chromium")
FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync"]
STEPS = 20
MOVE = """(steps) => {
  const slide = document.querySelector(".w-slide");
  for (let k = 0; k < steps; k += 1) {
    slide.value = 20 + k;
    slide.dispatchEvent(new Event("input", { bubbles: true }));
    document.body.offsetHeight;
  }
}"""
FOLLOW = """(steps) => {
  const slide = document.querySelector(".w-slide");
  for (let k = 0; k < steps; k += 1) {
    slide.value = 20 + k;
    slide.dispatchEvent(new Event("input", { bubbles: true }));
    WeighLater.finish();
    document.body.offsetHeight;
  }
}"""
RANK = """(times) => {
  const asked = WeighPage.asked(), begun = performance.now();
  for (let k = 0; k < times; k += 1) WeighRanking.rank(WeighPage.data, asked);
  return (performance.now() - begun) / times;
}"""
LONG_TASKS = """() => new Promise((told) => {
  const seen = performance.getEntriesByType("longtask");
  const watch = new PerformanceObserver((list) => seen.push(...list.getEntries()));
  watch.observe({ type: "longtask" });
  setTimeout(() => told(seen.map((task) => task.duration)), 300);
})"""


def weighing() -> Iterator[Line]:
    """First ranking, blocking and redrawing of 50 products, and ranking 1,000 anew."""
    if not CHROMIUM.exists() or importlib.util.find_spec("playwright") is None:
        return
    from playwright.sync_api import sync_playwright

    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        fifty, thousand = (_written(products) for products in (50, 1000))
        # a browser that has just begun is busy with itself
        for _ in range(2):
            _opened(browser, fifty)
        blocking, first, drawn, followed = zip(*(_fifty(browser, fifty) for _ in range(5)), strict=True)
        yield _line("page of 50 products: work until a screenful stands ranked", min(first), 0.1)
        yield _line("page of 50 products: blocking, beyond 50 ms a task", min(blocking), 0.05)
        yield _line("page of 50 products: a slider moved, ranked and drawn", min(drawn), 0.05)
        yield _line("page of 50 products: the same with all pictures and 1,000 worlds", min(followed), 0.05)
        page, _ = _opened(browser, thousand)
        ranked = min(page.evaluate(RANK, 5) for _ in range(5)) / 1000
        yield _line("page of 1,000 products: ranked anew", ranked, 0.016)
        browser.close()


def _line(what: str, ours: float, bound: float) -> Line:
    return Line(what, shown(ours), f"bound {shown(bound)}", f"{ours / bound:.2f}", "1")


def _written(products: int) -> str:
    path = workshop() / f"weigh-{products}.html"
    path.write_bytes(page_of(products))
    return path.as_uri()


def _opened(browser: Any, address: str) -> tuple[Any, Any]:
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    session = page.context.new_cdp_session(page)
    session.send("Performance.enable", {"timeDomain": "threadTicks"})
    page.goto(address)
    return page, session


def _worked(session: Any) -> float:
    found = session.send("Performance.getMetrics")["metrics"]
    return float(next(m["value"] for m in found if m["name"] == "TaskDuration"))


def _fifty(browser: Any, address: str) -> tuple[float, float, float, float]:
    page, session = _opened(browser, address)
    first = _worked(session)
    blocking = sum(max(task - 50, 0) for task in page.evaluate(LONG_TASKS)) / 1000
    each = []
    for moves in (MOVE, FOLLOW):
        begun = _worked(session)
        page.evaluate(moves, STEPS)
        each.append((_worked(session) - begun) / STEPS)
    page.close()
    return blocking, first, *each
