"""What a swap does to the bike: saddle, stance, weight, tools and cautions, in sentences."""

from collections.abc import Iterable

from spindlewise.answer.saddle_views import saddle_views
from spindlewise.answer.swap import Swap
from spindlewise.catalog.figure import Known
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.saddle import SaddleChange
from spindlewise.fit.stance import StanceChange
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph
from spindlewise.render.naming import Naming, listed, sentence
from spindlewise.units import figure_text, grams_text, millimetres_text, number_text


def swap_blocks(swap: Swap, names: Naming) -> tuple[Block, ...]:
    """The whole swap as a reply of its own."""
    old, new = names.product(swap.old.id), names.product(swap.new.id)
    return (
        Heading(f"From {old} to {new}", 1),
        Paragraph(f"As of {swap.day.isoformat()}.", "quiet"),
        Bullets(swap_sentences(swap, names)),
        Heading("Before you ride"),
        Bullets(swap.cautions),
    )


def swap_sentences(swap: Swap, names: Naming) -> tuple[str, ...]:
    """What changes, one sentence or two for each thing."""
    return (
        *saddle_sentences(swap, names),
        stance_sentence(swap, names),
        *washer_sentences(swap),
        weight_sentence(swap),
        *tool_sentences(swap),
    )


def saddle_sentences(swap: Swap, names: Naming) -> tuple[str, ...]:
    """Common practice, the leg model beside it, how far they are apart, and the plan of small steps."""
    saddle = swap.saddle
    if isinstance(saddle, MissingFigures):
        return (f"Saddle: the change cannot be said. {missing_words(saddle, names)}",)
    said = [f"Saddle: {_by_practice(saddle)}{_travel(swap)}."]
    if saddle.converted:
        brought = listed(names.product(name) for name in saddle.converted)
        said.append(
            "The two stack heights were stated from axis to pedal top and from axis to sole; "
            f"that of {brought} was brought to the sole with its cleat's height."
        )
    said.append(_by_leg(swap))
    said += _plan(swap)
    return tuple(said)


def moved(change_mm: float) -> str:
    """A move of the saddle in words: `up 2.5 mm`, `down 1.0 mm` or `no change`.

    >>> moved(2.5), moved(-1.0), moved(0.1)
    ('up 2.5 mm', 'down 1.0 mm', 'no change')
    """
    text = millimetres_text(abs(change_mm))
    if text == millimetres_text(0.0):
        return "no change"
    return f"{'up' if change_mm > 0 else 'down'} {text}"


def _give_or_take(plus_minus_mm: float) -> str:
    return f", give or take {number_text(plus_minus_mm, 1)} mm" if plus_minus_mm else ""


def _by_practice(saddle: SaddleChange) -> str:
    said = f"{moved(saddle.change_mm)} by common practice, millimetre for millimetre along the seat tube"
    return said + _give_or_take(saddle.plus_minus_mm)


def _travel(swap: Swap) -> str:
    travel = swap.travel
    if travel is None or moved(travel.along_tube_mm) == "no change":
        return ""
    way = "further back" if travel.back_mm > 0 else "further forward"
    back = number_text(abs(travel.back_mm), 1)
    return f" (it then also stands {back} mm {way})"


def _by_leg(swap: Swap) -> str:
    change = swap.leg.change
    if change is None:
        return f"A model of the leg gives no second opinion: it {swap.leg.because}."
    said = f"A model of the leg, which lets the ankle move, says {moved(change.saddle_mm)}"
    said += _give_or_take(change.plus_minus_mm)
    apart = saddle_views(swap)
    if apart is None or millimetres_text(abs(apart.apart_mm)) == millimetres_text(0.0):
        return f"{said}; both agree."
    side = "more" if apart.apart_mm > 0 else "less"
    return f"{said}; common practice says {number_text(abs(apart.apart_mm), 1)} mm {side}."


def _plan(swap: Swap) -> list[str]:
    plan = swap.plan
    if plan is None or len(plan.steps_mm) < 2:
        return []
    steps = listed((moved(step) for step in plan.steps_mm), "then")
    said = f"Move it in {len(plan.steps_mm)} steps with some days of riding on each: {steps}."
    return [f"{said} Why in steps: {listed(plan.because)}."] if plan.because else [said]


def stance_sentence(swap: Swap, names: Naming) -> str:
    """How much wider or narrower the feet stand."""
    stance = swap.stance
    if isinstance(stance, MissingFigures):
        return f"Stance width: the change cannot be said. {missing_words(stance, names)}"
    return f"Stance width: {_wider(stance)}{_give_or_take(stance.plus_minus_mm)}."


def _wider(stance: StanceChange) -> str:
    width = number_text(abs(stance.width_mm), 1)
    if width == "0.0":
        return "no change"
    side = "wider" if stance.width_mm > 0 else "narrower"
    each = f"left {number_text(stance.left_mm, 1, True)} mm, right {number_text(stance.right_mm, 1, True)} mm"
    return f"{width} mm {side} in all ({each})"


def washer_sentences(swap: Swap) -> tuple[str, ...]:
    """What the washers take from the thread."""
    return tuple(
        f"The washers on the {found.foot} side take {number_text(found.washers_mm, 1)} mm of thread, "
        f"{number_text(found.turns_lost, 1)} turns: ask the maker whether enough is left."
        for found in swap.washers
    )


def weight_sentence(swap: Swap) -> str:
    """The change of weight, with its interval and the grades behind it."""
    weight = swap.weight
    if weight is None:
        return f"Weight: the change cannot be said. {sentence(swap.weight_missing)}"
    change = grams_text(abs(weight.expected_g))
    side = "heavier" if weight.expected_g > 0 else "lighter"
    said = f"Weight: {change} {side}" if change != grams_text(0.0) else "Weight: no change"
    if weight.low_g != weight.high_g:
        ends = (number_text(weight.low_g, 0, True), grams_text(weight.high_g, True))
        said += f", between {' and '.join(ends)}"
    before = f"{grams_text(weight.old.value)} {weight.old.grade}"
    return f"{said} (from {before} to {grams_text(weight.new.value)} {weight.new.grade})."


def tool_sentences(swap: Swap) -> tuple[str, ...]:
    """Tools for taking off and putting on, the torque, and what the maker asks for afterwards."""
    off = listed(swap.off_tools, "or") or "unknown"
    on = listed(swap.on_tools, "or") or "unknown"
    said = [f"Tools: to take the old ones off, {off}; to put the new ones on, {on}."]
    if isinstance(swap.torque, Known):
        torque = figure_text(swap.torque.value, "N m")
        said.append(f"Fitting torque: {torque}, {swap.torque.grade}.")
    else:
        said.append(f"Fitting torque: {swap.torque.kind} ({swap.torque.because}); ask the maker.")
    after = swap.new.tools.after_fitting
    if after not in ("unknown", "none", "not applicable"):
        said.append(f"After fitting, the maker asks for: {after}.")
    return tuple(said)


def missing_words(found: MissingFigures, names: Naming) -> str:
    """Each figure that is missing, and why it is needed."""
    return " ".join(_each_once(_missing(found, names)))


def _missing(found: MissingFigures, names: Naming) -> Iterable[str]:
    for lack in found.missing:
        yield f"Not known: the {lack.figure} of {names.product(lack.product)} ({lack.because})."


def _each_once(texts: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(texts))
