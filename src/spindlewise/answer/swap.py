"""The swap: what changes on the buyer's bike when one product takes the place of another."""

from dataclasses import dataclass
from datetime import date

from spindlewise.answer.leg import leg_answer
from spindlewise.buyer.buyer import Bike, Buyer
from spindlewise.catalog.as_of import standing_notices
from spindlewise.catalog.figure import Absent, Known, figure, pedal_offset_mm, stack_mm, weight_g
from spindlewise.catalog.product import Product
from spindlewise.fit.leg_change import LegChange
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.saddle import Kept, SaddleChange, Side, Stack, StackBasis, practice_change
from spindlewise.fit.stance import Pedals, StanceChange, WasherCaution, stance_change, washer_cautions
from spindlewise.fit.steps import StepPlan, step_plan
from spindlewise.fit.travel import Travel, saddle_travel

TOP: StackBasis = "axis to pedal top"
SOLE: StackBasis = "axis to sole"


@dataclass(frozen=True, slots=True)
class WeightChange:
    """The change of weight in grams, positive is heavier, with the interval from the weighings."""

    expected_g: float
    low_g: float
    high_g: float
    old: Known
    new: Known


@dataclass(frozen=True, slots=True)
class LegAnswer:
    """The leg model's answer, or why there is none."""

    change: LegChange | None
    because: str


@dataclass(frozen=True, slots=True)
class Swap:
    """All that moves: each part is the change, or names the figure that is missing."""

    old: Product
    new: Product
    day: date
    saddle: SaddleChange | MissingFigures
    leg: LegAnswer
    plan: StepPlan | None
    travel: Travel | None
    stance: StanceChange | MissingFigures
    washers: tuple[WasherCaution, ...]
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
        plan = step_plan(saddle.change_mm, saddle.stack_mm, saddle.cleat_mm, saddle.crank_mm)
        if not isinstance(bike.seat_tube_deg, str):
            travel = saddle_travel(saddle.change_mm, bike.seat_tube_deg)
    pedals = _pedals(old, day, bike.washers_each_side_mm), _pedals(new, day, bike.new_washers_each_side_mm)
    weight, weight_missing = _weight_change(old, new, day)
    leg = leg_answer(saddle, sides, buyer)
    return Swap(
        old=old,
        new=new,
        day=day,
        saddle=saddle,
        leg=LegAnswer(leg, "") if isinstance(leg, LegChange) else LegAnswer(None, leg),
        plan=plan,
        travel=travel,
        stance=stance_change(*pedals),
        washers=washer_cautions(pedals[1]),
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
    have = {span: stack_mm(product, day, span) for span in (TOP, SOLE)}
    theirs = {span: stack_mm(other, day, span) for span in (TOP, SOLE)}
    shared = [s for s in (TOP, SOLE) if isinstance(have[s], Known) and isinstance(theirs[s], Known)]
    for span in [*shared, TOP, SOLE]:
        found = have[span]
        if isinstance(found, Known):
            return Stack(found.value, span, found.plus_minus or 0.0)
    return None


def _pedals(product: Product, day: date, washers_mm: float) -> Pedals:
    offset = pedal_offset_mm(product, day)
    value, spread = (offset.value, offset.plus_minus or 0.0) if isinstance(offset, Known) else (None, 0.0)
    return Pedals(product.id, value, value, washers_mm, washers_mm, offset_plus_minus_mm=spread)


def _weight_change(old: Product, new: Product, day: date) -> tuple[WeightChange | None, str]:
    before, after = weight_g(old, day), weight_g(new, day)
    lacking = [
        f"weight of {product.name}: {found.because}"
        for product, found in ((old, before), (new, after))
        if isinstance(found, Absent)
    ]
    if isinstance(before, Absent) or isinstance(after, Absent):
        return None, "; ".join(lacking)
    change = WeightChange(
        after.value - before.value, after.low - before.high, after.high - before.low, before, after
    )
    return change, ""


def _cautions(
    old: Product, new: Product, day: date, plan: StepPlan | None, general: tuple[str, ...]
) -> tuple[str, ...]:
    said: list[str] = []
    for notice in standing_notices(new, day):
        said.append(
            f"Safety notice of {notice.date.isoformat()} by {notice.issued_by}: {notice.what} {notice.action}"
        )
    if plan and plan.confirm_first:
        said.append("This is a large change: confirm both stack figures before anything is moved.")
    if plan and len(plan.steps_mm) > 1:
        said.append(
            "Move the saddle in the small steps shown, with rides in between; see a qualified fitter."
        )
    if not same_cleat(old, new):
        said.append("The cleats change too: mark where the old ones sit before taking them off.")
    return (*said, *general)
