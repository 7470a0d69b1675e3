"""What a swap does to the bike: saddle, stance, weight, tools and cautions, in sentences."""

from spindlewise.answer.saddle_views import saddle_views
from spindlewise.answer.swap import Swap
from spindlewise.answer.swap_asked import SwapAsked
from spindlewise.catalog.figure import Known
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.saddle import SaddleChange
from spindlewise.fit.steps import IN_STEPS_ABOVE_MM, LARGEST_STEP_MM
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph
from spindlewise.render.missing_figures import missing_words
from spindlewise.render.moved import give_or_take, moved
from spindlewise.render.naming import Naming, listed, sentence
from spindlewise.render.words_extras import crank_words, gram_sentence
from spindlewise.render.words_leg import leg_sentences
from spindlewise.render.words_stance import stance_sentences
from spindlewise.units import figure_text, grams_text, number_text


def swap_blocks(found: SwapAsked, names: Naming) -> tuple[Block, ...]:
    """The whole swap as a reply of its own."""
    swap = found.swap
    old, new = names.product(swap.old.id), names.product(swap.new.id)
    crank = () if found.crank is None else (crank_words(found.crank),)
    seconds = gram_sentence(found.gram_worth)
    return (
        Heading(f"From {old} to {new}", 1),
        Paragraph(f"As of {swap.day.isoformat()}.", "quiet"),
        Bullets((*swap_sentences(swap, names), *crank, *((seconds,) if seconds else ()))),
        Heading("Before you ride"),
        Bullets(swap.cautions),
    )


def swap_sentences(swap: Swap, names: Naming) -> tuple[str, ...]:
    """What changes, one sentence or two for each thing."""
    return (
        *saddle_sentences(swap, names),
        *stance_sentences(swap.stance, names),
        weight_sentence(swap),
        *tool_sentences(swap),
    )


def saddle_sentences(swap: Swap, names: Naming) -> tuple[str, ...]:
    """Common practice, the leg model beside it, how far they are apart, and the plan of small steps."""
    saddle = swap.saddle
    if isinstance(saddle, MissingFigures):
        return (f"Saddle: the change cannot be said. {missing_words(saddle, names)}",)
    said = [f"Saddle: {_by_practice(swap, saddle, names)}{_travel(swap)}."]
    if saddle.converted:
        brought = listed(names.product(name) for name in saddle.converted)
        said.append(
            "The two stack heights were stated from axis to pedal top and from axis to sole; "
            f"that of {brought} was brought to the sole with its cleat's height."
        )
    return (*said, *leg_sentences(swap.leg, saddle_views(swap)), *_plan(swap))


def _by_practice(swap: Swap, saddle: SaddleChange, names: Naming) -> str:
    said = f"{moved(saddle.change_mm)} by common practice, millimetre for millimetre along the seat tube"
    return said + give_or_take(saddle.plus_minus_mm, [names.product(name) for name in swap.bare_stacks])


def _travel(swap: Swap) -> str:
    travel = swap.travel
    if travel is None or moved(travel.along_tube_mm) == "no change":
        return ""
    rises = travel.up_mm > 0
    up = number_text(abs(travel.up_mm), 1)
    back = f"{number_text(abs(travel.back_mm), 1)} mm {'further back' if rises else 'further forward'}"
    return (
        f". Unrounded {number_text(abs(travel.along_tube_mm), 1)} mm along the tube: "
        f"{up} mm {'higher' if rises else 'lower'} and {back}, "
        f"so the drop to the bars {'grows' if rises else 'shrinks'} by {up} mm"
    )


def _plan(swap: Swap) -> list[str]:
    plan = swap.plan
    if plan is None or not plan.because:
        return []
    why = f"Why so: {listed(plan.because)}"
    if abs(sum(plan.steps_mm)) > IN_STEPS_ABOVE_MM:
        why += f" ({_above(abs(sum(plan.steps_mm)))} mm before rounding)"
    if len(plan.steps_mm) < 2:
        return [f"Ride some days before anything else is moved. {why}."]
    steps = listed((moved(step) for step in plan.steps_mm), "then")
    return [
        f"Move it in {len(plan.steps_mm)} steps with some days of riding on each: {steps}. {why}. "
        f"That steps begin above {IN_STEPS_ABOVE_MM:g} mm and are of {LARGEST_STEP_MM:g} mm at most is a "
        "design choice, no rule of the trade."
    ]


def _above(change_mm: float) -> str:
    """The change with one decimal, or with so many as show that it lies above the bound of steps."""
    for decimals in (1, 2, 3):
        if float(said := number_text(change_mm, decimals)) > IN_STEPS_ABOVE_MM:
            return said
    return f"just over {IN_STEPS_ABOVE_MM:g}"


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
    said += f" (from {before} to {grams_text(weight.new.value)} {weight.new.grade}"
    if weight.low_g == weight.high_g:
        said += "; no plus-minus is stated"
    return f"{said})."


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
