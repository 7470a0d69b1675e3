"""How sure the first place is: the browser draws worlds by the laws of Python, within what chance allows."""

import json
from math import sqrt
from random import Random

import pytest

from browser.weigh.random_worlds import random_catalog, random_question
from browser.weigh.reader import opened, settled
from spindlewise.answer.desk import Desk
from spindlewise.answer.outlook import worlds
from spindlewise.answer.ranking import rank
from spindlewise.render.fragment import fragment
from spindlewise.site.export import weigh_export

pytestmark = pytest.mark.browser

DRAWS = 20_000
ERRORS = 4.0
DRAWN = """([text, fragment, draws]) => {
  const data = text ? JSON.parse(text) : WeighPage.data, asked = WeighQuestion.read(data, fragment).asked;
  const found = WeighRanking.rank(data, asked), worlds = WeighWorlds.begin({ data, found }, draws);
  while (worlds.step(1000));
  return Object.fromEntries(worlds.chances());
}"""


def assert_within_chance(browser, ranking, draws, where):
    """Shares of two runs lie within four standard errors of their difference (pooled, never quite nought)."""
    found = worlds(ranking, draws=DRAWS)
    chances = dict(zip(found.products, found.first.tolist(), strict=True))
    free = {placed.product for placed in ranking.placed if not placed.held_back}
    assert set(browser) == free, where
    assert sum(browser.values()) == pytest.approx(1.0 if free else 0.0), where
    for product, share in browser.items():
        pooled = (share * draws + chances[product] * DRAWS + 1) / (draws + DRAWS + 2)
        error = sqrt(pooled * (1 - pooled) * (1 / draws + 1 / DRAWS))
        assert abs(share - chances[product]) <= ERRORS * error, (where, product, share, chances[product])


def test_every_demo_buyer_is_as_sure_as_in_python(plain_page, desk, buyers):
    unsure = 0
    for name, buyer in buyers.items():
        ranking = rank(desk, buyer.model_copy(update={"weights": usually_sure(buyer)}))
        if not ranking.placed:
            continue
        shares = plain_page.evaluate(DRAWN, ["", fragment(buyer, with_private=True), DRAWS])
        assert_within_chance(shares, ranking, DRAWS, name)
        unsure += 0.05 < max(shares.values()) < 0.95
    assert unsure >= 3


def usually_sure(buyer):
    """The weights as stated by somebody who is fairly sure of them, as the page takes every reader to be."""
    return buyer.weights.model_copy(update={"sure": "fairly"})


def test_random_catalogs_are_as_sure_as_in_python(plain_page):
    draw = Random("how sure")
    seen = 0
    for _ in range(12):
        catalog = random_catalog(draw)
        desk = Desk(catalog)
        buyer = random_question(draw, catalog)
        ranking = rank(desk, buyer)
        if not ranking.placed:
            continue
        text = json.dumps(weigh_export(desk))
        shares = plain_page.evaluate(DRAWN, [text, fragment(buyer, with_private=True), DRAWS])
        assert_within_chance(shares, ranking, DRAWS, fragment(buyer))
        seen += len(shares)
    assert seen > 15


def test_the_same_question_has_the_same_worlds(plain_page, buyers):
    asked = ["", fragment(buyers["club-racer"]), 500]
    assert plain_page.evaluate(DRAWN, asked) == plain_page.evaluate(DRAWN, asked)


def test_the_generator_is_even_and_its_runs_are_free_of_each_other(plain_page):
    """Chi-square of 64 equal cells, and of pairs in a row, within four of its standard deviations."""
    cells, pairs = plain_page.evaluate(
        """() => {
          const uniform = WeighWorlds.generator(7);
          const cells = new Array(64).fill(0), pairs = new Array(256).fill(0);
          let before = uniform();
          for (let k = 0; k < 256000; k += 1) {
            const u = uniform();
            cells[Math.floor(u * 64)] += 1;
            pairs[16 * Math.floor(before * 16) + Math.floor(u * 16)] += 1;
            before = u;
          }
          return [cells, pairs];
        }"""
    )
    for counts in (cells, pairs):
        expected = sum(counts) / len(counts)
        chi_square = sum((count - expected) ** 2 / expected for count in counts)
        freedom = len(counts) - 1
        assert abs(chi_square - freedom) < 4 * sqrt(2 * freedom)


def test_the_page_says_how_sure_and_how_well_that_is_known(read, desk, buyers):
    page = opened(read, fragment(buyers["club-racer"], with_private=True))
    told = page.locator("#w-follows section", has=page.locator("#w-worlds-head"))
    sentence = told.locator(".w-sure").text_content()
    pick = page.evaluate("WeighPage.found().pick.product.name")
    assert sentence.startswith(f"{pick} comes first in ")
    assert "worlds" in sentence
    assert "give or take" in sentence
    assert "two standard errors" in told.text_content()
    told.locator("summary").click()
    rows = told.locator("tbody tr")
    rows.first.wait_for()
    assert rows.count() == page.evaluate("WeighPage.found().order.filter((r) => !r.held_back).length")
    # moved, it is drawn anew
    page.get_by_label("Weight", exact=True).fill("90")
    assert settled(page).locator(".w-sure").text_content() != sentence
    assert told.locator("tbody tr").count() > 0
