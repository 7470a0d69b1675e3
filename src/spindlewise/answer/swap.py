"""The swap: what changes on the buyer's bike when one product takes the place of another."""

from dataclasses import dataclass
from datetime import date

from spindlewise.answer.leg import LegAnswer, leg_answer
from spindlewise.answer.stance import Stance, stance
from spindlewise.answer.weight_change import WeightChange, weight_change
from spindlewise.buyer.buyer import Bike, Buyer
from spindlewise.catalog.as_of import standing_notices
from spindlewise.catalog.figure import Absent, Known, figure, stack_mm
from spindlewise.catalog.product import Product
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.saddle import Kept, SaddleChange, Side, Stack, StackBasis, practice_change
from spindlewise.fit.steps import CONFIRM_ABOVE_MM, StepPlan, step_plan
from spindlewise.fit.travel import Travel, saddle_travel

TOP: StackBasis = "axis to pedal top"
SOLE: StackBasis = "axis to sole"


@dataclass(frozen=True, slots=True)
class Swap:
    """All that moves: each part is the change, or names the figure that is missing."""

    old: Product
    new: Product
    day: date
    saddle: SaddleChange | MissingFigures
    bare_stacks: tuple[str, ...]
    """The products whose stack height comes without a plus-minus, so that the saddle's falls short of it."""
    leg: LegAnswer
    plan: StepPlan | None
    travel: Travel | None
    stance: Stance
    weight: WeightChange | None
    weight_missing: str
    off_tools: tuple[str, ...]
    on_tools: tuple[str, ...]
    torque: Known | Absent
    cautions: tuple[str, ...]


def swap(old: Product, new: Product, day: date, buyer: Buyer | None, general: tuple[str, ...]) -> Swap:
    """What changes on the bike; `general` are the catalog's own cautions, which every answer carries.

    Without a buyer, cranks, soles and washers stay as they are.
    """
    bike = buyer.bike if buyer else Bike()
    sides = _side(old, new, day, buyer, after=False), _side(new, old, day, buyer, after=True)
    kept = _kept(old, new, buyer)
    saddle = practice_change(*sides, kept=kept)
    plan = travel = None
    if isinstance(saddle, SaddleChange):
        parts = saddle.stack_mm, saddle.cleat_mm, saddle.crank_mm
        plan = step_plan(saddle.change_mm, *parts, other_cleat="cleat" not in kept)
        if not isinstance(bike.seat_tube_deg, str):
            travel = saddle_travel(saddle.change_mm, bike.seat_tube_deg)
    weight, weight_missing = weight_change(old, new, day)
    return Swap(
        old=old,
        new=new,
        day=day,
        saddle=saddle,
        bare_stacks=tuple(
            product.id
            for product, other in ((old, new), (new, old))
            if old.id != new.id and _has_bare_stack(product, other, day)
        ),
        leg=leg_answer(saddle, sides, buyer),
        plan=plan,
        travel=travel,
        stance=stance(old, new, day, bike),
        weight=weight,
        weight_missing=weight_missing,
        off_tools=old.tools.fitting if not isinstance(old.tools.fitting, str) else (),
        on_tools=new.tools.fitting if not isinstance(new.tools.fitting, str) else (),
        torque=figure(new, "fitting_torque_nm", day),
        cautions=_cautions(old, new, day, plan, general),
    )


def _kept(old: Product, new: Product, buyer: Buyer | None) -> tuple[Kept, ...]:
    kept: list[Kept] = []
    if same_cleat(old, new):
        kept.append("cleat")
    if buyer is None or buyer.shoes.new_sole_mm == "unchanged":
        kept.append("sole")
    if buyer is None or isinstance(buyer.bike.new_crank_mm, str):
        kept.append("crank")
    return tuple(kept)


def same_cleat(old: Product, new: Product) -> bool:
    """Whether the cleats can stay on the shoes: one drilling and one pattern."""
    return old.id == new.id or (
        old.cleat.pattern == new.cleat.pattern
        and old.cleat.bolts == new.cleat.bolts
        and old.cleat.bolts in ("two-bolt", "three-bolt")
        and old.cleat.height_mm == new.cleat.height_mm
    )


def _side(product: Product, other: Product, day: date, buyer: Buyer | None, after: bool) -> Side:
    """One side of the swap, on the stack basis that both share where there is one."""
    crank: float | None = None
    sole: float | None = None
    if buyer is not None:
        before = buyer.bike.crank_mm
        length = before if not after or isinstance(buyer.bike.new_crank_mm, str) else buyer.bike.new_crank_mm
        crank = None if isinstance(length, str) else length
        stated = (
            buyer.shoes.new_sole_mm
            if after and buyer.shoes.new_sole_mm != "unchanged"
            else buyer.shoes.sole_mm
        )
        sole = None if isinstance(stated, str) else stated
    cleat, spread = product.cleat.height_mm, product.cleat.plus_minus_mm
    return Side(
        product.id,
        _stack(product, other, day),
        cleat_mm=None if isinstance(cleat, str) else cleat,
        sole_mm=sole,
        crank_mm=crank,
        cleat_plus_minus_mm=0.0 if isinstance(spread, str) else spread,
    )


def _stack(product: Product, other: Product, day: date) -> Stack | None:
    """The stack on a basis that the other product has too, else on whatever basis there is."""
    found = _stack_seen(product, other, day)
    return None if found is None else Stack(found[0].value, found[1], found[0].plus_minus or 0.0)


def _has_bare_stack(product: Product, other: Product, day: date) -> bool:
    found = _stack_seen(product, other, day)
    return found is not None and not found[0].plus_minus


def _stack_seen(product: Product, other: Product, day: date) -> tuple[Known, StackBasis] | None:
    have = {span: stack_mm(product, day, span) for span in (TOP, SOLE)}
    theirs = {span: stack_mm(other, day, span) for span in (TOP, SOLE)}
    shared = [s for s in (TOP, SOLE) if isinstance(have[s], Known) and isinstance(theirs[s], Known)]
    for span in [*shared, TOP, SOLE]:
        found = have[span]
        if isinstance(found, Known):
            return found, span
    return None


def _cautions(
    old: Product, new: Product, day: date, plan: StepPlan | None, general: tuple[str, ...]
) -> tuple[str, ...]:
    said: list[str] = []
    for product, which in ((new, ""), (old, " on the old pedals")):
        for notice in standing_notices(product, day):
            issued = f"{notice.date.isoformat()} by {notice.issued_by}"
            said.append(f"Safety notice{which} of {issued}: {notice.what} {notice.action}")
    if plan and plan.confirm_first:
        said.append(
            f"This is a large change: above {CONFIRM_ABOVE_MM:g} mm (that bound is a design choice) a wrong "
            "figure is likelier than such a pedal. Confirm both stack figures before anything is moved."
        )
    if plan and len(plan.steps_mm) > 1:
        said.append(
            "Move the saddle in the small steps shown, with rides in between; see a qualified fitter."
        )
    if not same_cleat(old, new):
        said.append("The cleats change too: mark where the old ones sit before taking them off.")
    return (*said, *general)
