"""The leg model's answer to a swap, from what the buyer states of body and bike."""

from spindlewise.buyer.buyer import Buyer
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
ANKLE_TO_CLEAT_SHARE = 0.5
"""The pedal axis lies about half a foot length before the ankle. Design choice, no source."""


def leg_answer(
    saddle: SaddleChange | MissingFigures,
    sides: tuple[Side, Side],
    buyer: Buyer | None,
) -> LegChange | str:
    """The leg model's change, or the sentence that says what it lacks."""
    if isinstance(saddle, MissingFigures):
        return "needs the figures that common practice lacks too"
    lacking = _lacking(buyer)
    if buyer is None or lacking:
        return f"needs {', '.join(lacking)}"
    rider, spread = _rider(buyer)
    foot_mm = segments(_height(buyer)).foot_length_mm * ANKLE_TO_CLEAT_SHARE
    old, new = (_contact(side, foot_mm) for side in sides)
    spread["both.axis_to_foot_mm"] = 5.0
    spread["new.axis_to_foot_mm"] = saddle.plus_minus_mm
    try:
        return leg_change(rider, old, new, spread)
    except OutOfReach as error:
        return f"the figures stated do not fit a leg on this bike: {error}"


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


def _height(buyer: Buyer) -> float:
    body = buyer.body
    if not isinstance(body.height_mm, str):
        return body.height_mm
    # thigh and shank together are 0.491 of body height (Drillis and Contini 1966)
    return (_number(body.thigh_mm) + _number(body.shank_mm)) / 0.491


def _number(stated: float | str) -> float:
    return 0.0 if isinstance(stated, str) else stated


def _rider(buyer: Buyer) -> tuple[Rider, dict[str, float]]:
    body, bike = buyer.body, buyer.bike
    estimated = segments(_height(buyer))
    thigh = estimated.thigh_mm if isinstance(body.thigh_mm, str) else body.thigh_mm
    shank = estimated.shank_mm if isinstance(body.shank_mm, str) else body.shank_mm
    stated_pitch = not isinstance(body.foot_pitch_bottom_deg, str)
    down = (
        body.foot_pitch_bottom_deg if not isinstance(body.foot_pitch_bottom_deg, str) else TYPICAL_PITCH_DEG
    )
    up = body.foot_pitch_top_deg if not isinstance(body.foot_pitch_top_deg, str) else down
    rider = Rider(
        thigh_mm=thigh,
        shank_mm=shank,
        ankle_height_mm=estimated.ankle_height_mm,
        saddle_height_mm=_number(bike.saddle_height_mm),
        seat_tube_angle_deg=_number(bike.seat_tube_deg),
        pitch_up_deg=up,
        pitch_down_deg=down,
        setback_mm=_number(bike.saddle_setback_mm),
    )
    spread = {
        "rider.saddle_height_mm": 5.0,
        "rider.pitch_down_deg": 3.0 if stated_pitch else 10.0,
        "rider.hip_above_saddle_mm": 20.0,
    }
    return rider, spread


def _contact(side: Side, foot_mm: float) -> Contact:
    stack = side.stack.value_mm if side.stack else 0.0
    cleat = side.cleat_mm if side.cleat_mm is not None else TYPICAL_CLEAT_MM
    to_sole = stack if side.stack and side.stack.basis == "axis to sole" else stack + cleat
    sole = side.sole_mm if side.sole_mm is not None else TYPICAL_SOLE_MM
    return Contact(to_sole + sole, side.crank_mm or 0.0, foot_mm)
