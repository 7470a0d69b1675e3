"""What the uncertainty of a reading is made of: a sentence, and the table of its causes."""

from spindlewise.reception.budget import COVERAGE, Budget
from spindlewise.render.blocks import Block, Column, Table
from spindlewise.render.naming import listed, sentence
from spindlewise.units import percent_text


def trust_words(budget: Budget, receiver: str) -> str:
    """How far the power shown may stray, what does most of it, and what the figure leaves out."""
    if budget.expanded_pct is None:
        lacking = f"not known: {listed(budget.missing)}" if budget.missing else budget.note
        return f"How far the power that {receiver} shows may stray cannot be said; {lacking}."
    within = percent_text(budget.expanded_pct)
    said = f"The power that {receiver} shows stays within {within} of the truth in about 19 cases of 20"
    if not any(cause.name == "bench bias" for cause in budget.contributions):
        said += ", worked out from claims"
    said += f". Most of that comes from the {budget.largest}" if budget.largest else ""
    if budget.not_measured:
        said += f". Not measured: {listed(budget.not_measured)}; the worst that is plausible counts"
        if budget.expanded_low_pct is not None:
            said += f" (at best the figure would be {percent_text(budget.expanded_low_pct)})"
    if budget.left_out:
        said += f"; not in this figure, since nothing is known of it: {listed(budget.left_out)}"
    return sentence(said)


def budget_blocks(budget: Budget) -> tuple[Block, ...]:
    """A row for each cause, the one that does most first, and what they come to; nothing without causes."""
    if not budget.contributions:
        return ()
    ordered = sorted(budget.contributions, key=lambda cause: -cause.reach_pct)
    rows: list[tuple[str, ...]] = [
        (c.name, _or_none(c.bias_pct, True), _or_none(c.standard_pct), c.note) for c in ordered
    ]
    if budget.bias_pct is not None and budget.combined_pct is not None and budget.expanded_pct is not None:
        expanded = percent_text(budget.expanded_pct)
        rows.append(
            (
                "together",
                _or_none(budget.bias_pct, True),
                _or_none(budget.combined_pct),
                f"steady error and {COVERAGE:g} times the spread: {expanded}",
            )
        )
    columns = (
        Column("Cause"),
        Column("Steady error", "right"),
        Column("Spread", "right"),
        Column("Note", wraps=True),
    )
    return (Table("What that figure is made of", columns, tuple(rows)),)


def _or_none(value: float, signed: bool = False) -> str:
    return percent_text(value, 2, signed) if value else "0"
