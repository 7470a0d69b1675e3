"""Which answers given no longer hold, why, and what to say now."""

from collections.abc import Sequence

from spindlewise.answer.recheck import Change, Rechecked
from spindlewise.catalog.catalog import Catalog
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph
from spindlewise.render.naming import Naming, naming
from spindlewise.units import money_text

MOST_CHANGES = 4
"""So many reasons are told for one answer; the others are counted."""
FIRST_REASONS = ("price", "safety", "needs", "product")


def recheck_blocks(catalog: Catalog, found: Sequence[Rechecked], day: str) -> tuple[Block, ...]:
    """Those that no longer hold first, then those that cannot be told, then a count of the others."""
    names = naming(catalog)
    gone = [each for each in found if each.verdict == "no longer holds"]
    unsure = [each for each in found if each.verdict == "cannot tell"]
    other = [each for each in found if each.verdict == "holds, on other figures"]
    blocks: list[Block] = [Heading(f"Answers given, read again as of {day}", 1)]
    for each in gone:
        blocks += _gone(each, names)
    if unsure:
        blocks.append(Heading("Cannot be told"))
        blocks.append(Bullets(tuple(f"{_title(each)}: {each.note}." for each in unsure)))
    if other:
        blocks.append(Heading("Still hold, on other figures"))
        blocks.append(Bullets(tuple(f"{_title(each)}. {_reasons(each, names)}" for each in other)))
    return (*blocks, Paragraph(count_words(found), "important"))


def count_words(found: Sequence[Rechecked]) -> str:
    """How many hold and how many do not, as the last word."""
    gone = sum(each.verdict == "no longer holds" for each in found)
    unsure = sum(each.verdict == "cannot tell" for each in found)
    whole = "1 answer" if len(found) == 1 else f"{len(found)} answers"
    said = f"{whole} read again: {len(found) - gone - unsure} still good, {gone} no longer"
    return f"{said}, {unsure} cannot be told." if unsure else f"{said}."


def _title(each: Rechecked) -> str:
    return f"Line {each.entry.line}, {each.entry.buyer.name}, answered as of {each.entry.day.isoformat()}"


def _gone(each: Rechecked, names: Naming) -> list[Block]:
    return [
        Heading(_title(each)),
        Paragraph(f"Asked: {each.entry.buyer.question}", "quiet"),
        Paragraph(f"No longer holds. {_reasons(each, names)}"),
        Paragraph(f"To paste: {reply_again(each, names)}", "important"),
    ]


def reply_again(each: Rechecked, names: Naming) -> str:
    """The short reply that corrects the one given."""
    was = "nothing" if each.entry.pick is None else names.product(each.entry.pick)
    ranking = each.ranking
    pick = ranking.pick if ranking else None
    if pick is None:
        return f"We told you {was} on {each.entry.day.isoformat()}. By now nothing meets all your needs."
    price = money_text(pick.paid.amount, pick.paid.currency)
    level = f", level with {names.product(pick.level_with[0])}" if pick.level_with else ""
    if pick.product == each.entry.pick:
        return (
            f"We told you {was} on {each.entry.day.isoformat()}. It is still the pick at {price}{level}; "
            "what stands level with it has changed."
        )
    return (
        f"We told you {was} on {each.entry.day.isoformat()}. Today we would say "
        f"{names.product(pick.product)} at {price}{level}."
    )


def _reasons(each: Rechecked, names: Naming) -> str:
    ordered = sorted(
        enumerate(each.because),
        key=lambda item: (item[1].product not in (each.entry.pick, each.pick_now), item[0]),
    )
    told = [change_words(change, names) for _, change in ordered[:MOST_CHANGES]]
    left = len(ordered) - len(told)
    more = f" And {left} more." if left > 0 else ""
    return " ".join(told) + more


def change_words(change: Change, names: Naming) -> str:
    """One thing that an answer rested on and that is not so now."""
    name = names.product(change.product)
    if change.what == "product":
        return f"{name} is {change.now}." if change.now == "gone" else f"{name} is new in the catalog."
    if change.what == "needs":
        return f"{name}: {change.before} then, {change.now} now."
    what = "price" if change.what == "price" else names.criterion(change.what)
    return f"{name}: {what} was {change.before}, is {change.now}."
