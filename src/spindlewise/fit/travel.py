"""Where a saddle goes that moves along the seat tube: up, back, and away from the bars."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Travel:
    """A move of the saddle, split by the seat tube's angle; in mm, up and back are positive.

    The bars stay where they are, so what the saddle rises, the drop to the bars grows, and what it goes back,
    the reach to them grows.
    """

    along_tube_mm: float
    up_mm: float
    back_mm: float

    @property
    def drop_to_bars_mm(self) -> float:
        """By how much the bars now lie lower, seen from the saddle."""
        return self.up_mm


def saddle_travel(change_mm: float, seat_tube_angle_deg: float) -> Travel:
    """The move's vertical and horizontal part, for a seat tube at this angle to the ground.

    Raises ValueError for an angle that is not above 0 and up to 90 degrees.

    >>> move = saddle_travel(10.0, 73.0)
    >>> round(move.up_mm, 2), round(move.back_mm, 2)
    (9.56, 2.92)
    """
    if not 0 < seat_tube_angle_deg <= 90:
        raise ValueError(
            f"a seat tube stands at more than 0 and up to 90 degrees, not at {seat_tube_angle_deg}"
        )
    angle = math.radians(seat_tube_angle_deg)
    return Travel(change_mm, change_mm * math.sin(angle), change_mm * math.cos(angle))
