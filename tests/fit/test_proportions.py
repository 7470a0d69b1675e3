"""Segment lengths from body height."""

from __future__ import annotations

import math

import pytest

from spindlewise.fit.proportions import segments


def test_heights_are_the_sums_of_the_segments_below_them() -> None:
    lengths = segments(1750.0)
    assert lengths.ankle_height_mm + lengths.shank_mm == pytest.approx(lengths.knee_height_mm)
    assert lengths.knee_height_mm + lengths.thigh_mm == pytest.approx(lengths.hip_height_mm)
    assert lengths.foot_length_mm == pytest.approx(266.0)


def test_a_body_of_any_height_has_the_same_shares() -> None:
    assert segments(1.0).thigh_mm * 1750 == pytest.approx(segments(1750.0).thigh_mm)


@pytest.mark.parametrize("height_mm", [0.0, -1.0, math.inf, math.nan])
def test_a_height_that_is_none_is_refused(height_mm: float) -> None:
    with pytest.raises(ValueError, match="must be positive"):
        segments(height_mm)
