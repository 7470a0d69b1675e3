"""The swap as JSON."""

from spindlewise.answer.saddle_views import saddle_views
from spindlewise.answer.swap import Swap
from spindlewise.catalog.figure import Absent, Known
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.saddle import SaddleChange
from spindlewise.render.as_json import Json, number

SCHEMA = "spindlewise swap 1"


def swap_json(swap: Swap) -> dict[str, Json]:
    """The whole swap without its schema key; what cannot be said is null, and `missing` says why."""
    stance = swap.stance
    return {
        "as_of": swap.day.isoformat(),
        "old": swap.old.id,
        "new": swap.new.id,
        "saddle_mm": _saddle(swap),
        "stance_mm": None
        if isinstance(stance, MissingFigures)
        else {
            "width": number(stance.width_mm),
            "left": number(stance.left_mm),
            "right": number(stance.right_mm),
            "plus_minus": number(stance.plus_minus_mm),
        },
        "weight_g": _weight(swap),
        "tools": {"off": list(swap.off_tools), "on": list(swap.on_tools)},
        "fitting_torque_nm": _known(swap.torque),
        "missing": _missing(swap),
        "cautions": list(swap.cautions),
    }


def _saddle(swap: Swap) -> Json:
    saddle, leg, views = swap.saddle, swap.leg.change, saddle_views(swap)
    if not isinstance(saddle, SaddleChange):
        return None
    return {
        "practice": number(saddle.change_mm),
        "leg_model": number(leg.saddle_mm) if leg else None,
        "plus_minus": number(saddle.plus_minus_mm),
        "leg_model_plus_minus": number(leg.plus_minus_mm) if leg else None,
        "practice_less_leg_model": number(views.apart_mm) if views else None,
        "leg_model_missing": swap.leg.because or None,
        "parts": {
            "stack": number(saddle.stack_mm),
            "cleat": number(saddle.cleat_mm),
            "sole": number(saddle.sole_mm),
            "crank": number(saddle.crank_mm),
        },
        "basis": saddle.basis,
        "converted": list(saddle.converted),
        "steps": [number(step) for step in swap.plan.steps_mm] if swap.plan else [],
        "confirm_first": bool(swap.plan and swap.plan.confirm_first),
        "up": number(swap.travel.up_mm) if swap.travel else None,
        "back": number(swap.travel.back_mm) if swap.travel else None,
    }


def _weight(swap: Swap) -> Json:
    weight = swap.weight
    if weight is None:
        return None
    return {
        "low": number(weight.low_g),
        "expected": number(weight.expected_g),
        "high": number(weight.high_g),
        "old_grade": weight.old.grade,
        "new_grade": weight.new.grade,
    }


def _known(found: Known | Absent) -> dict[str, Json]:
    if isinstance(found, Known):
        return {"value": number(found.value), "grade": found.grade}
    return {"value": None, "grade": found.kind}


def _missing(swap: Swap) -> list[Json]:
    lacks: list[Json] = [
        {"product": lack.product, "figure": lack.figure, "because": lack.because}
        for part in (swap.saddle, swap.stance)
        if isinstance(part, MissingFigures)
        for lack in part.missing
    ]
    if swap.weight_missing:
        lacks.append({"product": None, "figure": "weight", "because": swap.weight_missing})
    return lacks
