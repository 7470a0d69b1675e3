"""What weight costs on a climb: seconds, and watts, by the road power model of Martin et al., 1998."""

from __future__ import annotations

import math
from dataclasses import dataclass, fields


@dataclass(frozen=True, slots=True)
class Road:
    """What resists besides gravity; the model's symbols in brackets.

    Defaults from Martin, Milliken, Cobb, McFadden and Coggan, 1998, J Appl Biomech 14:276-291: rolling (Crr),
    spokes (Fw), air density (rho) and drivetrain (Ec) as seen in a transcription of its worked example; drag
    area (CdA) of that example from memory. A buyer on a climb sits higher and in thinner air: give your own.
    Raises ValueError for figures below zero, and for a drivetrain that loses all or gains.
    """

    drag_area_m2: float = 0.2565
    spoke_drag_area_m2: float = 0.0044
    rolling: float = 0.0032
    air_density_kg_m3: float = 1.2234
    drivetrain_share: float = 0.976
    gravity_m_s2: float = 9.81

    def __post_init__(self) -> None:
        for field in fields(self):
            value = getattr(self, field.name)
            if not (math.isfinite(value) and value >= 0):
                raise ValueError(f"the road's {field.name} is {value}; it must be zero or more and finite")
        if not 0 < self.drivetrain_share <= 1:
            raise ValueError(f"a drivetrain passes on more than 0 and up to 1, not {self.drivetrain_share}")


ROAD = Road()
"""The paper's own road."""


@dataclass(frozen=True, slots=True)
class Climb:
    """A climb at a steady power in still air: length along the road, gradient as rise over run, all mass.

    Raises ValueError for a climb that goes down or has no length, and for no mass or power.
    """

    length_m: float
    gradient: float
    mass_kg: float
    power_w: float

    def __post_init__(self) -> None:
        for name in ("length_m", "mass_kg", "power_w"):
            if not (math.isfinite(getattr(self, name)) and getattr(self, name) > 0):
                raise ValueError(f"a climb's {name} is {getattr(self, name)}; it must be more than zero")
        if not 0 <= self.gradient <= 1:
            raise ValueError(f"a gradient of {self.gradient} was given; a climb has 0 to 1 (8 % is 0.08)")


def power_needed_w(
    speed_m_s: float, gradient: float, mass_kg: float, road: Road = ROAD, wind_m_s: float = 0.0
) -> float:
    """Power at the cranks for a steady speed; a head wind is positive (Martin et al., 1998, no acceleration).

    >>> round(power_needed_w(5.0, 0.08, 85.0), 3)
    375.408
    """
    air = (speed_m_s + wind_m_s) ** 2 * speed_m_s * _drag(road)
    bearings = speed_m_s * (91 + 8.7 * speed_m_s) * 1e-3
    return (air + bearings + speed_m_s * mass_kg * _force_per_kg(gradient, road)) / road.drivetrain_share


def climbing_speed_m_s(climb: Climb, road: Road = ROAD) -> float:
    """The one steady speed at which the power is just enough.

    The power needed rises with speed on any climb, so there is one root; found by Brent's method.
    """
    from scipy.optimize import brentq

    def short_w(speed_m_s: float) -> float:
        return power_needed_w(speed_m_s, climb.gradient, climb.mass_kg, road) - climb.power_w

    fast = 1.0
    while short_w(fast) < 0:
        fast *= 2
    return float(brentq(short_w, 0.0, fast, xtol=1e-13, rtol=1e-14))


def climb_seconds(climb: Climb, road: Road = ROAD) -> float:
    """How long the climb takes at its steady speed."""
    return climb.length_m / climbing_speed_m_s(climb, road)


def seconds_per_gram(climb: Climb, road: Road = ROAD) -> float:
    """Seconds that one gram more costs on this climb, as the derivative of its time by mass.

    >>> alpine = Climb(length_m=10_000, gradient=0.08, mass_kg=80, power_w=250)
    >>> round(seconds_per_gram(alpine), 4)
    0.0314
    """
    speed = climbing_speed_m_s(climb, road)
    force_per_kg = _force_per_kg(climb.gradient, road)
    watts_per_speed = (
        3 * _drag(road) * speed * speed + 2 * 8.7e-3 * speed + 91e-3 + climb.mass_kg * force_per_kg
    )
    return climb.length_m * force_per_kg / (speed * watts_per_speed) / 1000


def extra_power_w(grams: float, speed_m_s: float, gradient: float, road: Road = ROAD) -> float:
    """Power that these grams cost at a speed that is held; less than zero for grams saved.

    >>> round(extra_power_w(100.0, 5.0, 0.08), 3)
    0.417
    """
    return grams / 1000 * speed_m_s * _force_per_kg(gradient, road) / road.drivetrain_share


def _drag(road: Road) -> float:
    return 0.5 * road.air_density_kg_m3 * (road.drag_area_m2 + road.spoke_drag_area_m2)


def _force_per_kg(gradient: float, road: Road) -> float:
    angle = math.atan(gradient)
    return road.gravity_m_s2 * (math.sin(angle) + road.rolling * math.cos(angle))
