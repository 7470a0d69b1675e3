"""The pictures drawn as the reader moves: readable on every screen, described, and true to their tables."""

import pytest

import worlds
from browser.weigh.reader import opened, settled
from spindlewise.answer.swap import swap
from spindlewise.render.fragment import fragment
from spindlewise.render.naming import naming
from spindlewise.site.swap_figured import swap_figured

pytestmark = pytest.mark.browser

DRAWN = """() => [...document.querySelectorAll("svg.w-drawing")].map((drawing) => {
  const box = drawing.viewBox.baseVal, texts = [...drawing.querySelectorAll("text")];
  const numbers = [...drawing.querySelectorAll("*")].flatMap((e) => [...e.attributes].map((a) => a.value));
  const outside = texts.filter((t) => { const b = t.getBBox();
    return b.x < -1 || b.x + b.width > box.width + 1 || b.y < -3 || b.y + b.height > box.height + 3; });
  const written = (t) => t.textContent + " " + t.getAttribute("class");
  const over = texts.flatMap((one, k) => texts.slice(k + 1).filter((other) => {
    const a = one.getBBox(), b = other.getBBox();
    return a.x + 1 < b.x + b.width && b.x + 1 < a.x + a.width &&
      a.y + 3 < b.y + b.height && b.y + 3 < a.y + a.height;
  }).map((other) => written(one) + " / " + written(other)));
  return { id: drawing.getAttribute("aria-labelledby"), role: drawing.getAttribute("role"),
    title: drawing.querySelector(":scope > title").textContent,
    said: drawing.querySelector(":scope > desc").textContent,
    named: ["aria-labelledby", "aria-describedby"]
      .every((a) => document.getElementById(drawing.getAttribute(a))),
    bad: numbers.filter((value) => /NaN|undefined|Infinity|null/.test(value)),
    scale: drawing.getBoundingClientRect().width / box.width, outside: outside.map(written), over };
})"""


def shown(read, buyer, width):
    page = opened(read, fragment(buyer, with_private=True), width=width)
    # all of it at once: what is out of sight is not laid out
    page.set_viewport_size({"width": width, "height": page.evaluate("document.documentElement.scrollHeight")})
    page.evaluate("new Promise((told) => requestAnimationFrame(() => requestAnimationFrame(told)))")
    return settled(page)


@pytest.mark.parametrize("width", [320, 760, 1280])
def test_pictures_are_described_and_their_texts_stand_free(read, buyers, width):
    kinds = set()
    for name in ("shorter-cranks", "bay-loop", "long-keeper"):
        for found in shown(read, buyers[name], width).evaluate(DRAWN):
            where = (name, found["id"])
            assert found["role"] == "img", where
            assert found["named"], where
            assert len(found["title"]) > 10, where
            assert len(found["said"]) > 20, where
            assert found["bad"] == [], where
            assert found["outside"] == [], where
            assert [pair for pair in found["over"] if "p-name" not in pair] == [], where
            # text is as large as it is meant to be
            assert found["scale"] == pytest.approx(1.0, abs=0.01) or found["scale"] > 0.8, where
            kinds.add(found["id"])
    wanted = ("picture", "points", "worlds", "rungs", "heights", "gains", "pair-heights")
    assert kinds == {f"w-{name}-title" for name in wanted}


def test_each_picture_has_its_table_and_it_stays_open(read, buyers):
    page = opened(read, fragment(buyers["shorter-cranks"], with_private=True))
    figures = page.locator("figure.w-figure").count()
    assert figures >= 7
    for summary in page.locator("figure.w-figure summary").all():
        summary.click()
    page.locator("#w-points-table table").wait_for()
    rows = page.locator("#w-points-table tbody tr")
    for row in rows.all():
        *points, score = [float(text) for text in row.locator("td").all_text_contents()]
        # each of them is rounded by itself
        assert sum(points) == pytest.approx(score, abs=0.05 * (len(points) + 1))
    before = rows.first.text_content()
    page.get_by_label("Weight", exact=True).fill("70")
    assert settled(page).locator("#w-points-table tbody tr").first.text_content() != before
    # what nobody opened has not been built
    assert page.locator("#w-off-ladder > *").count() == 1


def test_a_bar_of_a_score_is_as_long_as_its_points(read, buyers):
    page = opened(read, fragment(buyers["club-racer"], with_private=True))
    lengths = page.evaluate(
        """() => { const found = WeighPage.found();
          const rooms = [...document.querySelectorAll("[aria-labelledby=w-points-title] .p-room")];
          return rooms.map((room, k) => { let earned = 0, next = room.nextElementSibling;
            while (next && next.tagName === "g") {
              earned += next.querySelector("rect").width.baseVal.value;
              next = next.nextElementSibling;
            }
            return [100 * earned / room.width.baseVal.value, found.order[k].score.expected]; }); }"""
    )
    assert len(lengths) > 3
    for drawn, score in lengths:
        assert drawn == pytest.approx(score, abs=0.2)


def test_the_swap_is_drawn_from_the_same_heights_as_in_python(plain_page, desk, catalog):
    names, drawn, not_drawn = naming(catalog), 0, 0
    for bike, shoes in (
        ({}, {}),
        ({"crank_mm": 172.5, "new_crank_mm": 165.0}, {"sole_mm": 7.0, "new_sole_mm": 5.5}),
    ):
        buyer = worlds.buyer(bike=bike, shoes=shoes)
        seen = plain_page.evaluate(
            """(fragment) => {
              const data = WeighPage.data, asked = WeighQuestion.read(data, fragment).asked;
              const heights = (layers) => layers.map((layer) => [layer.what, layer.height]);
              return data.products.map((old) => data.products.map((next) => {
                const change = WeighSwap.swap(data, { ...asked, present: old.id }, next);
                const found = WeighSwapPicture.sides(change, asked);
                return found && [heights(found.before), heights(found.after), found.lower];
              }));
            }""",
            fragment(buyer),
        )
        for old, row in zip(catalog.products.values(), seen, strict=True):
            for new, sides in zip(catalog.products.values(), row, strict=True):
                figures = swap_figured(swap(old, new, desk.day, buyer, ()), buyer, names)
                if not figures:
                    assert sides is None, (old.id, new.id)
                    not_drawn += 1
                    continue
                wanted = figures[0].picture.shown
                for layers, python in zip(sides[:2], (wanted.before, wanted.after), strict=True):
                    assert [what for what, _ in layers] == [layer.what for layer in python]
                    assert [mm for _, mm in layers] == pytest.approx([layer.height_mm for layer in python])
                assert sides[2] == pytest.approx(wanted.crank_lower_mm)
                drawn += 1
    assert drawn > 100
    assert not_drawn > 10


def test_pictures_are_as_wide_as_the_window_that_became_narrower(read, buyers):
    page = opened(read, fragment(buyers["shorter-cranks"], with_private=True), width=1280)
    width = "document.querySelector('svg.w-drawing').viewBox.baseVal.width"
    before = page.evaluate(width)
    page.set_viewport_size({"width": 390, "height": 900})
    for _ in range(100):
        if page.evaluate(width) < before:
            break
    assert settled(page).evaluate(width) <= 360
    assert page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0
