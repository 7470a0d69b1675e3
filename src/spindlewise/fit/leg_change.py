"""How far the saddle moves so that the leg's longest reach stays as it was, and how sure that is."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from typing import TypeVar

from spindlewise.fit.leg import (
    Contact,
    OutOfReach,
    Rider,
    knee_flexion_deg,
    longest_reach_mm,
    shortest_reach_mm,
)

Part = TypeVar("Part", Rider, Contact)


@dataclass(frozen=True, slots=True)
class LegChange:
    """The leg model's answer to one swap.

    `saddle_mm` is along the seat tube, positive is up. Knee flexion is 0 for a straight leg: `straightest` at
    the longest reach, `most_bent` at the shortest, over the top. `unmoved` means that the pedals are swapped
    and the saddle stays: None where the leg would then not reach round. `after` means saddle moved.
    `effects_mm` is what each uncertain figure, moved by its plus-minus, does to `saddle_mm`, by name.
    """

    saddle_mm: float
    plus_minus_mm: float
    straightest_before_deg: float
    straightest_unmoved_deg: float | None
    most_bent_before_deg: float
    most_bent_unmoved_deg: float | None
    most_bent_after_deg: float
    shortest_reach_change_mm: float
    effects_mm: tuple[tuple[str, float], ...]


def leg_change(
    rider: Rider, old: Contact, new: Contact, plus_minus: Mapping[str, float] | None = None
) -> LegChange:
    """The saddle change that restores the longest distance from hip to ankle after the swap, and its error.

    `plus_minus` gives uncertain inputs by name: `rider.saddle_height_mm`, `new.axis_to_foot_mm` and so
    on; `both.axis_to_foot_mm` moves old and new together (a sole that nobody measured, but that stays).
    Each is moved up and down by its plus-minus (finite difference), half the difference is its effect, and
    effects add in quadrature. Thigh and shank bend the knee, but move no saddle: their effect is nil.

    Raises OutOfReach where the leg cannot turn the crank before the swap or after it, and ValueError for a
    plus-minus that is negative, of no known figure, or beyond what a bike or foot can be.

    >>> level = Rider(430, 430, 70, 660, 90, 0, 0)
    >>> round(leg_change(level, Contact(15, 170, 130), Contact(19, 170, 130)).saddle_mm, 6)
    4.0
    """
    spread = dict(sorted((plus_minus or {}).items()))
    _refuse_bad_spread(spread)
    saddle = saddle_change_mm(rider, old, new)
    before = (longest_reach_mm(rider, old), shortest_reach_mm(rider, old))
    unmoved = (longest_reach_mm(rider, new), shortest_reach_mm(rider, new))
    after = shortest_reach_mm(rider, new, saddle)
    effects = tuple((name, _effect_mm(rider, old, new, name, amount)) for name, amount in spread.items())
    return LegChange(
        saddle_mm=saddle,
        plus_minus_mm=math.hypot(*(effect for _, effect in effects)),
        straightest_before_deg=knee_flexion_deg(rider, before[0]),
        straightest_unmoved_deg=_flexion_or_none(rider, unmoved[0]),
        most_bent_before_deg=knee_flexion_deg(rider, before[1]),
        most_bent_unmoved_deg=_flexion_or_none(rider, unmoved[1]),
        most_bent_after_deg=knee_flexion_deg(rider, after),
        shortest_reach_change_mm=after - before[1],
        effects_mm=effects,
    )


def saddle_change_mm(rider: Rider, old: Contact, new: Contact) -> float:
    """The move along the seat tube that gives `new` the longest reach that `old` had; positive is up.

    Asks nothing of the leg's own length. Raises OutOfReach where not even a move by the saddle's
    whole height does.
    """
    from scipy.optimize import brentq

    target = longest_reach_mm(rider, old)

    def too_long_mm(raised_mm: float) -> float:
        return longest_reach_mm(rider, new, raised_mm) - target

    here = too_long_mm(0.0)
    if here == 0:
        return 0.0
    most = rider.saddle_height_mm
    far = -2 * here
    while abs(far) < most and too_long_mm(far) * here > 0:
        far *= 2
    if abs(far) >= most:
        far = math.copysign(most, far)
        if too_long_mm(far) * here > 0:
            raise OutOfReach(
                f"not even a move of {most:.0f} mm along the seat tube gives back the longest reach of "
                f"{target:.1f} mm"
            )
    return float(brentq(too_long_mm, 0.0, far, xtol=1e-9))


def _flexion_or_none(rider: Rider, reach_mm: float) -> float | None:
    try:
        return knee_flexion_deg(rider, reach_mm)
    except OutOfReach:
        return None


def _effect_mm(rider: Rider, old: Contact, new: Contact, name: str, amount: float) -> float:
    whose, figure = name.split(".")

    def moved_by(change: float) -> float:
        return saddle_change_mm(
            _with(rider, figure, change) if whose == "rider" else rider,
            _with(old, figure, change) if whose in ("old", "both") else old,
            _with(new, figure, change) if whose in ("new", "both") else new,
        )

    return (moved_by(amount) - moved_by(-amount)) / 2


def _with(part: Part, figure: str, change: float) -> Part:
    return replace(part, **{figure: getattr(part, figure) + change})


def _refuse_bad_spread(spread: Mapping[str, float]) -> None:
    known = {f"rider.{field.name}" for field in fields(Rider)}
    known |= {f"{whose}.{field.name}" for field in fields(Contact) for whose in ("old", "new", "both")}
    for name, amount in spread.items():
        if name not in known:
            raise ValueError(
                f"no figure of the leg model is called {name}; known are {', '.join(sorted(known))}"
            )
        if not (math.isfinite(amount) and amount >= 0):
            raise ValueError(f"the plus-minus of {name} is {amount}; it must be zero or more and finite")
