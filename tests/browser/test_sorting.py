"""Sorting a table: by button, announced, unknown last both ways, and right without script."""

import pytest

pytestmark = pytest.mark.browser

KEYS = (
    "(column) => [...document.querySelectorAll('.sortable tbody tr')].map((r) => r.cells[column].dataset.key)"
)
PLACE, PRICE, WEIGHT = 0, 3, 4


def press(page, title):
    page.get_by_role("button", name=title).click()


def numbers(keys):
    return [float(key) for key in keys if key]


def test_by_price_up_and_down(read):
    page = read().open("index.html")
    press(page, "Price, EUR")
    assert numbers(page.evaluate(KEYS, PRICE)) == sorted(numbers(page.evaluate(KEYS, PRICE)))
    head = page.get_by_role("columnheader", name="Price, EUR").first
    assert head.get_attribute("aria-sort") == "ascending"
    press(page, "Price, EUR")
    assert numbers(page.evaluate(KEYS, PRICE)) == sorted(numbers(page.evaluate(KEYS, PRICE)), reverse=True)
    assert head.get_attribute("aria-sort") == "descending"
    assert page.locator("[aria-sort]").count() == 1


def test_what_is_unknown_stands_last_both_ways_and_is_announced(read):
    page = read().open("index.html")
    for way in ("ascending", "descending"):
        press(page, "Weight of the pair")
        keys = page.evaluate(KEYS, WEIGHT)
        unknown = keys.count("")
        assert unknown > 0
        assert keys[-unknown:] == [""] * unknown
        said = page.get_by_role("status").text_content()
        assert said == f"Sorted by Weight of the pair, {way}; {unknown} unknown, last."


def test_back_to_the_order_of_the_ranking(read):
    page = read().open("buyers/club-racer.html")
    before = page.evaluate(KEYS, PLACE)
    press(page, "Pedal")
    assert page.evaluate(KEYS, PLACE) != before
    press(page, "Place")
    assert page.evaluate(KEYS, PLACE) == before == [str(n) for n in range(1, len(before) + 1)]


def test_the_keyboard_sorts_too(read):
    page = read().open("index.html")
    page.get_by_role("button", name="Warranty").focus()
    page.keyboard.press("Enter")
    assert page.get_by_role("columnheader", name="Warranty").get_attribute("aria-sort") == "descending"


def test_on_a_narrow_screen_the_table_is_still_a_table_and_sorts(read):
    page = read(390).open("index.html")
    assert page.get_by_role("table").first.get_by_role("row").count() > 10
    press(page, "Score")
    assert page.get_by_role("columnheader", name="Score").get_attribute("aria-sort") == "descending"


def test_without_script_the_order_is_right_and_no_dead_button_is_there(read):
    page = read(java_script_enabled=False).open("index.html")
    assert page.get_by_role("button").count() == 0
    assert page.locator("th[aria-sort=ascending]").text_content() == "Place"
