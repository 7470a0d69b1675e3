"""Lines break between figures, never within one."""

import html
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spindlewise.site.unbroken import whole


def pieces(text: str) -> list[str]:
    return re.findall(r'<span class="whole">(.*?)</span>', str(whole(text)))


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("an offer until 2026-11-23.", ["2026-11-23"]),
        ("EUR 1,028.90 (street price)", ["EUR 1,028.90"]),
        ("each further gram costs EUR 8.87.", ["EUR 8.87"]),
        ("down 5.0 mm, give or take 0.7 mm", ["5.0 mm", "0.7 mm"]),
        ("left -3.1 mm, right −3.1 mm", ["-3.1 mm", "−3.1 mm"]),
        ("a bias of +1.3 % ± 0.8 %", ["+1.3 %", "0.8 %"]),
        ("38 N m, claimed", ["38 N m"]),
        ("between 48 and 56 h (3 runs)", ["56 h"]),
        ("20 seconds in 3 goes", []),
        ("serial numbers YK-26-0400 to YK-26-2950", ["YK-26-0400", "YK-26-2950"]),
        ("8 channels; 2 hours", []),
    ],
)
def test_a_figure_stays_with_its_unit(text: str, kept: list[str]) -> None:
    assert pieces(text) == kept


def test_what_is_markup_is_shown_as_text() -> None:
    assert str(whole("<i>5 g</i>")) == '&lt;i&gt;<span class="whole">5 g</span>&lt;/i&gt;'


def test_an_escaped_sign_is_not_taken_for_a_figure() -> None:
    assert str(whole("'39 g'")) == '&#39;<span class="whole">39 g</span>&#39;'


@given(st.text(alphabet="0123456789-+.,% ghmsWk<>&'\"EUR", max_size=60))
def test_the_reader_reads_the_same_text(text: str) -> None:
    shown = str(whole(text))

    assert html.unescape(re.sub(r'<span class="whole">|</span>', "", shown)) == text
