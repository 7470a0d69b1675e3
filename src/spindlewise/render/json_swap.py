"""The swap as JSON."""

from spindlewise.answer.crank_caution import CrankCaution
from spindlewise.answer.gram_worth import GramWorth
from spindlewise.answer.leg import LegAnswer
from spindlewise.answer.saddle_views import saddle_views
from spindlewise.answer.stance import Stance
from spindlewise.answer.swap import Swap
from spindlewise.answer.swap_asked import SwapAsked
from spindlewise.catalog.figure import Absent, Known
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.saddle import SaddleChange
from spindlewise.render.as_json import Json, number

SCHEMA = "spindlewise swap 1"


def swap_asked_json(found: SwapAsked) -> dict[str, Json]:
    """The swap, the crank length in the head unit, and the seconds on the climb."""
    return {
        **swap_json(found.swap),
        "crank_setting": crank_json(found.crank),
        "climb": climb_json(found.gram_worth),
    }


def swap_json(swap: Swap) -> dict[str, Json]:
    """The whole swap without its schema key; what cannot be said is null, and `missing` says why."""
    return {
        "as_of": swap.day.isoformat(),
        "old": swap.old.id,
        "new": swap.new.id,
        "saddle_mm": _saddle(swap),
        "leg": _leg(swap.leg),
        "stance_mm": _stance(swap.stance),
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
        "steps_because": list(swap.plan.because) if swap.plan else [],
        "confirm_first": bool(swap.plan and swap.plan.confirm_first),
        "along_tube": number(swap.travel.along_tube_mm) if swap.travel else None,
        "up": number(swap.travel.up_mm) if swap.travel else None,
        "back": number(swap.travel.back_mm) if swap.travel else None,
        "drop_to_bars": number(swap.travel.drop_to_bars_mm) if swap.travel else None,
    }


def _leg(leg: LegAnswer) -> Json:
    """The knee before, with the saddle left and with it moved; and what each input's plus-minus does."""
    change = leg.change
    if change is None:
        return None
    given = dict(leg.given)
    return {
        "knee_straightest_deg": {
            "before": number(change.straightest_before_deg),
            "saddle_left": number(change.straightest_unmoved_deg),
            "saddle_moved": number(change.straightest_before_deg),
        },
        "knee_most_bent_deg": {
            "before": number(change.most_bent_before_deg),
            "saddle_left": number(change.most_bent_unmoved_deg),
            "saddle_moved": number(change.most_bent_after_deg),
        },
        "shortest_reach_change_mm": number(change.shortest_reach_change_mm),
        "inputs": [
            {"input": name, "plus_minus": number(given[name]), "effect_mm": number(effect)}
            for name, effect in sorted(change.effects_mm, key=lambda each: (-abs(each[1]), each[0]))
        ],
        "assumed": list(leg.assumed),
    }


def _stance(stance: Stance) -> Json:
    pedals = stance.pedals
    if isinstance(pedals, MissingFigures):
        return None
    return {
        "width": number(pedals.width_mm),
        "left": number(pedals.left_mm),
        "right": number(pedals.right_mm),
        "plus_minus": number(pedals.plus_minus_mm),
        "q_factor": number(stance.q_factor_mm),
        "width_with_q_factor": number(stance.width_mm),
        "washers": [
            {
                "side": found.foot,
                "washers_mm": number(found.washers_mm),
                "thread_turns_lost": number(found.turns_lost),
            }
            for found in stance.washers
        ],
    }


def crank_json(found: CrankCaution | None) -> Json:
    """A crank length set otherwise than ridden, or null."""
    if found is None:
        return None
    error = found.error
    return {
        "set_mm": number(error.set_mm),
        "ridden_mm": number(error.ridden_mm),
        "error_pct": number(error.error_pct),
        "error_w": number(error.error_w),
        "stated": found.stated,
    }


def climb_json(found: GramWorth | str) -> dict[str, Json]:
    """The seconds that the weight is worth on the climb, or what is missing to tell."""
    if not isinstance(found, GramWorth):
        return {"because": f"needs {found}"}
    return {
        "climb_s": number(found.climb_s),
        "change_s": number(found.change_s),
        "change_low_s": number(found.low_s),
        "change_high_s": number(found.high_s),
        "per_gram_s": number(found.per_gram_s),
        "per_hour_s": number(found.per_hour_s),
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
        for part in (swap.saddle, swap.stance.pedals)
        if isinstance(part, MissingFigures)
        for lack in part.missing
    ]
    if swap.weight_missing:
        lacks.append({"product": None, "figure": "weight", "because": swap.weight_missing})
    return lacks
