"""A standing knows whether there is a figure at all."""

import pytest

from spindlewise.answer.standing import Standing


@pytest.mark.parametrize(("value", "known"), [(0.0, True), ("nothing", True), (None, False)])
def test_zero_and_nothing_are_figures_and_none_is_not(value, known):
    assert Standing("detail", value, None, None, "", "worked out", None, "").is_known is known
