"""A ride looked at more closely: without script its parts, with it any stretch, by hand or by key."""

import re

import pytest

pytestmark = pytest.mark.browser

RIDE = "bench/rides/2025-10-18-three-meters.html"


def seconds(page):
    """From which second to which the picture reaches, as it is said."""
    found = re.findall(r"(\d+):(\d\d):(\d\d)", page.inner_text("#closer [role=status]"))
    return [3600 * int(h) + 60 * int(m) + int(s) for h, m, s in found[:2]]


def cells(page):
    rows = page.query_selector_all("#closer tbody tr")
    return {
        row.query_selector("th").inner_text(): [cell.inner_text() for cell in row.query_selector_all("td")]
        for row in rows
    }


def test_without_script_the_whole_ride_and_its_parts_are_there(read):
    page = read(java_script_enabled=False).open(RIDE)
    assert page.is_hidden("#closer")
    assert page.is_visible("#picture-overlay svg")
    page.click("summary:has-text('Climb at')")
    assert page.is_visible("details[open] figure svg")


def test_a_part_that_is_chosen_is_drawn_by_itself_with_its_averages(read):
    reader = read()
    page = reader.open(RIDE)
    assert seconds(page) == [0, 2400]
    page.select_option("#closer-part", label="climb, 0:10:20")
    assert seconds(page) == [620, 1041]
    found = cells(page)
    assert list(found) == ["pedals", "spider", "hub"]
    assert 255 < int(found["spider"][0].split()[0]) < 268
    assert int(found["hub"][0].split()[0]) < int(found["pedals"][0].split()[0])
    assert reader.said == []


def test_every_step_can_be_taken_with_the_keyboard(read):
    page = read().open(RIDE)
    page.focus("#closer button:has-text('Closer')")
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    assert seconds(page) == [900, 1500]
    page.focus("#closer button:has-text('Later')")
    page.keyboard.press("Enter")
    assert seconds(page) == [1200, 1800]
    page.focus("#closer button:has-text('Wider')")
    page.keyboard.press("Enter")
    assert seconds(page) == [900, 2100]
    page.focus("#closer button:has-text('Whole ride')")
    page.keyboard.press("Enter")
    assert seconds(page) == [0, 2400]
    assert page.is_disabled("#closer button:has-text('Wider')")


def test_nobody_gets_closer_than_can_be_seen_or_past_the_ends(read):
    page = read().open(RIDE)
    for _ in range(9):
        page.evaluate("document.querySelectorAll('#closer button')[1].click()")
    low, high = seconds(page)
    assert high - low == 20
    for _ in range(200):
        page.evaluate("document.querySelectorAll('#closer button')[4].click()")
    assert seconds(page)[1] == 2400
    assert page.is_disabled("#closer button:has-text('Later')")


def test_a_stretch_is_chosen_by_drawing_across_it(read):
    page = read().open(RIDE)
    page.locator(".closer-sheet").scroll_into_view_if_needed()
    box = page.locator(".closer-sheet svg").bounding_box()
    y = box["y"] + box["height"] / 2
    inner = box["width"] - 64
    page.mouse.move(box["x"] + 52 + inner * 0.25, y)
    page.mouse.down()
    page.mouse.move(box["x"] + 52 + inner * 0.5, y, steps=4)
    assert page.locator(".closer-chosen").bounding_box()["width"] > 0.2 * inner
    page.mouse.up()
    low, high = seconds(page)
    assert abs(low - 600) <= 5
    assert abs(high - 1200) <= 5


def test_the_picture_is_as_wide_as_the_reader_s_window(read):
    page = read(390).open(RIDE)
    assert page.evaluate("document.querySelector('.closer-sheet svg').viewBox.baseVal.width") < 390
    page.set_viewport_size({"width": 900, "height": 900})
    page.wait_for_function("document.querySelector('.closer-sheet svg').viewBox.baseVal.width > 600")
    words = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    assert page.evaluate(words) <= 0


def test_a_lost_second_is_a_gap_in_the_line(read):
    page = read().open(RIDE)
    page.evaluate("document.querySelectorAll('#closer button')[0].focus()")
    # the pedals write nothing for five seconds from 0:18:50 on
    page.select_option("#closer-part", label="steady, 0:18:30")
    path = page.get_attribute(".closer-sheet path", "d")
    assert path.count("M") == 2


def test_on_paper_only_the_drawn_pictures_stay(read):
    page = read().open(RIDE)
    page.emulate_media(media="print")
    assert page.is_hidden("#closer")
    assert page.is_visible("#picture-overlay svg")
