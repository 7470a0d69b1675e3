"""What the leg model says of a swap: its own saddle change, the knee, and what its answer rests on."""

from spindlewise.answer.leg import LegAnswer
from spindlewise.answer.saddle_views import SaddleViews
from spindlewise.fit.leg_change import LegChange
from spindlewise.render.moved import give_or_take, moved
from spindlewise.render.naming import listed
from spindlewise.units import number_text

INPUTS = {
    "rider.saddle_height_mm": ("the saddle height", "mm"),
    "rider.seat_tube_angle_deg": ("the seat-tube angle", "degrees"),
    "rider.setback_mm": ("how far back you sit", "mm"),
    "rider.hip_above_saddle_mm": ("how high the hip is above the saddle", "mm"),
    "rider.ankle_height_mm": ("how high the ankle is above the sole", "mm"),
    "rider.pitch_down_deg": ("the pitch of the foot at the bottom", "degrees"),
    "rider.pitch_up_deg": ("the pitch of the foot at the top", "degrees"),
    "both.ankle_to_cleat_mm": ("where the cleat sits", "mm"),
    "both.axis_to_foot_mm": ("what is between axis and foot", "mm"),
    "new.axis_to_foot_mm": ("the stack heights", "mm"),
}
"""The model's inputs as a rider calls them, with their units."""


def leg_sentences(leg: LegAnswer, views: SaddleViews | None) -> tuple[str, ...]:
    """The model's change beside common practice, the knee, and which input it hangs on; or what it lacks."""
    if leg.change is None or views is None:
        return (f"A model of the leg gives no second opinion: {leg.because}.",)
    return (_beside_practice(leg.change, views), _knee(leg.change), _rests_on(leg, leg.change))


def _beside_practice(change: LegChange, views: SaddleViews) -> str:
    said = f"A model of the leg, which lets the ankle move, says {moved(change.saddle_mm)}"
    said += f", unrounded {number_text(change.saddle_mm, 1, signed=True)} mm"
    said += f"{give_or_take(change.plus_minus_mm)}: {_difference(views)}"
    if number_text(abs(views.apart_mm), 1) != "0.0" and abs(views.apart_mm) <= change.plus_minus_mm:
        said += ", which is no more than the model itself may be off"
    return f"{said}."


def _difference(views: SaddleViews) -> str:
    apart = number_text(abs(views.apart_mm), 1)
    if apart == "0.0":
        return "for you both agree"
    if views.practice_mm * views.leg_mm < 0:
        return f"the 1:1 rule points the other way, {apart} mm apart"
    which = "overstates" if abs(views.practice_mm) > abs(views.leg_mm) else "understates"
    return f"the 1:1 rule {which} it by {apart} mm for you"


def _knee(change: LegChange) -> str:
    if change.straightest_unmoved_deg is None:
        left = "If the saddle stayed where it is, the leg would no longer reach round"
    else:
        left = "If the saddle stayed where it is, the knee at its straightest would be bent "
        left += _bend(change.straightest_before_deg, change.straightest_unmoved_deg)
    top = _bend(change.most_bent_before_deg, change.most_bent_after_deg)
    reach = number_text(abs(change.shortest_reach_change_mm), 1)
    further = "further" if change.shortest_reach_change_mm > 0 else "nearer"
    return (
        f"{left}. With the saddle moved it is bent there as before, and over the top {top}"
        f"{'' if reach == '0.0' else f', from hip to ankle {reach} mm {further}'}. "
        "These angles are the model's, no published measurement of them was found; they say what changes, "
        "not what would be right."
    )


def _bend(before_deg: float, after_deg: float) -> str:
    change = number_text(abs(after_deg - before_deg), 1)
    if change == "0.0":
        return "as before"
    ends = f"{number_text(after_deg, 1)} in place of {number_text(before_deg, 1)}"
    return f"{change} degrees {'more' if after_deg > before_deg else 'less'} ({ends})"


def _rests_on(leg: LegAnswer, change: LegChange) -> str:
    given = dict(leg.given)
    name, effect = max(change.effects_mm, key=lambda each: abs(each[1]))
    words, unit = INPUTS[name]
    size = number_text(abs(effect), 1)
    if size == "0.0":
        said = "No input of the model that is off by as much as may be moves this by 0.1 mm"
    else:
        said = f"Most hangs on {words}: {number_text(given[name], 1)} {unit} either way make {size} mm"
    return f"{said}. Assumed: {listed(leg.assumed)}." if leg.assumed else f"{said}."
