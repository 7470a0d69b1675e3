"""The leg model's answer to a swap, from what the buyer states of body and bike."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from spindlewise.buyer.buyer import Bike, Buyer
from spindlewise.fit.leg import Contact, OutOfReach, Rider
from spindlewise.fit.leg_change import LegChange, leg_change
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.proportions import segments
from spindlewise.fit.saddle import SaddleChange, Side

TYPICAL_SOLE_MM = 8.0
"""Stands in for a sole that nobody measured but that stays. Design choice, no source; wide plus-minus."""
TYPICAL_CLEAT_MM = 5.5
"""Likewise for a cleat that stays: cleats add 5 to 6 mm (common practice, no source)."""
TYPICAL_PITCH_DEG = 20.0
"""Toe-down pitch where the buyer states none. Design choice, no source; given a wide plus-minus."""
AXIS_BEFORE_ANKLE_SHARE = 0.5
"""The pedal axis lies about half a foot length before the ankle. Design choice, no source."""
SADDLE_TIP_TO_SEAT_MM = 150.0
"""From the saddle's tip back to where the rider sits. Design choice, no source; given a wide plus-minus."""


@dataclass(frozen=True, slots=True)
class LegAnswer:
    """The leg model's answer, or why there is none.

    `given` holds, by input, the plus-minus that was counted with; `assumed` names what stood in because the
    buyer did not state it.
    """

    change: LegChange | None
    because: str
    given: tuple[tuple[str, float], ...] = ()
    assumed: tuple[str, ...] = ()


def leg_answer(
    saddle: SaddleChange | MissingFigures,
    sides: tuple[Side, Side],
    buyer: Buyer | None,
) -> LegAnswer:
    """The leg model's change, or the sentence that says what it lacks."""
    if isinstance(saddle, MissingFigures):
        return LegAnswer(None, "it needs the figures that common practice lacks too")
    lacking = _lacking(buyer)
    if buyer is None or lacking:
        return LegAnswer(None, f"it needs {', '.join(lacking)}")
    rider, contacts = _rider(buyer), _contacts(buyer, sides)
    spread = {**_plus_minus(buyer), "new.axis_to_foot_mm": saddle.plus_minus_mm}
    try:
        change = leg_change(rider, *contacts, spread)
    except OutOfReach as error:
        return LegAnswer(None, f"the figures stated do not fit a leg on this bike: {error}")
    return LegAnswer(change, "", tuple(spread.items()), tuple(_assumed(buyer)))


def _lacking(buyer: Buyer | None) -> list[str]:
    if buyer is None:
        return ["a buyer file with body and bike"]
    body, bike = buyer.body, buyer.bike
    lacking = []
    if isinstance(body.height_mm, str) and (isinstance(body.thigh_mm, str) or isinstance(body.shank_mm, str)):
        lacking.append("body height, or thigh and shank")
    for name, stated in (
        ("crank length", bike.crank_mm),
        ("saddle height", bike.saddle_height_mm),
        ("seat-tube angle", bike.seat_tube_deg),
    ):
        if isinstance(stated, str):
            lacking.append(name)
    return lacking


def _height_mm(buyer: Buyer) -> float:
    body = buyer.body
    if not isinstance(body.height_mm, str):
        return body.height_mm
    # thigh and shank together are 0.491 of body height (Drillis and Contini 1966)
    return (_or(body.thigh_mm, 0.0) + _or(body.shank_mm, 0.0)) / 0.491


def _or(stated: float | str, instead: float) -> float:
    return instead if isinstance(stated, str) else stated


def _rider(buyer: Buyer) -> Rider:
    body, bike = buyer.body, buyer.bike
    estimated = segments(_height_mm(buyer))
    down = _or(body.foot_pitch_bottom_deg, TYPICAL_PITCH_DEG)
    return Rider(
        thigh_mm=_or(body.thigh_mm, estimated.thigh_mm),
        shank_mm=_or(body.shank_mm, estimated.shank_mm),
        ankle_height_mm=estimated.ankle_height_mm,
        saddle_height_mm=_or(bike.saddle_height_mm, 0.0),
        seat_tube_angle_deg=_or(bike.seat_tube_deg, 0.0),
        pitch_up_deg=_or(body.foot_pitch_top_deg, down),
        pitch_down_deg=down,
        setback_mm=_behind_the_seat_tube_mm(bike),
    )


def _behind_the_seat_tube_mm(bike: Bike) -> float:
    """How far the rider sits behind the line of the seat tube: on it where no setback is stated."""
    if isinstance(bike.saddle_setback_mm, str):
        return 0.0
    line = _or(bike.saddle_height_mm, 0.0) * math.cos(math.radians(_or(bike.seat_tube_deg, 90.0)))
    return bike.saddle_setback_mm + SADDLE_TIP_TO_SEAT_MM - line


def _contacts(buyer: Buyer, sides: tuple[Side, Side]) -> tuple[Contact, Contact]:
    foot_mm = segments(_height_mm(buyer)).foot_length_mm
    before = _or(buyer.shoes.axis_before_ankle_mm, AXIS_BEFORE_ANKLE_SHARE * foot_mm)
    after = _or(buyer.shoes.new_axis_before_ankle_mm, before)
    old, new = sides
    return _contact(old, before), _contact(new, after)


def _contact(side: Side, axis_before_ankle_mm: float) -> Contact:
    stack = side.stack.value_mm if side.stack else 0.0
    cleat = side.cleat_mm if side.cleat_mm is not None else TYPICAL_CLEAT_MM
    to_sole = stack if side.stack and side.stack.basis == "axis to sole" else stack + cleat
    sole = side.sole_mm if side.sole_mm is not None else TYPICAL_SOLE_MM
    return Contact(to_sole + sole, side.crank_mm or 0.0, axis_before_ankle_mm)


def _plus_minus(buyer: Buyer) -> dict[str, float]:
    """How far each input may be off, wide where it is not stated. Design choices, no source."""
    bike, body, shoes = buyer.bike, buyer.body, buyer.shoes
    return {
        "rider.saddle_height_mm": 5.0,
        "rider.seat_tube_angle_deg": 0.5,
        "rider.setback_mm": 40.0 if isinstance(bike.saddle_setback_mm, str) else 20.0,
        "rider.hip_above_saddle_mm": 20.0,
        "rider.ankle_height_mm": 10.0,
        "rider.pitch_down_deg": 10.0 if isinstance(body.foot_pitch_bottom_deg, str) else 3.0,
        "rider.pitch_up_deg": 10.0 if isinstance(body.foot_pitch_top_deg, str) else 3.0,
        "both.ankle_to_cleat_mm": 15.0 if isinstance(shoes.axis_before_ankle_mm, str) else 5.0,
        "both.axis_to_foot_mm": 5.0,
    }


def _assumed(buyer: Buyer) -> Iterable[str]:
    body, shoes = buyer.body, buyer.shoes
    if isinstance(body.thigh_mm, str) or isinstance(body.shank_mm, str):
        yield "thigh and shank by the usual shares of body height"
    if isinstance(body.foot_pitch_bottom_deg, str):
        yield f"a foot {TYPICAL_PITCH_DEG:g} degrees toe-down"
    if isinstance(buyer.bike.saddle_setback_mm, str):
        yield "a seat in line with the seat tube"
    if isinstance(shoes.axis_before_ankle_mm, str):
        yield "a cleat half a foot length before the ankle"
