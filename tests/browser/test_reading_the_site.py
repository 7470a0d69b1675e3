"""The site as a reader meets it: from the disk, at any width, with and without script, asking nobody."""

import pytest

from browser.page_kinds import PAGES

pytestmark = pytest.mark.browser

SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.mark.parametrize("width", [320, 390, 768, 1024, 1280, 2000])
def test_no_page_scrolls_sideways(read, width):
    reader = read(width)
    for name in PAGES:
        assert reader.open(name).evaluate(SIDEWAYS) <= 0, name


def test_nothing_is_asked_of_the_network_and_nothing_goes_wrong(read):
    reader = read()
    for name in PAGES:
        reader.open(name)
    assert reader.said == []
    assert len(reader.requests) >= len(PAGES)
    assert [url for url in reader.requests if not url.startswith(("file://", "data:"))] == []


def test_links_and_buttons_are_large_enough_to_hit(read):
    """WCAG 2.2, 2.5.8: 24 by 24 CSS pixels, links within a sentence apart."""
    for width in (390, 1280):
        page = read(width).open("index.html")
        small = page.evaluate(
            """() => [...document.querySelectorAll("button, nav a, .mark, .tabs a")]
            .filter((e) => { const b = e.getBoundingClientRect(); return b.height < 24 || b.width < 24; })
            .map((e) => e.textContent)"""
        )
        assert small == []


def test_focus_can_be_seen(read):
    page = read().open("index.html")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    assert page.evaluate("document.activeElement.getBoundingClientRect().left") >= 0
    page.keyboard.press("Tab")
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"


def test_motion_is_still_where_the_reader_wants_it_so(read):
    behaviour = "getComputedStyle(document.documentElement).scrollBehavior"
    assert read(reduced_motion="reduce").open("index.html").evaluate(behaviour) == "auto"


def test_dark_is_dark(read):
    ground = "getComputedStyle(document.body).backgroundColor"
    light = read(color_scheme="light").open("index.html").evaluate(ground)
    dark = read(color_scheme="dark").open("index.html").evaluate(ground)
    assert light != dark


def test_on_paper_the_way_about_is_left_out(read):
    page = read(color_scheme="dark").open("index.html")
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("getComputedStyle(document.querySelector('.nav')).display") == "none"
    assert (
        page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--ground')") == "#f7f6f2"
    )


@pytest.mark.parametrize("across_px", [718, 740])
def test_on_paper_no_column_and_no_picture_lies_beyond_the_sheet(read, across_px):
    """A4 and Letter with margins of 10 mm, at 96 pixels an inch: paper cannot be moved aside."""
    reader = read(across_px)
    beyond = (
        "[...document.querySelectorAll('.scroll')].filter((e) => e.scrollWidth > e.clientWidth + 1).length"
    )
    for name in PAGES:
        page = reader.open(name)
        page.emulate_media(media="print")
        assert page.evaluate(SIDEWAYS) <= 0, name
        assert page.evaluate(beyond) == 0, name
        page.emulate_media(media="screen")
