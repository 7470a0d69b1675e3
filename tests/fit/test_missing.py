"""A missing figure says whose it is and why it is needed."""

from __future__ import annotations

from spindlewise.fit.missing import MissingFigure, MissingFigures


def test_missing_figures_are_values_that_compare() -> None:
    one = MissingFigure("tall", "stack", "the pedal is changed")
    assert MissingFigures((one,)) == MissingFigures((MissingFigure("tall", "stack", "the pedal is changed"),))
    assert MissingFigures((one,)).missing[0].product == "tall"
