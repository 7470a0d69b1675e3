import xml.etree.ElementTree as ET

import pytest

from spindlewise.site.chart_svg import at_home
from spindlewise.site.palette import LIGHT

DRAWN = (
    '<svg xmlns="http://www.w3.org/2000/svg" class="marks" width="40" height="20" viewBox="0 0 40 20">'
    f'<text text-anchor="end" font-family="sans-serif" fill="{LIGHT["ink"]}">ten chars.</text>'
    f'<path d="M1.23456,-0.0004L2,3" stroke="{LIGHT["accent"]}"/><text>1.23456</text></svg>'
)


def home(svg=DRAWN, title="T", description="D"):
    return at_home(svg, "kind", "0" * 32, title, description)


def test_the_page_s_colours_and_fonts_take_over():
    found = home()
    assert 'fill="var(--ink)"' in found
    assert 'stroke="var(--accent)"' in found
    assert "font-family" not in found
    assert "xmlns" not in found


def test_numbers_that_measure_are_short_and_texts_stay():
    found = home()
    assert 'd="M1.23,0L2,3"' in found
    assert "<text>1.23456</text>" in found


def test_there_is_room_beside_for_a_wider_font():
    tree = ET.fromstring(home())
    left, top, width, height = map(int, tree.get("viewBox").split())
    assert (left, top, height) == (-22, 0, 20)
    assert width == 22 + 40 + 17
    assert (tree.get("width"), tree.get("height")) == ("79", "20")


def test_title_and_description_are_named_and_escaped():
    tree = ET.fromstring(home(title="a < b", description='"&"'))
    assert tree.find("title").text == "a < b"
    assert tree.find("desc").text == '"&"'
    assert tree.get("aria-labelledby") == tree.find("title").get("id") == "picture-kind-title"


@pytest.mark.parametrize("svg", ["<html></html>", "not XML", '<svg xmlns="http://www.w3.org/2000/svg"/>'])
def test_a_renderer_that_gives_something_else_is_named(svg):
    with pytest.raises(ValueError, match="the renderer gave no SVG"):
        home(svg)
