"""Where the feet stand after a swap, and what washers take of the thread, in sentences."""

from spindlewise.answer.stance import Stance
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.stance import StanceChange
from spindlewise.render.missing_figures import missing_words
from spindlewise.render.moved import give_or_take
from spindlewise.render.naming import Naming
from spindlewise.units import number_text


def stance_sentences(stance: Stance, names: Naming) -> tuple[str, ...]:
    """How much wider or narrower the feet stand by the pedals, what new cranks add, and washers."""
    found = stance.pedals
    if isinstance(found, MissingFigures):
        said = f"Stance width: the change cannot be said. {missing_words(found, names)}"
    else:
        bare = [names.product(name) for name in stance.bare_offsets]
        said = f"Stance width: {_wider(found)}{give_or_take(found.plus_minus_mm, bare)}. {_q_factor(stance)}"
    return (said, *_washers(stance))


def _wider(stance: StanceChange) -> str:
    width = number_text(abs(stance.width_mm), 1)
    each = f"left {number_text(stance.left_mm, 1, True)} mm, right {number_text(stance.right_mm, 1, True)} mm"
    if width == "0.0":
        return "no change" if number_text(abs(stance.left_mm), 1) == "0.0" else f"no change in all ({each})"
    return f"{width} mm {'wider' if stance.width_mm > 0 else 'narrower'} in all ({each})"


def _q_factor(stance: Stance) -> str:
    if stance.q_factor_mm is None:
        return (
            "That is the pedals' part: the new cranks may have another Q-factor, of which nothing is stated."
        )
    if stance.q_factor_mm == 0:
        return "The Q-factor is the cranks' own and stays."
    cranks = number_text(stance.q_factor_mm, 1, signed=True)
    width = stance.width_mm or 0.0
    side = "wider" if width > 0 else "narrower"
    return f"The new cranks' Q-factor adds {cranks} mm: {number_text(abs(width), 1)} mm {side} together."


def _washers(stance: Stance) -> tuple[str, ...]:
    return tuple(
        f"The washers on the {found.foot} side take {number_text(found.washers_mm, 1)} mm of thread, "
        f"{number_text(found.turns_lost, 1)} turns: ask the maker whether enough is left."
        for found in stance.washers
    )
