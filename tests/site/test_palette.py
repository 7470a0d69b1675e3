"""Contrast after WCAG 2.2 (relative luminance), with the figures of the standard's own formula."""

import pytest

from spindlewise.site.palette import (
    DARK,
    GRAPHIC_CONTRAST,
    GRAPHIC_PAIRS,
    LIGHT,
    TEXT_CONTRAST,
    TEXT_PAIRS,
    contrast,
    custom_properties,
)

ON_WHITE = {
    "#000000": 21.0,
    "#ffffff": 1.0,
    "#767676": 4.542224959605253,
    "#777777": 4.478089453577214,
    "#595959": 7.004729208035935,
    "#949494": 3.0334698257384747,
    "#959595": 2.9953461357088114,
    "#808080": 3.9494396480491156,
    "#ff0000": 3.9984767707539985,
    "#0000ff": 8.592471358428805,
    "#00ff00": 1.3721902770517513,
    "#ffff00": 1.0738392309265699,
}


@pytest.mark.parametrize(("colour", "ratio"), ON_WHITE.items())
def test_contrast_on_white_is_that_of_the_standard(colour, ratio):
    assert contrast(colour, "#ffffff") == pytest.approx(ratio, abs=1e-9)
    assert contrast("#ffffff", colour) == contrast(colour, "#ffffff")


@pytest.mark.parametrize("scheme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(("text", "ground"), TEXT_PAIRS)
def test_text_can_be_read(scheme, text, ground):
    assert contrast(scheme[text], scheme[ground]) >= TEXT_CONTRAST


@pytest.mark.parametrize("scheme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(("mark", "ground"), GRAPHIC_PAIRS)
def test_marks_can_be_seen(scheme, mark, ground):
    assert contrast(scheme[mark], scheme[ground]) >= GRAPHIC_CONTRAST


def test_text_on_the_accent_can_be_read():
    for scheme in (LIGHT, DARK):
        assert contrast(scheme["sheet"], scheme["accent"]) >= TEXT_CONTRAST


def test_both_schemes_have_the_same_colours_and_the_style_uses_no_other():
    from spindlewise.site.templating import assets

    assert list(LIGHT) == list(DARK)
    used = {part.split(")")[0] for part in assets().style.split("var(--")[1:]}
    assert used == set(LIGHT)
    assert custom_properties().count("--ink:") == 3
