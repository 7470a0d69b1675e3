"""The page on which readers weigh for themselves: Python's figures, in the browser, as the reader moves."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path
from random import Random
from typing import Any

import pytest

import worlds
from browser.weigh.random_worlds import random_catalog, random_points, random_question
from browser.weigh.reader import address, first, opened, parts, said, settled, shares_of
from speed.weighing_page import page_of
from spindlewise.answer.break_evens import break_evens
from spindlewise.answer.desk import Desk
from spindlewise.answer.ladder import climb
from spindlewise.answer.level_reasons import LevelReasons
from spindlewise.answer.missing import NoAnswer
from spindlewise.answer.ranking import rank
from spindlewise.answer.swap import swap
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.reading import read_record
from spindlewise.fit.saddle import SaddleChange
from spindlewise.render.fragment import fragment
from spindlewise.render.naming import naming
from spindlewise.render.words_rank import first_at_words
from spindlewise.render.words_why import behind_words, difference_words
from spindlewise.site.export import weigh_export
from spindlewise.site.templating import json_for_script
from spindlewise.units import amount_text, money_text

pytestmark = pytest.mark.browser

WEIGHTINGS, CATALOGS, QUESTIONS = 200, 50, 4
NEAR = 2e-9
"""Scores are settled to a billionth; in the last digit two sums of the same numbers may differ."""

TELL = (Path(__file__).parent / "tell.js").read_text("utf-8")
"""What the script of the page makes of some links, in plain values that Python can be held against."""


def python_tells(desk: Desk, buyer: Buyer) -> dict[str, Any]:
    """What TELL gives, from Python."""
    ranking = rank(desk, buyer)
    even = break_evens(desk, ranking)
    names = naming(desk.catalog)
    placed, reasons = ranking.placed, LevelReasons(ranking)

    def minor(found: Any) -> Any:
        return found and [found.outcome.value, found.minor_units]

    def why(product: str) -> str:
        found = ranking.against(product, placed[0].product)
        return f"{behind_words(found)}: {difference_words(found, names)}"

    return {
        "ignored": 0,
        "again": fragment(buyer, with_private=True),
        "order": [
            {
                "product": p.product,
                "rank": p.rank,
                "level": sorted(p.level_with),
                "count": len(p.level_with),
                "unknown": sorted(each.product for each in reasons.of(p) if each.only_by),
                "held": p.held_back,
                "score": [p.score.low, p.score.expected, p.score.high],
                "merits": [[m.low, m.expected, m.high] for m in p.merits.values()],
                "mode": p.received.reception.mode,
                "balance": p.received.reception.balance,
                "unchecked": list(p.unchecked),
                "even": minor(even.against_leader.get(p.product)),
                "at": first_at_words(even.against_leader[p.product], buyer.currency) if k else "stands first",
                "why": why(p.product) if k else "",
            }
            for k, p in enumerate(placed)
        ],
        "room": minor(even.room),
        "out": {e.product: [f.because for f in e.because] for e in ranking.excluded},
        "inAt": {
            k: amount_text(o.amount, buyer.currency) for k, o in even.out.items() if o.amount is not None
        },
        "ladder": python_ladder(desk, ranking),
        "saddle": python_saddle(desk, ranking),
    }


def python_ladder(desk: Desk, ranking: Any) -> Any:
    currency = ranking.buyer.currency
    try:
        found = climb(desk, ranking)
    except NoAnswer:
        return None
    return [
        [
            s.product,
            s.status,
            s.saving_g.low,
            s.saving_g.expected,
            s.saving_g.high,
            amount_text(s.extra_cost, currency),
            None if s.cost_per_gram is None else money_text(s.cost_per_gram, currency),
            None if s.step_cost_per_gram is None else money_text(s.step_cost_per_gram, currency),
            list(s.dominated_by),
        ]
        for s in found.steps
        if s.status != "baseline"
    ]


def python_saddle(desk: Desk, ranking: Any) -> Any:
    pick, old = ranking.pick, desk.catalog.products.get(ranking.buyer.present_pedals)
    if pick is None or old is None:
        return None
    found = swap(old, desk.catalog.products[pick.product], desk.day, ranking.buyer, ()).saddle
    return [found.change_mm, found.plus_minus_mm] if isinstance(found, SaddleChange) else "missing"


def assert_alike(browser: dict[str, Any], python: dict[str, Any], where: str) -> None:
    """Words, places and money to the digit; sums of floats to a billionth."""
    for key in ("ignored", "again", "room", "out", "inAt"):
        assert browser[key] == python[key], (where, key)
    assert browser["ladder"] == python["ladder"] or browser["ladder"] == pytest.approx(python["ladder"]), (
        where
    )
    if isinstance(python["saddle"], list):
        assert browser["saddle"] == pytest.approx(python["saddle"], abs=1e-9), where
    else:
        assert browser["saddle"] == python["saddle"], where
    assert [r["product"] for r in browser["order"]] == [r["product"] for r in python["order"]], where
    for seen, wanted in zip(browser["order"], python["order"], strict=True):
        for key in ("score", "merits"):
            flat = [seen.pop(key), wanted.pop(key)]
            near = [pytest.approx(x, abs=NEAR) for x in (flat[1] if key == "merits" else [flat[1]])]
            assert (flat[0] if key == "merits" else [flat[0]]) == near, (where, seen["product"], key)
        assert seen == wanted, where


def named_alike(buyer: Buyer) -> Buyer:
    """The buyer with receivers called as the page calls them, since links carry no names."""
    receivers = tuple(r.model_copy(update={"name": "your receiver"}) for r in buyer.receivers)
    return buyer.model_copy(update={"receivers": receivers})


# ---- the same arithmetic


def test_every_demo_buyer_comes_out_as_in_python(plain_page, desk, buyers):
    asked = {name: named_alike(b) for name, b in buyers.items()}
    told = plain_page.evaluate(TELL, ["", [fragment(b, with_private=True) for b in asked.values()]])
    for (name, buyer), seen in zip(asked.items(), told, strict=True):
        assert_alike(seen, python_tells(desk, buyer), name)
    assert sum(len(seen["order"]) for seen in told) > 60


def test_200_random_weightings_come_out_as_in_python(plain_page, desk, catalog):
    draw = Random("weightings")
    asked = [random_question(draw, catalog, random_points(draw)) for _ in range(WEIGHTINGS)]
    told = plain_page.evaluate(TELL, ["", [fragment(b, with_private=True) for b in asked]])
    for buyer, seen in zip(asked, told, strict=True):
        assert_alike(seen, python_tells(desk, buyer), fragment(buyer, with_private=True))
    assert len({tuple(r["product"] for r in seen["order"]) for seen in told}) > 50


def test_50_random_catalogs_come_out_as_in_python(plain_page):
    draw = Random("catalogs")
    placed = 0
    for _ in range(CATALOGS):
        found = random_catalog(draw)
        desk = Desk(found)
        asked = [random_question(draw, found) for _ in range(QUESTIONS)]
        text = json.dumps(weigh_export(desk))
        told = plain_page.evaluate(TELL, [text, [fragment(b, with_private=True) for b in asked]])
        for buyer, seen in zip(asked, told, strict=True):
            assert_alike(seen, python_tells(desk, buyer), fragment(buyer, with_private=True))
            placed += len(seen["order"])
    assert placed > 200


def test_every_swap_of_two_products_moves_the_saddle_as_in_python(plain_page, desk, catalog):
    bikes = [{}, {"crank_mm": 172.5, "new_crank_mm": 170.0}, {"new_crank_mm": 170.0}]
    shoes = [{}, {"sole_mm": 7.0, "new_sole_mm": 5.5}]
    told = {}
    for bike in bikes:
        for shoe in shoes:
            buyer = worlds.buyer(bike=bike, shoes=shoe)
            seen = plain_page.evaluate(
                """(fragment) => {
                  const data = WeighPage.data, asked = WeighQuestion.read(data, fragment).asked;
                  return data.products.map((old) => data.products.map((next) => {
                    const s = WeighSwap.saddle(old, next, asked);
                    if (s.missing) return "missing";
                    return [s.change, s.plus_minus, s.stack, s.cleat, s.sole, s.crank];
                  }));
                }""",
                fragment(buyer),
            )
            for old, row in zip(catalog.products.values(), seen, strict=True):
                for new, moved in zip(catalog.products.values(), row, strict=True):
                    found = swap(old, new, desk.day, buyer, ()).saddle
                    told[isinstance(found, SaddleChange)] = True
                    wanted = (
                        pytest.approx(
                            [
                                found.change_mm,
                                found.plus_minus_mm,
                                found.stack_mm,
                                found.cleat_mm,
                                found.sole_mm,
                                found.crank_mm,
                            ],
                            abs=1e-9,
                        )
                        if isinstance(found, SaddleChange)
                        else "missing"
                    )
                    assert moved == wanted, (old.id, new.id, bike, shoe)
    assert set(told) == {True, False}


@pytest.mark.parametrize(
    ("value", "decimals", "printed"),
    [
        (2.675, 2, "2.68"),
        (-0.04, 1, "0.0"),
        (6.25, 1, "6.3"),
        (0.5, 0, "1"),
        (-0.5, 0, "-1"),
        (1e-7, 1, "0.0"),
    ],
)
def test_halves_are_rounded_as_at_a_till(plain_page, value, decimals, printed):
    assert plain_page.evaluate("([v, d]) => WeighNumbers.numberText(v, d)", [value, decimals]) == printed


# ---- the page as its reader meets it


def test_without_a_script_the_usual_ranking_stands_there_and_the_page_says_so(read):
    still = opened(read, java_script_enabled=False)
    moving = opened(read)
    table = "#w-table"
    assert still.locator(table).inner_text() == moving.locator(table).inner_text()
    assert still.locator("#w-table tbody tr").count() > 10
    assert "runs no script" in still.locator("noscript").inner_text()
    # the pictures stand on other pages, which need no script either
    links = still.locator("noscript a").evaluate_all("all => all.map((a) => a.getAttribute('href'))")
    assert links == ["index.html#picture-price-score", "buyers/index.html"]
    assert not still.locator("#w-form").is_visible()
    assert not still.locator("#w-take").is_visible()
    assert moving.locator("#w-form").is_visible()


def test_the_page_shows_what_python_answers(read, desk, buyers):
    for name in ("club-racer", "long-keeper", "prairie-gravel"):
        page = opened(read, fragment(buyers[name], with_private=True))
        ranking = rank(desk, buyers[name])
        rows = page.locator("#w-table tbody tr").all_inner_texts()
        assert len(rows) == len(ranking.placed) > 0
        for row, placed in zip(rows, ranking.placed, strict=True):
            product = desk.catalog.products[placed.product]
            assert product.name in row
            assert f"{placed.score.expected:.1f}"[:-1] in row
        assert naming(desk.catalog).product(ranking.pick.product) in page.locator("#w-pick").inner_text()


def test_sliders_numbers_and_keyboard_change_the_ranking(read):
    page = opened(read)
    before, shares = first(page), shares_of(page)
    page.get_by_label("Weight, slider").focus()
    page.keyboard.press("End")
    assert page.get_by_label("Weight", exact=True).input_value() == "100"
    assert shares_of(page) != shares
    page.get_by_label("Price", exact=True).fill("0")
    page.get_by_label("Uncertainty of the reading", exact=True).fill("0")
    assert first(page) != before
    page.get_by_label("Weight, slider").focus()
    page.keyboard.press("ArrowLeft")
    assert page.get_by_label("Weight", exact=True).input_value() == "99"


def test_everything_can_be_reached_and_set_with_the_keyboard_alone(read):
    page = opened(read)
    seen = set()
    for _ in range(120):
        page.keyboard.press("Tab")
        seen.add(page.evaluate("((e) => e.id || e.className || e.tagName)(document.activeElement)"))
        if page.evaluate("document.activeElement.closest('#w-take') !== null"):
            break
    assert {"w-region", "w-budget", "w-points-price", "w-slide", "w-add", "w-reset", "w-ready"} <= seen
    page.locator("summary", has_text="What it must do").focus()
    page.keyboard.press("Enter")
    box = page.get_by_label("Both sides must be measured and shown")
    box.focus()
    page.keyboard.press("Space")
    assert "reading=both" in address(page)


def test_price_and_ownership_never_count_together(read):
    page = opened(read)
    page.get_by_label("Cost of ownership", exact=True).fill("40")
    assert page.get_by_label("Price", exact=True).input_value() == "0"
    assert page.locator("#w-money-note").is_visible()
    assert "price" not in page.evaluate(
        "Object.entries(WeighPage.asked().points).filter((e) => e[1]).map((e) => e[0])"
    )


def test_all_weights_nought_is_said_and_not_ranked(read):
    page = opened(read)
    for field in page.locator(".w-points").all():
        field.fill("0")
    assert "all weights are 0" in page.locator("#w-pick").inner_text()
    assert page.locator("#w-table tbody tr").count() == 0
    page.get_by_label("Price", exact=True).fill("5")
    assert page.locator("#w-table tbody tr").count() > 0


def test_receivers_are_added_and_taken_away(read):
    page = opened(read)
    assert page.locator("#w-none-recorded").is_visible()
    before = page.locator("#w-table").inner_text()
    page.get_by_role("button", name="Add a receiver").click()
    page.get_by_label("It hears").select_option("bluetooth")
    page.get_by_label("Pairs two power sensors").select_option("cannot")
    page.get_by_label("Channels free for power").select_option("1")
    assert page.locator("#w-table").inner_text() != before
    assert "receiver=bluetooth,1,cannot,can,can" in address(page)
    page.get_by_role("button", name="Remove your receiver").click()
    assert page.locator("#w-table").inner_text() == before


def test_a_bad_number_is_marked_and_counts_as_not_stated(read):
    page = opened(read)
    before = page.locator("#w-table").inner_text()
    page.locator("summary", has_text="Your pedals").click()
    field = page.get_by_label("Crank length", exact=True)
    field.fill("17")
    assert field.get_attribute("aria-invalid") == "true"
    assert page.locator("#w-table").inner_text() == before
    field.fill("170")
    assert field.get_attribute("aria-invalid") is None


def test_what_changed_is_said_once_the_reader_pauses(read):
    page = opened(read)
    field = page.get_by_label("Weight", exact=True)
    for points in ("5", "50", "500"):
        field.fill(points)
    assert page.get_by_role("status").inner_text() == ""
    assert said(page).startswith(page.locator(".w-name").inner_text())


# ---- links, steps back, copies


def test_links_go_round_trip_for_every_demo_buyer(read, buyers):
    page = opened(read)
    base = page.url
    for name, buyer in buyers.items():
        link = fragment(buyer, with_private=True)
        page.goto(base + link)
        assert settled(page).locator("#w-copy-link").input_value() == base + link, name
        # what the form holds is what the link said
        page.evaluate("document.getElementById('w-form').dispatchEvent(new Event('input'))")
        assert settled(page).locator("#w-copy-link").input_value() == base + link, name
        assert not page.locator("#w-link-note").is_visible()
        page.goto("about:blank")


def test_the_back_button_goes_back_one_change(read):
    page = opened(read)
    was = shares_of(page)
    page.get_by_label("Weight", exact=True).fill("90")
    page.keyboard.press("Tab")
    one = shares_of(page)
    page.get_by_label("Region").select_option("US")
    assert "USD" in page.locator("#w-pick").inner_text()
    page.go_back()
    assert page.get_by_label("Region").input_value() == "EU"
    assert shares_of(page) == one
    page.go_back()
    assert shares_of(page) == was
    page.go_forward()
    assert shares_of(page) == one
    assert page.get_by_label("Weight", exact=True).input_value() == "90"


HOSTILE = [
    "#v=2x&region=EU",
    "#v=1&region=<script>alert(1)</script>",
    "#v=1&__proto__=1&constructor=2&toString=3",
    "#v=1&points=price:-3",
    "#v=1&points=price:1e99",
    "#v=1&points=price:NaN,weight:Infinity",
    "#v=1&points=__proto__:3",
    "#v=1&points=price:1,price:2",
    "#v=1&points=price:1,ownership:1",
    "#v=1&budget=9999999999999",
    "#v=1&budget=%F0%28%8C%28",
    "#v=1&receiver=ant&receiver=ant,1,can,can",
    "#v=1&" + "&".join(["receiver=ant,1,can,can,can"] * 4),
    "#v=1&pattern=javascript:alert(1)",
    "#v=1&present=../../etc/passwd",
    "#v=1&mass=0&left=60-40",
    "#v=1&crank=17,25",
    "#v=1&region=EU&region=US",
    "#v=1&" + "a" * 5000,
    "#v=1&=&&==&",
    "#" + "%" * 50,
    "#<img src=x onerror=alert(1)>",
]


@pytest.mark.parametrize("link", HOSTILE)
def test_what_a_link_may_not_say_is_left_out_with_a_word(read, link):
    page = opened(read, link)
    note = page.locator("#w-link-note")
    assert note.is_visible()
    assert "could not be read" in note.inner_text() or "cannot be read" in note.inner_text()
    assert page.locator("#w-table tbody tr").count() > 5
    assert page.locator("script").count() == 2
    assert page.locator("main img").count() == 0
    assert page.evaluate("({}).polluted === undefined && Object.keys(Object.prototype).length === 0")
    assert page.reader.said == []


def test_an_anchor_is_no_question(read):
    page = opened(read, "#content")
    assert not page.locator("#w-link-note").is_visible()
    assert page.locator("#w-pick .w-name").is_visible()
    assert page.evaluate("WeighPage.found().order.length") == page.locator("#w-table tbody tr").count()


def test_body_and_health_stay_in_the_page_unless_the_reader_ticks(read):
    page = opened(read)
    page.locator("summary", has_text="About you").click()
    page.get_by_label("Weight with kit").fill("112.5")
    page.get_by_label("Left leg’s share from, percent").fill("46")
    page.get_by_label("Left leg’s share to, percent").fill("48")
    page.keyboard.press("Tab")
    copies = [page.locator(f"#w-copy-{key}") for key in ("link", "yaml", "text")]
    assert "rider limit" in settled(page).locator("#w-follows").text_content()
    for text in (address(page), *(copy.input_value() for copy in copies)):
        assert not re.search(
            r"112|mass|left=|balance_left|46|48-|kit", text.replace("left-hand", "").split("Disclosure")[0]
        ), text
    page.get_by_label("Put these into the link").check()
    settled(page)
    assert "mass=112.5&left=46-48" in address(page)
    assert "rider_mass_kg: 112.5" in copies[1].input_value()
    page.reload()
    assert page.get_by_label("Weight with kit").input_value() == "112.5"
    assert page.get_by_label("Put these into the link").is_checked()


def test_stepping_back_keeps_what_was_not_in_the_address(read):
    page = opened(read)
    page.locator("summary", has_text="About you").click()
    page.get_by_label("Weight with kit").fill("118")
    page.get_by_label("Region").select_option("US")
    page.go_back()
    assert page.get_by_label("Weight with kit").input_value() == "118"
    assert page.evaluate("WeighPage.asked().mass") == 118


def test_the_buyer_file_is_a_buyer_of_ours(read, buyers, tmp_path):
    page = opened(read)
    base = page.url
    path = tmp_path / "you.yaml"
    for name, buyer in buyers.items():
        page.goto(base + fragment(buyer, with_private=True))
        path.write_text(settled(page).locator("#w-copy-yaml").input_value(), "utf-8")
        page.goto("about:blank")
        found, _, problems = read_record(Buyer, path)
        assert problems == [], name
        assert found is not None
        again, wanted = (parts(fragment(b, with_private=True)) for b in (found, buyer))
        assert again.pop("points") == pytest.approx(wanted.pop("points"), rel=1e-14), name
        assert again == wanted, name


def test_the_answer_in_words_names_the_pick_the_price_and_the_disclosure(read, desk, buyers):
    page = opened(read, fragment(buyers["club-racer"], with_private=True))
    words = page.locator("#w-copy-text").input_value()
    pick = rank(desk, buyers["club-racer"]).pick
    assert f"Our pick: {naming(desk.catalog).product(pick.product)}." in words
    assert money_text(pick.paid.amount, "EUR") in words
    assert "Disclosure: " in words
    assert "Safety notices:" in words
    assert words.startswith("Everything here is invented")


def test_copying_says_so(chromium, folder):
    context = chromium.new_context()
    context.grant_permissions(["clipboard-read", "clipboard-write"])
    page = context.new_page()
    page.goto((folder / "weigh.html").as_uri())
    page.get_by_role("button", name="Copy the buyer file").click()
    told = said(page)
    assert told in ("Copied.", "Selected; copy it with the keyboard.")
    if told == "Copied.":
        assert page.evaluate("navigator.clipboard.readText()") == page.locator("#w-copy-yaml").input_value()
    context.close()


def test_a_ready_made_buyer_can_be_taken_up(read, buyers):
    page = opened(read)
    page.get_by_label("Start from").select_option(label=buyers["bay-loop"].name)
    assert "JPY" in page.locator("#w-pick").inner_text()
    assert address(page).endswith(fragment(buyers["bay-loop"]))
    page.get_by_role("button", name="Start again").click()
    assert "EUR" in page.locator("#w-pick").inner_text()


# ---- for everybody


def everything_shown(read: Callable[..., Any], buyers: dict[str, Buyer], **options: Any) -> Any:
    page = opened(read, fragment(buyers["shorter-cranks"], with_private=True), **options)
    page.evaluate("for (const d of document.querySelectorAll('details')) d.open = true")
    return page


@pytest.mark.parametrize(("scheme", "width"), [("light", 1280), ("dark", 390)])
def test_no_rule_of_access_is_broken(read, buyers, scheme, width):
    package = pytest.importorskip("axe_playwright_python", reason="axe-playwright-python is not installed")
    page = everything_shown(read, buyers, width=width, color_scheme=scheme)
    # all of it at once, so that nothing sticks over anything else
    page.set_viewport_size(
        {"width": width, "height": page.evaluate("document.documentElement.scrollHeight") + 400}
    )
    page.evaluate((files(package) / "axe.min.js").read_text("utf-8"))
    tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
    found = page.evaluate("(tags) => axe.run({runOnly: {type: 'tag', values: tags}})", tags)
    assert [(v["id"], [n["html"][:200] for n in v["nodes"][:3]]) for v in found["violations"]] == []


@pytest.mark.parametrize("width", [320, 390, 760, 1024, 1280, 2000])
def test_the_page_never_scrolls_sideways(read, buyers, width):
    page = everything_shown(read, buyers, width=width)
    assert page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0


@pytest.mark.parametrize("width", [390, 1280])
def test_what_is_pressed_is_large_enough(read, buyers, width):
    page = everything_shown(read, buyers, width=width)
    small = page.evaluate(
        """() => [...document.querySelectorAll("button, input, select, summary, textarea, .w-tick, .w-now")]
        .filter((e) => e.checkVisibility() && !e.matches(".w-tick input"))
        .filter((e) => { const b = e.getBoundingClientRect(); return b.height < 24 || b.width < 24; })
        .map((e) => e.id || e.className)"""
    )
    assert small == []


@pytest.mark.parametrize("width", [320, 390])
def test_what_has_the_focus_is_not_hidden_by_what_sticks(read, buyers, width):
    page = everything_shown(read, buyers, width=width)
    room = "parseFloat(getComputedStyle(document.documentElement).scrollPaddingBottom)"
    assert page.evaluate(f"document.getElementById('w-now').offsetHeight <= {room}")
    page.locator("#w-region").focus()
    covered = """() => { const e = document.activeElement.getBoundingClientRect();
      const bar = document.getElementById("w-now").getBoundingClientRect();
      return e.bottom > bar.top && e.top < bar.bottom; }"""
    for _ in range(25):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.id === 'w-now'"):
            break
        assert not page.evaluate(covered)
        assert page.evaluate("document.activeElement.matches(':focus-visible')")


def test_nothing_moves_by_itself(read, buyers):
    page = everything_shown(read, buyers)
    moving = """() => [document.documentElement, ...document.querySelectorAll("body, body *")].filter((e) => {
      const style = getComputedStyle(e);
      return style.transitionDuration !== "0s" || style.animationName !== "none" ||
        style.scrollBehavior !== "auto";
    }).map((e) => e.outerHTML.slice(0, 100))"""
    assert page.evaluate(moving) == []


def test_the_way_down_to_the_results_leaves_the_question_in_the_address(read, buyers):
    page = opened(read, fragment(buyers["club-racer"]), width=390)
    before = address(page)
    page.locator("#w-now").click()
    assert address(page) == before
    assert page.evaluate("document.activeElement.id") == "w-results"
    assert page.evaluate("document.getElementById('w-results').getBoundingClientRect().top < 100")


def test_pictures_stand_in_the_colours_that_a_reader_forces(read, buyers):
    page = opened(read, fragment(buyers["club-racer"]), forced_colors="active")
    colours = """() => { const probe = document.body.appendChild(document.createElement("span"));
      probe.style.cssText = "forced-color-adjust:none;color:CanvasText;background-color:Canvas";
      const { color, backgroundColor } = getComputedStyle(probe);
      const fill = (part) => getComputedStyle(document.querySelector(part)).fill;
      const parts = [".p-text", ".p-row", ".p-solid", ".p-on-solid", ".p-room"];
      return [color, backgroundColor, ...parts.map(fill)]; }"""
    ink, ground, *fills = page.evaluate(colours)
    assert ink != ground
    assert fills == [ink, ink, ink, ground, ground]


def test_on_paper_stands_the_answer_not_the_form(read):
    page = opened(read)
    page.emulate_media(media="print")
    assert not page.locator("#w-form").is_visible()
    assert not page.locator("#w-take").is_visible()
    assert page.locator("#w-table").is_visible()


def test_nothing_is_asked_of_the_network_and_nothing_goes_wrong(read, buyers):
    page = everything_shown(read, buyers)
    page.evaluate(
        "window.broken = []; addEventListener('securitypolicyviolation', (e) => broken.push(e.blockedURI))"
    )
    for field in page.locator(".w-points").all():
        field.fill("11")
    page.get_by_label("Region").select_option("JP")
    assert page.evaluate("broken") == []
    assert page.reader.said == []
    assert [url for url in page.reader.requests if not url.startswith(("file://", "data:"))] == []
    # the policy is in force: what it does not know by its hash does not run
    page.evaluate(
        "const s = document.createElement('script'); s.textContent = 'ran = 1'; document.body.append(s)"
    )
    assert page.evaluate("window.ran") is None
    assert page.evaluate("broken.length") == 1


def test_fifty_products_are_drawn_in_place(read, tmp_path):
    """How long that takes, `make bench` says; here, that a slider leaves standing what it does not move."""
    (tmp_path / "weigh.html").write_bytes(page_of(50))
    assert (tmp_path / "weigh.html").stat().st_size < 2**20
    page = read().page
    page.goto((tmp_path / "weigh.html").as_uri())
    assert page.locator("#w-table tbody tr").count() == 50
    seen = page.evaluate(
        """() => {
          const table = document.getElementById("w-table"), kept = new Set(table.querySelectorAll("*"));
          const slide = document.querySelector(".w-slide"), watch = new MutationObserver(() => {});
          watch.observe(table, { childList: true, subtree: true, characterData: true });
          slide.value = Number(slide.value) + 1;
          slide.dispatchEvent(new Event("input", { bubbles: true }));
          const told = watch.takeRecords(), rows = new Set(table.querySelectorAll("tbody tr"));
          return { fresh: [...table.querySelectorAll("*")].filter((e) => !kept.has(e)).length,
            inside: told.filter((m) => m.type === "childList" && !m.target.matches("tbody")).length,
            texts: told.filter((m) => m.type === "characterData").length, rows: rows.size };
        }"""
    )
    assert seen["rows"] == 50
    # the rows that no screen shows at once are there too
    assert settled(page).locator("#w-table tbody tr:visible").count() == 50
    assert seen["texts"] > 50
    assert (seen["fresh"], seen["inside"]) == (0, 0)


def test_the_data_cannot_end_its_element(desk):
    text = json_for_script(weigh_export(desk))
    assert "<" not in text
    assert json.loads(text) == json.loads(json.dumps(weigh_export(desk)))
