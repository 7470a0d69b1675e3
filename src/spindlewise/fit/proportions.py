"""How long a rider's segments are likely to be, where only the body height is known."""

from __future__ import annotations

import math
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

SHARE_OF_BODY_HEIGHT: Final = MappingProxyType(
    {
        "thigh": 0.245,
        "shank": 0.246,
        "ankle height": 0.039,
        "knee height": 0.285,
        "hip height": 0.530,
        "foot length": 0.152,
        "shoulder height": 0.818,
    }
)
"""Drillis and Contini, 1966, Body Segment Parameters, as printed by Winter, Biomechanics and Motor Control of
Human Movement, figure 4.1 (seen in transcriptions): averages, from which one rider differs by centimetres."""


@dataclass(frozen=True, slots=True)
class Segments:
    """A rider's estimated lengths in mm; ankle, knee and hip are heights above the ground, barefoot."""

    thigh_mm: float
    shank_mm: float
    ankle_height_mm: float
    knee_height_mm: float
    hip_height_mm: float
    foot_length_mm: float


def segments(body_height_mm: float) -> Segments:
    """Segment lengths as fixed shares of body height (Drillis and Contini, 1966).

    Raises ValueError for a height that is not a positive, finite number of mm.

    >>> round(segments(1750.0).thigh_mm, 2)
    428.75
    """
    if not (math.isfinite(body_height_mm) and body_height_mm > 0):
        raise ValueError(f"a body height of {body_height_mm} mm was given; it must be positive, as in 1750")
    names = ("thigh", "shank", "ankle height", "knee height", "hip height", "foot length")
    return Segments(*(SHARE_OF_BODY_HEIGHT[name] * body_height_mm for name in names))
