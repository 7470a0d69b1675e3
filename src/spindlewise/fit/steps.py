"""In how many small moves a change of saddle height is made, and when to check the figures first."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

IN_STEPS_ABOVE_MM = 5.0
"""Design choice, no source: up to here the saddle is moved at once."""

CONFIRM_ABOVE_MM = 15.0
"""Design choice, no source: a saddle that moves further is more likely a wrong figure than a pedal."""

LARGEST_STEP_MM = 2.5
"""Design choice, no source: no single move of a plan is longer."""

SCALE_MM = 0.5
"""What a saddle can be set to by hand; every step but the last is a multiple of it."""

A_METRE_MM = 1000.0
"""Design choice, no source: beyond it a figure is nonsense, not merely to be confirmed."""

Reason = Literal["the change is large", "stack, cleat and crank change together"]


@dataclass(frozen=True, slots=True)
class StepPlan:
    """The moves in riding order, which add up to the change exactly; none for no change, one if it is small.

    Every move but the last is a multiple of 0.5 mm, so that rounding each at the edge (halves away from zero)
    rounds the sum alike. `because` is empty where no plan of several steps is called for.
    """

    steps_mm: tuple[float, ...]
    because: tuple[Reason, ...]
    confirm_first: bool


def step_plan(
    change_mm: float,
    stack_mm: float = 0.0,
    cleat_mm: float = 0.0,
    crank_mm: float = 0.0,
    *,
    other_cleat: bool = False,
) -> StepPlan:
    """Small moves for a change above 5 mm, or where stack, cleat and crank all changed.

    `stack_mm`, `cleat_mm` and `crank_mm` are what each of them adds to the change, as `practice_change` says;
    `other_cleat` says that the cleat changes where it adds nothing of its own: it is as high as the old one,
    or within the stack.
    Above 15 mm, either way, the figures are to be confirmed before anything is moved.
    Raises ValueError where the change is not a number or more than a metre.

    >>> step_plan(6.5)
    StepPlan(steps_mm=(2.5, 2.0, 2.0), because=('the change is large',), confirm_first=False)
    """
    if not abs(change_mm) <= A_METRE_MM:
        raise ValueError(f"the change is {change_mm} mm; a saddle moves by less than a metre")
    because: list[Reason] = []
    size, stack, cleat, crank = (_settled(abs(part)) for part in (change_mm, stack_mm, cleat_mm, crank_mm))
    if size > IN_STEPS_ABOVE_MM:
        because.append("the change is large")
    if stack and (cleat or other_cleat) and crank:
        because.append("stack, cleat and crank change together")
    at_once = (change_mm,) if change_mm else ()
    steps = _even_steps(change_mm) if because else at_once
    return StepPlan(steps, tuple(because), size > CONFIRM_ABOVE_MM)


def _settled(size_mm: float) -> float:
    """A length without what is rounding alone: 15.1 less 10.1 is 5, and not above it."""
    return round(size_mm, 9)


def _even_steps(change_mm: float) -> tuple[float, ...]:
    """As few and as even moves as the longest one allows, longer ones first, the odd rest in the last."""
    count = math.ceil(_settled(abs(change_mm)) / LARGEST_STEP_MM)
    if count == 0:
        return (change_mm,) if change_mm else ()
    each, longer = divmod(math.floor(_settled(abs(change_mm)) / SCALE_MM), count)
    sign = math.copysign(SCALE_MM, change_mm)
    whole = [sign * (each + (place < longer)) for place in range(count)]
    # exact in binary too: all but the change are multiples of 0.5, and the difference is the smaller number
    return (*whole[:-1], change_mm - sum(whole[:-1]))
