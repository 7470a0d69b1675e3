"""The cost-per-gram-saved ladder in words and as a table."""

from collections.abc import Collection

from spindlewise.answer.ladder import HELD_BACK, Climb
from spindlewise.cost.ladder import LadderStep
from spindlewise.cost.quadrants import Interval
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.naming import Naming, listed
from spindlewise.render.words_figures import graded_words
from spindlewise.units import grams_text, money_text, number_text

ON_IT = ("rung", "lighter and not dearer")


def ladder_blocks(climb: Climb, names: Naming, noticed: Collection[str] = ()) -> tuple[Block, ...]:
    """The whole ladder as a reply of its own; `noticed` are the products with a standing safety notice."""
    start = names.product(climb.baseline)
    spent = "already owned, so its price counts as nothing" if climb.owned else "bought like the rest"
    steps = [step for step in climb.steps if step.status in ON_IT]
    others = [step for step in climb.steps if step.status not in (*ON_IT, "baseline")]
    blocks: list[Block] = [
        Heading("What each gram saved costs", 1),
        Paragraph(
            f"Start: {start}, {graded_words(climb.weights[climb.baseline])}, {spent}. "
            f"As of {climb.day.isoformat()}.",
            "quiet",
        ),
    ]
    if steps:
        blocks.append(_steps_table(climb, steps, names))
    else:
        blocks.append(
            Paragraph(f"Nothing here is reliably lighter than {start} and worth its price.", "important")
        )
    if climb.baseline in noticed:
        blocks.append(Paragraph(f"{start} has a standing safety notice: read it first.", "caution"))
    if others:
        blocks += [
            Heading("Not on the ladder"),
            Bullets(tuple(f"{names.product(s.product)}: {off_words(s, climb, names)}." for s in others)),
        ]
    if climb.left_out:
        blocks += [
            Heading("Left out"),
            Bullets(tuple(f"{names.product(name)}: {why}." for name, why in climb.left_out)),
        ]
    return tuple(blocks)


def ladder_sentences(climb: Climb, names: Naming) -> tuple[str, ...]:
    """The steps of the ladder, one sentence each, and what is left out, for a reply that says more."""
    steps = [step for step in climb.steps if step.status in ON_IT]
    none = f"Nothing that could be bought here is reliably lighter than the {names.product(climb.baseline)}."
    said = [_step_sentence(step, climb, names) for step in steps] if steps else [none]
    held = [names.product(name) for name, why in climb.left_out if why == HELD_BACK]
    if held:
        it = "it" if len(held) == 1 else "them"
        said.append(f"Left out: {listed(held)}, since a safety notice holds {it} back.")
    return tuple(said)


def pick_sentence(product: str, climb: Climb, names: Naming) -> str:
    """What one product's grams cost against the baseline; empty where it is a step or no candidate."""
    for step in climb.steps:
        if step.product == product and step.status not in ("baseline", *ON_IT):
            return f"{names.product(product)}: {_against_baseline(step, climb)}."
    return ""


def _step_sentence(step: LadderStep, climb: Climb, names: Naming) -> str:
    said = f"{names.product(step.product)}: {_against_baseline(step, climb)}"
    if step.step_cost_per_gram is not None and step.step_from not in (None, climb.baseline):
        further = money_text(step.step_cost_per_gram, climb.currency)
        said += f"; each further gram after the {names.product(step.step_from or '')} costs {further}"
    return f"{said}."


def _against_baseline(step: LadderStep, climb: Climb) -> str:
    extra = money_text(abs(step.extra_cost), climb.currency)
    more = "costs the same"
    if step.extra_cost:
        than = " less" if step.extra_cost < 0 else "" if climb.owned else " more"
        more = f"costs {extra}{than}"
    if step.quadrant == "no reliable saving":
        return f"{more}; the weighings cannot tell which of the two is lighter"
    said = f"{saving_words(step.saving_g)}, {more}"
    if step.cost_per_gram is not None:
        said += f", {money_text(step.cost_per_gram, climb.currency)} a gram"
    if step.saved_per_gram is not None:
        said += f", {money_text(step.saved_per_gram, climb.currency)} saved for each gram added"
    return said


def saving_words(saving: Interval) -> str:
    """Grams saved or added: `21 g lighter`.

    >>> saving_words(Interval(19.0, 21.0, 23.0)), saving_words(Interval(-88.0, -86.0, -84.0))
    ('21 g lighter', '86 g heavier')
    """
    return f"{grams_text(abs(saving.expected))} {'lighter' if saving.expected > 0 else 'heavier'}"


def off_words(step: LadderStep, climb: Climb, names: Naming) -> str:
    """Why a product is not on the ladder."""
    if step.status == "dominated":
        return f"{_against_baseline(step, climb)}; no lighter and no cheaper than {_who(step, climb, names)}"
    if step.status == "extendedly dominated":
        around = listed(names.product(name) for name in step.dominated_by)
        return f"{_against_baseline(step, climb)}; a gram is cheaper between {around}"
    return _against_baseline(step, climb)


def _who(step: LadderStep, climb: Climb, names: Naming) -> str:
    if climb.baseline in step.dominated_by:
        return names.product(climb.baseline)
    return listed((names.product(name) for name in step.dominated_by[:3]), "or")


def _steps_table(climb: Climb, steps: list[LadderStep], names: Naming) -> Table:
    money = climb.currency
    columns = (
        Column("Product"),
        Column("Weight", spare=2),
        Column("Saves", "right"),
        Column("Range", "right", spare=3),
        Column("Costs" if climb.owned else "Costs more", "right"),
        Column("A gram", "right"),
        Column("Each further gram", "right", spare=1),
    )
    rows = tuple(
        (
            names.product(step.product),
            graded_words(climb.weights[step.product]),
            grams_text(step.saving_g.expected),
            f"{number_text(step.saving_g.low)} to {grams_text(step.saving_g.high)}",
            money_text(step.extra_cost, money),
            "not dearer" if step.cost_per_gram is None else money_text(step.cost_per_gram, money),
            "" if step.step_cost_per_gram is None else money_text(step.step_cost_per_gram, money),
        )
        for step in steps
    )
    return Table("Steps worth their price, cheapest first", columns, rows)
