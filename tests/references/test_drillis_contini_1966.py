"""Drillis and Contini, 1966, Body Segment Parameters, as printed by Winter, figure 4.1 (transcriptions seen).

The knee table is computed from these shares with the law of cosines; no paper with degrees per mm was found.
"""

from __future__ import annotations

import math

import pytest

from spindlewise.fit.leg import Rider, knee_flexion_deg
from spindlewise.fit.proportions import SHARE_OF_BODY_HEIGHT, segments

KNEE = [
    (1600, 25, 766.9782, -0.67393),
    (1600, 30, 758.8314, -0.56358),
    (1600, 35, 749.2402, -0.48508),
    (1700, 25, 814.9144, -0.63429),
    (1700, 30, 806.2584, -0.53043),
    (1700, 35, 796.0677, -0.45654),
    (1750, 25, 838.8824, -0.61617),
    (1750, 30, 829.9719, -0.51527),
    (1750, 35, 819.4815, -0.44350),
    (1800, 25, 862.8505, -0.59905),
    (1800, 30, 853.6854, -0.50096),
    (1800, 35, 842.8952, -0.43118),
    (1900, 25, 910.7866, -0.56752),
    (1900, 30, 901.1123, -0.47460),
    (1900, 35, 889.7227, -0.40849),
]


def rider(body_height_mm: float) -> Rider:
    lengths = segments(body_height_mm)
    return Rider(lengths.thigh_mm, lengths.shank_mm, lengths.ankle_height_mm, 700.0, 73.0, 0.0, 0.0)


def test_the_printed_shares() -> None:
    printed = {
        "thigh": 0.245,
        "shank": 0.246,
        "ankle height": 0.039,
        "knee height": 0.285,
        "hip height": 0.530,
    }
    assert printed.items() <= dict(SHARE_OF_BODY_HEIGHT).items()
    assert SHARE_OF_BODY_HEIGHT["foot length"] == 0.152
    assert SHARE_OF_BODY_HEIGHT["shoulder height"] == 0.818


@pytest.mark.parametrize(("height_mm", "flexion_deg", "reach_mm", "deg_per_mm"), KNEE)
def test_knee_angle_and_its_change_per_millimetre(
    height_mm: int, flexion_deg: int, reach_mm: float, deg_per_mm: float
) -> None:
    leg = rider(height_mm)
    assert knee_flexion_deg(leg, reach_mm) == pytest.approx(flexion_deg, abs=1e-3)
    slope = (knee_flexion_deg(leg, reach_mm + 0.01) - knee_flexion_deg(leg, reach_mm - 0.01)) / 0.02
    assert slope == pytest.approx(deg_per_mm, abs=2e-5)


def test_the_knee_closes_less_when_lowered_than_it_opens_when_raised() -> None:
    leg = rider(1750.0)
    thigh, shank = leg.thigh_mm, leg.shank_mm
    at_30 = math.sqrt(thigh**2 + shank**2 + 2 * thigh * shank * math.cos(math.radians(30)))
    turned = [knee_flexion_deg(leg, at_30 + by) - 30 for by in (-10, -5, -2, 2, 5, 10)]
    assert turned == pytest.approx([4.7818, 2.4767, 1.0138, -1.0485, -2.6949, -5.6804], abs=1e-4)
