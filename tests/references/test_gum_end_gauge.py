"""JCGM 100:2008 (GUM), example H.1, end-gauge calibration (from memory).

Components 25, 9.7, 2.9 and 16.6 nm with 18, 25.6, 50 and 2 degrees of freedom: combined 32 nm, effective
degrees of freedom 16.7, and 93 nm expanded at 99 % with 16 of them.
"""

import pytest

from spindlewise.bench.estimate import t_quantile
from spindlewise.bench.weighing import Component, Weighing, WeightBasis

COMPONENTS = (
    Component("standard", "B", 25.0, 18.0),
    Component("difference", "A", 9.7, 25.6),
    Component("expansion", "B", 2.9, 50.0),
    Component("temperature", "B", 16.6, 2.0),
)


def test_combined_uncertainty_and_effective_degrees_of_freedom() -> None:
    found = Weighing(0.0, WeightBasis("pair", "in", "off"), "comparator", 5, COMPONENTS, "t", ())
    assert found.combined_g == pytest.approx(32.0, abs=0.5)
    assert found.degrees_of_freedom == pytest.approx(16.7, abs=0.5)  # the GUM takes the rounded 32


def test_expanded_uncertainty() -> None:
    assert t_quantile(0.99, 16.0) == pytest.approx(2.92, abs=0.005)
    assert t_quantile(0.99, 16.0) * 32.0 == pytest.approx(93.0, abs=0.5)
