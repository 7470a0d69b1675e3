from datetime import date

import pytest

from spindlewise.answer.standing import Standing
from spindlewise.site.shown import plus_minus_text, shown, signed_text, spread_text


def standing(value, low=None, high=None, unit="g", origin="measured", source="bench"):
    return Standing("weight", value, low, high, unit, origin, date(2026, 1, 2) if value else None, source)


def test_a_known_figure_with_an_even_plus_minus():
    found = shown(standing(346.0, 345.0, 347.0))
    assert (found.text, found.spread, found.origin, found.key) == ("346 g", "± 1 g", "measured", 346.0)
    assert found.source == "bench, 2026-01-02"
    assert found.is_known


@pytest.mark.parametrize("origin", ["unknown", "none", "not applicable"])
def test_three_kinds_of_no_figure_stay_apart(origin):
    found = shown(standing(None, origin=origin))
    assert (found.text, found.key, found.is_known) == (origin, None, False)


def test_words_have_no_number_to_sort_by():
    assert shown(standing("power and balance", unit="", origin="worked out")).key is None


def test_an_uneven_interval_is_told_by_its_ends():
    assert spread_text(standing(5.4, 1.7, 6.8, unit="%")) == "from 1.7 to 6.8 %"
    assert spread_text(standing(5.4)) == ""
    assert spread_text(standing(5.0, 5.0, 5.0)) == ""


def test_a_day_that_the_source_names_is_not_told_twice():
    assert shown(standing(3.0, source="weighed on 2026-01-02")).source == "weighed on 2026-01-02"


def test_signs():
    assert signed_text(-1.04, "mm") == "−1.0 mm"
    assert signed_text(4.0, "g") == "+4 g"
    assert signed_text(0.0, "g") == "0 g"
    assert plus_minus_text(2.4, "g") == "± 2.4 g"
