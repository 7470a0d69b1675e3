"""The leg on the bike as a planar linkage from hip to pedal; sagittal plane, x forward, y up, in mm.

A model: the hip does not rock, the ankle follows the given foot pitch, and the shoe does not give. It says
what keeps the longest reach of the leg as it was; it knows no best saddle height and no best angle.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, fields

import numpy as np
import numpy.typing as npt

Angles = npt.NDArray[np.float64]

HIP_ABOVE_SADDLE_MM = 80.0
"""Design choice, no source: the hip joint's height above the saddle's top. Give it a plus-minus."""

_STARTS_DEG = np.arange(0.0, 360.0, 5.0)


class OutOfReach(ValueError):  # noqa: N818  a fact about the leg, not a fault
    """The leg is too short, or too long, for this bike: no knee angle joins hip and pedal."""


@dataclass(frozen=True, slots=True)
class Rider:
    """One rider's leg on one bike; all that a swap leaves alone.

    `ankle_height_mm` is the ankle joint above the foot's underside. `saddle_height_mm` runs along the seat
    tube from the crank axle, `setback_mm` is its extra distance behind that line. Pitch is the foot's
    angle to the ground, toe-down positive, with the crank up and with the crank down; a cosine in between.
    Raises ValueError for lengths that are not positive and angles no bike or foot has.
    """

    thigh_mm: float
    shank_mm: float
    ankle_height_mm: float
    saddle_height_mm: float
    seat_tube_angle_deg: float
    pitch_up_deg: float
    pitch_down_deg: float
    setback_mm: float = 0.0
    hip_above_saddle_mm: float = HIP_ABOVE_SADDLE_MM

    def __post_init__(self) -> None:
        _refuse_if_not_finite(self)
        for name in ("thigh_mm", "shank_mm", "saddle_height_mm"):
            if getattr(self, name) <= 0:
                raise ValueError(f"{name} is {getattr(self, name)}; it must be more than zero")
        if not 45 <= self.seat_tube_angle_deg <= 100:
            raise ValueError(
                f"the seat tube stands at {self.seat_tube_angle_deg} degrees; 45 to 100 is possible"
            )
        for pitch in (self.pitch_up_deg, self.pitch_down_deg):
            if abs(pitch) >= 90:
                raise ValueError(f"a foot pitch of {pitch} degrees was given; toe-down is positive, below 90")


@dataclass(frozen=True, slots=True)
class Contact:
    """Where the foot meets the crank; what a swap changes.

    `axis_to_foot_mm` is stack, cleat and sole together, normal to the sole. `ankle_to_cleat_mm` is how far,
    along the sole, the pedal axis lies before the ankle joint. Raises ValueError for figures that are none.
    """

    axis_to_foot_mm: float
    crank_mm: float
    ankle_to_cleat_mm: float

    def __post_init__(self) -> None:
        _refuse_if_not_finite(self)
        if self.crank_mm < 0:
            raise ValueError(f"crank_mm is {self.crank_mm}; it must be zero or more")


def _refuse_if_not_finite(given: Rider | Contact) -> None:
    for field in fields(given):
        if not math.isfinite(getattr(given, field.name)):
            raise ValueError(f"{field.name} is {getattr(given, field.name)}; it must be finite")


def hip_to_ankle_mm(rider: Rider, contact: Contact, crank_deg: Angles, raised_mm: float = 0.0) -> Angles:
    """Distance from hip to ankle at each crank angle (0 is up, forwards positive), the saddle raised so far.

    >>> upright = Rider(430, 430, 70, 700, 90, 0, 0, hip_above_saddle_mm=80)
    >>> float(hip_to_ankle_mm(upright, Contact(15, 170, 0), np.array([180.0]))[0])
    865.0
    """
    crank = np.radians(crank_deg)
    mean = (rider.pitch_up_deg + rider.pitch_down_deg) / 2
    pitch = np.radians(mean + (rider.pitch_up_deg - rider.pitch_down_deg) / 2 * np.cos(crank))
    over_axis = contact.axis_to_foot_mm + rider.ankle_height_mm
    behind = contact.ankle_to_cleat_mm
    ankle_x = contact.crank_mm * np.sin(crank) + over_axis * np.sin(pitch) - behind * np.cos(pitch)
    ankle_y = contact.crank_mm * np.cos(crank) + over_axis * np.cos(pitch) + behind * np.sin(pitch)
    tube = math.radians(rider.seat_tube_angle_deg)
    height = rider.saddle_height_mm + raised_mm
    hip_x = -height * math.cos(tube) - rider.setback_mm
    hip_y = height * math.sin(tube) + rider.hip_above_saddle_mm
    distance: Angles = np.hypot(ankle_x - hip_x, ankle_y - hip_y)
    return distance


def _hip_to_ankle_at(rider: Rider, contact: Contact, raised_mm: float) -> Callable[[float], float]:
    """`hip_to_ankle_mm` for one crank angle at a time, ten times faster than an array of one."""
    mean = math.radians((rider.pitch_up_deg + rider.pitch_down_deg) / 2)
    swing = math.radians((rider.pitch_up_deg - rider.pitch_down_deg) / 2)
    over_axis = contact.axis_to_foot_mm + rider.ankle_height_mm
    behind, crank_mm = contact.ankle_to_cleat_mm, contact.crank_mm
    tube = math.radians(rider.seat_tube_angle_deg)
    height = rider.saddle_height_mm + raised_mm
    hip_x = -height * math.cos(tube) - rider.setback_mm
    hip_y = height * math.sin(tube) + rider.hip_above_saddle_mm

    def at_mm(crank_deg: float) -> float:
        crank = math.radians(crank_deg)
        up = math.cos(crank)
        pitch = mean + swing * up
        down, along = math.cos(pitch), math.sin(pitch)
        ankle_x = crank_mm * math.sin(crank) + over_axis * along - behind * down
        return math.hypot(ankle_x - hip_x, crank_mm * up + over_axis * down + behind * along - hip_y)

    return at_mm


def longest_reach_mm(rider: Rider, contact: Contact, raised_mm: float = 0.0) -> float:
    """The largest distance from hip to ankle in one turn of the crank."""
    return -_least(rider, contact, raised_mm, sign=-1.0)


def shortest_reach_mm(rider: Rider, contact: Contact, raised_mm: float = 0.0) -> float:
    """The smallest distance from hip to ankle in one turn of the crank."""
    return _least(rider, contact, raised_mm, sign=1.0)


def _least(rider: Rider, contact: Contact, raised_mm: float, sign: float) -> float:
    """The least of sign times distance: the best of a coarse turn, then refined between its neighbours."""
    from scipy.optimize import minimize_scalar

    at_mm = _hip_to_ankle_at(rider, contact, raised_mm)

    def signed_mm(crank_deg: float) -> float:
        return sign * at_mm(crank_deg)

    coarse = sign * hip_to_ankle_mm(rider, contact, _STARTS_DEG, raised_mm)
    start = float(_STARTS_DEG[int(np.argmin(coarse))])
    found = minimize_scalar(
        signed_mm, bounds=(start - 5.0, start + 5.0), method="bounded", options={"xatol": 1e-7}
    )
    return min(float(found.fun), float(coarse.min()))


def knee_flexion_deg(rider: Rider, reach_mm: float) -> float:
    """How far the knee is bent at this distance from hip to ankle; 0 is a straight leg (law of cosines).

    Raises OutOfReach where thigh and shank cannot span the distance.

    >>> round(knee_flexion_deg(Rider(300, 400, 70, 700, 73, 0, 0), 500.0), 6)
    90.0
    """
    thigh, shank = rider.thigh_mm, rider.shank_mm
    if reach_mm > thigh + shank:
        raise OutOfReach(
            f"the ankle gets {reach_mm:.1f} mm away from the hip, yet thigh and shank are "
            f"{thigh + shank:.1f} mm long"
        )
    if reach_mm < abs(thigh - shank):
        raise OutOfReach(
            f"the ankle comes within {reach_mm:.1f} mm of the hip, yet thigh and shank fold to "
            f"{abs(thigh - shank):.1f} mm at best"
        )
    inner = (thigh * thigh + shank * shank - reach_mm * reach_mm) / (2 * thigh * shank)
    return 180 - math.degrees(math.acos(max(-1.0, min(1.0, inner))))
