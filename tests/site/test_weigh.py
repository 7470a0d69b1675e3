"""The page on which readers weigh for themselves, as bytes."""

import html5lib

import small_answers
import worlds
from spindlewise.site.frame import Frame
from spindlewise.site.pages import gather


def page(buyers=None):
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    return gather(catalog, buyers or {}, worlds.DAY)["weigh.html"]


def test_it_is_valid_html_and_holds_the_export_as_data():
    text = page()

    html5lib.HTMLParser(strict=True).parse(text)
    assert b'"schema":"spindlewise weigh 1"' in text.replace(b'": "', b'":"')
    assert b"<noscript>" in text


def test_ready_buyers_are_links_without_anything_private():
    private = {"needs": {"rider_mass_kg": 87.5}, "riding": {"balance_left_pct": {"low": 46.5, "high": 47.5}}}
    text = page({"tester": worlds.buyer(name="Tester", **private)})

    assert b"Tester" in text
    for secret in (b"87.5", b"46.5", b"47.5"):
        assert secret not in text


def test_the_frame_is_that_of_every_page():
    assert Frame.__doc__
    assert small_answers.desk().catalog.settings.title.encode() is not None
