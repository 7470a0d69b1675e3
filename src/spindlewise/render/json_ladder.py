"""The cost-per-gram-saved ladder as JSON."""

from decimal import Decimal

from spindlewise.answer.ladder import Climb
from spindlewise.cost.ladder import LadderStep
from spindlewise.cost.quadrants import Interval
from spindlewise.render.as_json import Json, number
from spindlewise.units import amount_text

SCHEMA = "spindlewise ladder 1"


def ladder_json(climb: Climb) -> dict[str, Json]:
    """The whole ladder without its schema key; the baseline is its first step."""
    return {
        "as_of": climb.day.isoformat(),
        "baseline": climb.baseline,
        "baseline_owned": climb.owned,
        "currency": climb.currency,
        "steps": [_step(step, climb) for step in climb.steps],
        "left_out": [{"product": name, "because": why} for name, why in climb.left_out],
    }


def _step(step: LadderStep, climb: Climb) -> dict[str, Json]:
    weight, money = climb.weights[step.product], climb.currency
    return {
        "product": step.product,
        "status": step.status,
        "quadrant": step.quadrant,
        "saving_g": _interval(step.saving_g),
        "extra_cost": amount_text(step.extra_cost, money),
        "cost_per_gram": _money(step.cost_per_gram, money),
        "saved_per_gram": _money(step.saved_per_gram, money),
        "step_from": step.step_from,
        "step_saving_g": _interval(step.step_saving_g) if step.step_saving_g else None,
        "step_cost_per_gram": _money(step.step_cost_per_gram, money),
        "dominated_by": list(step.dominated_by),
        "weight_g": number(weight.value) if isinstance(weight.value, float) else None,
        "weight_grade": weight.origin,
    }


def _interval(found: Interval) -> dict[str, Json]:
    return {"low": number(found.low), "expected": number(found.expected), "high": number(found.high)}


def _money(amount: Decimal | None, currency: str) -> str | None:
    return None if amount is None else amount_text(amount, currency)
