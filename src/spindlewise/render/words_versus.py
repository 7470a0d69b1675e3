"""Two products side by side: who gains where, what preferring one costs, and what moves on the bike."""

from spindlewise.answer.paid import Paid
from spindlewise.answer.versus import Contender, Versus
from spindlewise.catalog.catalog import Catalog
from spindlewise.decide.break_even import Outcome
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.fragment import page_link
from spindlewise.render.naming import Naming, naming, share_text
from spindlewise.render.words_figures import graded_words
from spindlewise.render.words_notices import notice_words
from spindlewise.render.words_rank import notice_of_invention
from spindlewise.render.words_reply import disclosure_words
from spindlewise.render.words_swap import swap_sentences
from spindlewise.render.words_why import LEVEL, TAKE, UNKNOWN, difference_words, not_known_words
from spindlewise.units import money_text, points_text


def versus_blocks(catalog: Catalog, found: Versus) -> tuple[Block, ...]:
    """The whole comparison."""
    names = naming(catalog)
    first, second = found.first, found.second
    one, other = names.product(first.product.id), names.product(second.product.id)
    blocks: list[Block] = [
        Heading(f"{one} against {other}", 1),
        Paragraph(f"For {found.buyer.name}. As of {found.swap.day.isoformat()}.", "quiet"),
        Paragraph(verdict_words(found, names), "important"),
        *(
            Paragraph(notice_words(names.product(each.product.id), notice), "caution")
            for each in (first, second)
            for notice in each.notices
        ),
        _table(found, names),
        Heading("What preferring one costs"),
        Bullets(tuple(_cost_sentences(found, names))),
    ]
    failing = tuple(_needs_words(each, names) for each in (first, second) if each.sifted.failures)
    if failing:
        blocks += [Heading("Needs that are not met"), Bullets(failing)]
    blocks += [
        Heading(f"Changing from {one} to {other}"),
        Bullets(swap_sentences(found.swap, names)),
        Heading("Disclosure"),
        Bullets(tuple(disclosure_words(names.product(c.product.id), c.disclosure) for c in (first, second))),
        Heading("Before you ride"),
        Bullets(found.swap.cautions),
    ]
    link = page_link(catalog, found.buyer, (first.product.id, second.product.id))
    weigh = (Paragraph(f"Weigh it yourself: {link}", "quiet"),) if link else ()
    return (*blocks, *notice_of_invention(catalog), *weigh)


def verdict_words(found: Versus, names: Naming) -> str:
    """Who leads by how much, and where each gains; or that they are level."""
    one, other = (names.product(c.product.id) for c in (found.first, found.second))
    points = points_text(abs(found.against.total))
    why = difference_words(found.against, names)
    if found.level and found.level_only_by:
        known = f"By what is known, {one if found.against.total > 0 else other} leads by {points} points"
        return f"{UNKNOWN}. {not_known_words(found.level_only_by, names)} {known}. {one} {why}."
    if found.level:
        return f"Level: {LEVEL}. {TAKE} {one} {why}."
    who = "It" if found.against.total > 0 else one
    ahead, lead = (found.first, one) if found.against.total > 0 else (found.second, other)
    held = ", but a safety notice holds it back" if ahead.notices else ""
    return f"{lead} leads by {points} points{held}. {who} {why}."


def _table(found: Versus, names: Naming) -> Table:
    first, second = found.first, found.second
    columns = (
        Column("What counts"),
        Column("Counts", "right", spare=1),
        Column(first.product.name, is_name=True, wraps=True),
        Column(second.product.name, is_name=True, wraps=True),
        Column("Points", "right"),
    )
    points = {part.criterion: part.points for part in found.against.parts}
    rows = [
        (
            names.title(name),
            share_text(share),
            _cell(first, name),
            _cell(second, name),
            points_text(points[name], signed=True),
        )
        for name, share in found.weighed.by_name.items()
    ]
    total = (
        "Score",
        "",
        points_text(first.score.expected),
        points_text(second.score.expected),
        points_text(found.against.total, signed=True),
    )
    caption = f"Criterion by criterion; points are those by which {first.product.name} leads"
    return Table(caption, columns, (*rows, total))


def _cell(contender: Contender, criterion: str) -> str:
    standing = contender.standings[criterion]
    if criterion == "price" and isinstance(contender.paid, Paid):
        return money_text(contender.paid.amount, contender.paid.currency)
    if isinstance(standing.value, str):
        return standing.value
    return graded_words(standing)


def _cost_sentences(found: Versus, names: Naming) -> list[str]:
    said = []
    for each, rival in ((found.first, found.second), (found.second, found.first)):
        name, other = names.product(each.product.id), names.product(rival.product.id)
        level = each.draws_level_at
        if level is None:
            said.append("Neither price nor ownership is weighed, so no price would change the order.")
            break
        if level.outcome is Outcome.AT_PRICE and level.amount is not None:
            price = money_text(level.amount, found.buyer.currency)
            said.append(f"{name} scores no less than {other} at {price} or below.")
        elif level.outcome is Outcome.ANY_PRICE and not rival.notices:
            said.append(f"{name} scores no less than {other} at any price.")
        elif level.outcome is Outcome.HELD_BACK:
            said.append(f"{name} is held back by a safety notice, whatever it costs.")
        elif level.outcome is Outcome.NO_PRICE:
            said.append(f"{name} scores less than {other} at any price, even for nothing.")
    return said


def _needs_words(contender: Contender, names: Naming) -> str:
    because = "; ".join(failure.because for failure in contender.sifted.failures)
    return f"{names.product(contender.product.id)}: {because}."
