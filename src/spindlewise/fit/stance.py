"""How much wider or narrower the feet stand after a swap, and what a washer takes from the thread."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from spindlewise.fit.missing import MissingFigure, MissingFigures

Foot = Literal["left", "right"]

PEDAL_THREAD_PITCH_MM = 25.4 / 20
"""One turn of a 9/16 in x 20 pedal thread (trade standard, from pedal thread tables)."""


@dataclass(frozen=True, slots=True)
class Pedals:
    """A pair of pedals on the bike: how far each foot stands out from its crank.

    The offset is from the crank's face to the centre of the pedal (its cleat), as the maker builds it;
    washers between crank and pedal come on top. None means unknown. `thread_mm` is the length of the pedal's
    thread. The Q-factor is not in here: it belongs to the cranks and stays on the bike.
    """

    product: str
    left_offset_mm: float | None
    right_offset_mm: float | None
    left_washers_mm: float = 0.0
    right_washers_mm: float = 0.0
    thread_mm: float | None = None
    offset_plus_minus_mm: float = 0.0

    def __post_init__(self) -> None:
        figures = {
            "left washers": self.left_washers_mm,
            "right washers": self.right_washers_mm,
            "thread": self.thread_mm,
            "plus-minus": self.offset_plus_minus_mm,
        }
        for name, value in figures.items():
            if value is not None and not (math.isfinite(value) and value >= 0):
                raise ValueError(f"{self.product}: {name} is {value} mm; it must be zero or more and finite")
        for name, offset in (("left", self.left_offset_mm), ("right", self.right_offset_mm)):
            if offset is not None and not math.isfinite(offset):
                raise ValueError(f"{self.product}: the {name} offset is {offset} mm; it must be finite")


@dataclass(frozen=True, slots=True)
class StanceChange:
    """By how much each foot and both together move outwards (positive) or inwards."""

    width_mm: float
    left_mm: float
    right_mm: float
    plus_minus_mm: float


@dataclass(frozen=True, slots=True)
class WasherCaution:
    """A washer holds the pedal off the crank by its own thickness, and that much thread no longer engages.

    `thread_left_mm` is None where the thread's length is unknown, and never less than zero.
    There is no "enough": how much must engage is the maker's to say.
    """

    foot: Foot
    washers_mm: float
    turns_lost: float
    thread_mm: float | None
    thread_left_mm: float | None


def stance_change(old: Pedals, new: Pedals) -> StanceChange | MissingFigures:
    """The change of stance width: the sum of what changes at each side; the Q-factor cancels.

    Washers count with the pedals they sit on. Plus-minuses add in quadrature; where old and new are one
    product, its offset cancels, known or not. MissingFigures where a changed pedal's offset is unknown.

    >>> stance_change(Pedals("plain", 53.0, 53.0), Pedals("wide", 55.0, 54.5, left_washers_mm=1.0)).width_mm
    4.5
    """
    same = old.product == new.product
    missing = tuple(
        MissingFigure(pedals.product, f"{foot} offset", "the pedal is changed")
        for pedals in (old, new)
        for foot, offset in (("left", pedals.left_offset_mm), ("right", pedals.right_offset_mm))
        if offset is None and not same
    )
    if missing:
        return MissingFigures(missing)
    left = new.left_washers_mm - old.left_washers_mm
    right = new.right_washers_mm - old.right_washers_mm
    if same:
        return StanceChange(left + right, left, right, 0.0)
    left += (new.left_offset_mm or 0.0) - (old.left_offset_mm or 0.0)
    right += (new.right_offset_mm or 0.0) - (old.right_offset_mm or 0.0)
    spread = math.hypot(*2 * (old.offset_plus_minus_mm, new.offset_plus_minus_mm))
    return StanceChange(left + right, left, right, spread)


def stance_width_mm(q_factor_mm: float, pedals: Pedals) -> float | None:
    """From foot centre to foot centre: the Q-factor, each side's offset and its washers; None if unknown.

    >>> stance_width_mm(146.0, Pedals("plain", 53.0, 53.0, left_washers_mm=1.0))
    253.0
    """
    if pedals.left_offset_mm is None or pedals.right_offset_mm is None:
        return None
    offsets = pedals.left_offset_mm + pedals.right_offset_mm
    return q_factor_mm + offsets + pedals.left_washers_mm + pedals.right_washers_mm


def washer_cautions(pedals: Pedals) -> tuple[WasherCaution, ...]:
    """For each side with washers, the thread they take: in mm, in turns, and what is left; left side first.

    >>> (caution,) = washer_cautions(Pedals("plain", 53.0, 53.0, right_washers_mm=1.27, thread_mm=12.0))
    >>> caution.foot, caution.turns_lost, round(caution.thread_left_mm, 2)
    ('right', 1.0, 10.73)
    """
    sides: tuple[tuple[Foot, float], ...] = (
        ("left", pedals.left_washers_mm),
        ("right", pedals.right_washers_mm),
    )
    return tuple(
        WasherCaution(
            foot=foot,
            washers_mm=washers,
            turns_lost=washers / PEDAL_THREAD_PITCH_MM,
            thread_mm=pedals.thread_mm,
            thread_left_mm=None if pedals.thread_mm is None else max(0.0, pedals.thread_mm - washers),
        )
        for foot, washers in sides
        if washers > 0
    )
