"""Which answers given no longer hold, why, and what to say now."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from spindlewise.answer.recheck import Change, Rechecked
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import SafetyNotice
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph
from spindlewise.render.naming import Naming, listed, naming
from spindlewise.render.words_notices import notice_words, standing_on
from spindlewise.render.words_rank import notice_of_invention
from spindlewise.units import money_text

MOST_CHANGES = 4
"""So many reasons are told for one answer; the others are counted."""


def recheck_blocks(catalog: Catalog, found: Sequence[Rechecked], day: str) -> tuple[Block, ...]:
    """Those that no longer hold first, then those that cannot be told, then a count of the others."""
    names = naming(catalog)
    gone = [each for each in found if each.verdict == "no longer holds"]
    unsure = [each for each in found if each.verdict == "cannot tell"]
    other = [each for each in found if each.verdict == "holds, on other figures"]
    blocks: list[Block] = [Heading(f"Answers given, read again as of {day}", 1)]
    for each in gone:
        blocks += _gone(each, names, told_notices(catalog, each, day))
    if unsure:
        blocks.append(Heading("Cannot be told"))
        blocks.append(Bullets(tuple(f"{_title(each)}: {each.note}." for each in unsure)))
    if other:
        blocks.append(Heading("Still hold, on other figures"))
        blocks.append(Bullets(tuple(f"{_title(each)}. {_reasons(each, names)}" for each in other)))
    return (*blocks, *notice_of_invention(catalog), Paragraph(count_words(found), "important"))


def told_notices(catalog: Catalog, each: Rechecked, day: str) -> tuple[tuple[str, SafetyNotice], ...]:
    """The safety notices that stand by now on what the answer recommended, or called level with that."""
    pick = () if each.entry.pick is None else (each.entry.pick,)
    return standing_on(catalog, (*pick, *each.entry.level_with), date.fromisoformat(day))


def count_words(found: Sequence[Rechecked]) -> str:
    """How many hold and how many do not, as the last word."""
    gone = sum(each.verdict == "no longer holds" for each in found)
    unsure = sum(each.verdict == "cannot tell" for each in found)
    whole = "1 answer" if len(found) == 1 else f"{len(found)} answers"
    said = f"{whole} read again: {len(found) - gone - unsure} still good, {gone} no longer"
    return f"{said}, {unsure} cannot be told." if unsure else f"{said}."


def _title(each: Rechecked) -> str:
    return f"Line {each.entry.line}, {each.entry.buyer.name}, answered as of {each.entry.day.isoformat()}"


def _gone(each: Rechecked, names: Naming, notices: Sequence[tuple[str, SafetyNotice]]) -> list[Block]:
    return [
        Heading(_title(each)),
        Paragraph(f"Asked: {each.entry.buyer.question}", "quiet"),
        Paragraph(f"No longer holds. {_reasons(each, names)}"),
        Paragraph(f"To paste: {reply_again(each, names, notices)}", "important"),
    ]


def reply_again(each: Rechecked, names: Naming, notices: Sequence[tuple[str, SafetyNotice]] = ()) -> str:
    """The short reply that corrects the one given; safety notices on what it recommended come first."""
    was = "nothing" if each.entry.pick is None else names.product(each.entry.pick)
    told = f"We told you {was} on {each.entry.day.isoformat()}."
    for name, notice in notices:
        told += f" Safety notice. {notice_words(names.product(name), notice)}"
    ranking = each.ranking
    pick = ranking.pick if ranking else None
    if pick is None:
        return f"{told} By now nothing meets all your needs."
    price = money_text(pick.paid.amount, pick.paid.currency)
    beside = listed(names.product(name) for name in pick.level_with)
    level = f", level with {beside}" if beside else ""
    if pick.product == each.entry.pick:
        return f"{told} It is still the pick at {price}{level}; what stands level with it has changed."
    return f"{told} Today we would say {names.product(pick.product)} at {price}{level}."


def _reasons(each: Rechecked, names: Naming) -> str:
    ordered = sorted(
        enumerate(each.because),
        key=lambda item: (
            item[1].product not in (each.entry.pick, each.pick_now),
            item[1].what != "safety",
            item[0],
        ),
    )
    money = each.entry.buyer.currency
    told = [change_words(change, names, money) for _, change in ordered[:MOST_CHANGES]]
    if not told:
        return "What changed concerns only products that the needs keep out, then as now."
    left = len(ordered) - len(told)
    more = f" And {left} more." if left > 0 else ""
    return " ".join(told) + more


def change_words(change: Change, names: Naming, currency: str = "") -> str:
    """One thing that an answer rested on and that is not so now."""
    name = names.product(change.product)
    if change.what == "product":
        return f"{name} is {change.now}." if change.now == "gone" else f"{name} is new in the catalog."
    if change.what == "needs":
        return f"{name}: {change.before} then, {change.now} now."
    if change.what == "safety":
        stands = change.now == "under a safety notice"
        return f"{name}: {'a safety notice stands now' if stands else 'its safety notice was lifted'}."
    if change.what == "price":
        before, now = (_price(text, currency) for text in (change.before, change.now))
        return f"{name}: price was {before}, is {now}."
    what = names.criterion(change.what)
    return f"{name}: {what} was {change.before}, is {change.now}."


def _price(text: str, currency: str) -> str:
    return "unknown" if text == "none" else money_text(Decimal(text), currency) if currency else text
