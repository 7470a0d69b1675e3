"""A reply in so many bytes: whole sections give way, what must be said stays."""

import pytest

from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Paragraph, Section
from spindlewise.render.shortened import TooShort, shortened

SECTIONS = (
    Section("pick", (Paragraph("The pick."),), keep=True),
    Section("why", (Paragraph("Because of this. " * 5),)),
    Section("figures", (Paragraph("Figures. " * 30),)),
    Section("disclosure", (Paragraph("Who paid."),), keep=True),
)


def test_what_fits_is_left_whole():
    assert "Figures." in shortened(SECTIONS, as_text, 5000)
    assert "Shortened" not in shortened(SECTIONS, as_text, 5000)


@pytest.mark.parametrize("limit", [300, 200])
def test_the_least_needed_goes_first_and_it_is_said(limit):
    text = shortened(SECTIONS, as_text, limit)

    assert len(text.encode()) <= limit
    assert "Figures." not in text
    assert "Because" in text
    assert text.endswith("Shortened to fit; the whole answer says more.\n")


def test_disclosure_is_never_cut():
    text = shortened(SECTIONS, as_text, 90)

    assert "The pick." in text
    assert "Who paid." in text
    with pytest.raises(TooShort, match="what must be said takes 68") as caught:
        shortened(SECTIONS, as_text, 20)
    assert caught.value.needed == 68
