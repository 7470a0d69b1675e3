"""Two products side by side, and what would make another first: the same in the browser as in Python."""

import json
from random import Random
from types import SimpleNamespace

import numpy as np
import pytest

from browser.weigh.random_worlds import random_catalog, random_question
from browser.weigh.reader import address, opened, said, settled
from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import rank
from spindlewise.answer.versus import versus
from spindlewise.decide.smallest_change import nearest_shares, smallest_change
from spindlewise.fit.saddle import SaddleChange
from spindlewise.render.fragment import fragment
from spindlewise.render.naming import naming
from spindlewise.render.words_outlook import change_words
from spindlewise.render.words_versus import _cost_sentences, verdict_words
from spindlewise.render.words_why import not_known_words
from spindlewise.site.export import weigh_export

pytestmark = pytest.mark.browser

COMPARED = """([text, fragment, pairs]) => {
  const data = text ? JSON.parse(text) : WeighPage.data, asked = WeighQuestion.read(data, fragment).asked;
  const found = WeighRanking.rank(data, asked);
  return pairs.map((pair) => {
    const rows = WeighVersus.chosen({ ...asked, pair }, found);
    const seen = WeighVersus.compare(data, asked, found, rows), { saddle } = seen.swap;
    return {
      names: rows.map((row) => row.id), level: seen.level, unknown: seen.unknown,
      verdict: WeighVersusPart.verdict(seen),
      costs: WeighVersusPart.costs(seen, found.market), total: seen.against.total,
      parts: seen.against.parts.map((part) => [part.criterion, part.points]),
      saddle: saddle.missing ? null : saddle.change,
    };
  });
}"""
CHANGES = """([text, fragment]) => {
  const data = text ? JSON.parse(text) : WeighPage.data, asked = WeighQuestion.read(data, fragment).asked;
  const found = WeighRanking.rank(data, asked), { every, smallest } = WeighWeightChange.changes(found);
  return {
    every: Object.fromEntries([...every].map(([id, change]) => [id, change && change.shares])),
    smallest: smallest && smallest.row.id, words: WeighTurnsPart.smallestWords(found, smallest),
  };
}"""


def assert_compared(seen, desk, buyer, one, other):
    """Words and money to the letter, but for what is not known in detail; sums to a billionth."""
    found, names = versus(desk, buyer, one, other), naming(desk.catalog)
    where = (one, other, fragment(buyer))
    assert seen["names"] == [one, other], where
    assert seen["level"] == found.level, where
    assert seen["costs"] == _cost_sentences(found, names), where
    assert seen["total"] == pytest.approx(found.against.total, abs=2e-9), where
    assert dict(seen["parts"]) == pytest.approx(
        {p.criterion: p.points for p in found.against.parts}, abs=2e-9
    ), where
    assert seen["unknown"] is bool(found.level_only_by), where
    in_detail = f" {not_known_words(found.level_only_by, names)}" if found.level_only_by else ""
    assert seen["verdict"] == verdict_words(found, names).replace(in_detail, "", 1), where
    saddle = found.swap.saddle
    change = saddle.change_mm if isinstance(saddle, SaddleChange) else None
    assert seen["saddle"] == (change if change is None else pytest.approx(change, abs=1e-9)), where
    return found


def test_any_two_of_the_demo_compare_as_in_python(plain_page, desk, catalog, buyers):
    draw = Random("pairs")
    ids = list(catalog.products)
    kinds = set()
    for name in ("club-racer", "prairie-gravel", "long-keeper", "bay-loop"):
        asked = buyers[name].model_copy(
            update={
                "receivers": tuple(
                    r.model_copy(update={"name": "your receiver"}) for r in buyers[name].receivers
                )
            }
        )
        pairs = [draw.sample(ids, 2) for _ in range(40)]
        told = plain_page.evaluate(COMPARED, ["", fragment(asked, with_private=True), pairs])
        for pair, seen in zip(pairs, told, strict=True):
            found = assert_compared(seen, desk, asked, *pair)
            kinds.add(found.level)
            kinds |= {c.draws_level_at and c.draws_level_at.outcome for c in (found.first, found.second)}
    assert len(kinds) >= 4


def test_pairs_of_random_catalogs_compare_as_in_python(plain_page):
    draw = Random("random pairs")
    for _ in range(15):
        catalog = random_catalog(draw)
        desk = Desk(catalog)
        buyer = random_question(draw, catalog)
        ids = list(catalog.products)
        pairs = [draw.sample(ids, 2) for _ in range(6)]
        told = plain_page.evaluate(
            COMPARED, [json.dumps(weigh_export(desk)), fragment(buyer, with_private=True), pairs]
        )
        for pair, seen in zip(pairs, told, strict=True):
            assert_compared(seen, desk, buyer, *pair)


def assert_changes(seen, ranking):
    """Every nearest weighting by Python's projection, and the smallest of all."""
    if not ranking.placed or ranking.pick is None:
        return 0
    table, shares = ranking.table, np.asarray(ranking.weighed.shares) / np.sum(ranking.weighed.shares)
    first = table.products.index(ranking.placed[0].product)
    checked = 0
    for product, found in seen["every"].items():
        if found is None:
            continue
        row = table.products.index(product)
        wanted = nearest_shares(shares, table.expected[row] - table.expected[first])
        assert found == pytest.approx(wanted.tolist(), abs=1e-9), product
        checked += 1
    change = smallest_change(table, shares, ranking.held_back)
    assert seen["smallest"] == (change.product if change else None)
    return checked


def test_weights_that_would_turn_the_order_are_those_of_python(plain_page, desk, buyers):
    checked = 0
    for buyer in buyers.values():
        ranking = rank(desk, buyer)
        if not ranking.placed:
            continue
        seen = plain_page.evaluate(CHANGES, ["", fragment(buyer, with_private=True)])
        checked += assert_changes(seen, ranking)
    assert checked > 40


def test_the_smallest_change_reads_as_in_python(plain_page, desk, buyers):
    for name in ("club-racer", "prairie-gravel"):
        ranking = rank(desk, buyers[name])
        change = smallest_change(ranking.table, ranking.weighed.shares, ranking.held_back)
        words = change_words(change, SimpleNamespace(ranking=ranking), naming(desk.catalog))
        seen = plain_page.evaluate(CHANGES, ["", fragment(buyers[name], with_private=True)])
        assert seen["words"] == words


def test_random_catalogs_turn_as_in_python(plain_page):
    draw = Random("turns")
    checked = 0
    for _ in range(30):
        catalog = random_catalog(draw)
        desk = Desk(catalog)
        buyer = random_question(draw, catalog)
        ranking = rank(desk, buyer)
        if not ranking.placed:
            continue
        seen = plain_page.evaluate(
            CHANGES, [json.dumps(weigh_export(desk)), fragment(buyer, with_private=True)]
        )
        checked += assert_changes(seen, ranking)
    assert checked > 20


def test_two_are_chosen_stay_in_the_link_and_are_said(read, buyers):
    page = opened(read, fragment(buyers["club-racer"], with_private=True))
    box = page.locator("#w-versus-seen")
    best = page.evaluate("WeighPage.found().order.slice(0, 2).map((r) => r.product.name)")
    assert all(name in box.text_content() for name in best)
    page.get_by_label("The other").select_option(label="Yttervane Koldrane")
    assert "held back by a safety notice" in settled(page).locator("#w-versus-seen").text_content()
    assert address(page).endswith("&pair=,yttervane-koldrane&mass=82&left=47-49")
    assert said(page).count("Yttervane Koldrane") > 0
    page.get_by_label("One pedal").select_option(label="Osmeryd Avessin")
    assert "Needs that are not met" in settled(page).locator("#w-versus-seen").text_content()
    link = page.locator("#w-copy-link").input_value()
    again = opened(read, "#" + link.split("#")[1])
    assert again.get_by_label("One pedal").evaluate("(e) => e.selectedOptions[0].text") == "Osmeryd Avessin"
    assert again.locator("#w-versus-seen").text_content() == box.text_content()
    page.go_back()
    assert settled(page).get_by_label("One pedal").input_value() == ""


def test_the_link_of_the_command_line_opens_its_two(read, buyers):
    pair = ("brellowick-ferrowen-2", "tarnquell-liskar-duo")
    link = fragment(buyers["club-racer"], pair=pair)
    page = opened(read, link)
    assert page.evaluate("WeighPage.asked().pair") == list(pair)
    assert page.locator("#w-copy-link").input_value().endswith(link)


def test_one_chosen_twice_is_not_compared_with_itself(read):
    page = opened(read)
    page.get_by_label("One pedal").select_option(label="Osmeryd Avessin")
    page.get_by_label("The other").select_option(label="Osmeryd Avessin")
    assert settled(page).locator("#w-versus-seen").text_content() == "Choose two different pedals."
    assert "pair=" not in address(page)


@pytest.mark.parametrize("pair", ["osmeryd-avessin", "osmeryd-avessin,osmeryd-avessin", "<b>,", "a,b,c", ","])
def test_a_pair_that_a_link_may_not_say_is_left_out(read, pair):
    page = opened(read, f"#v=1&region=EU&points=price:1&pair={pair}")
    assert page.locator("#w-link-note").is_visible()
    assert page.evaluate("WeighPage.asked().pair.join()") == ","
