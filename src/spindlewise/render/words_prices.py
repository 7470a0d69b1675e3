"""Prices in words: a product's record, and what one price changes."""

from collections.abc import Sequence

from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.price_change import Move, PriceChange
from spindlewise.answer.price_record import PriceLine
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.price_row import PriceRow
from spindlewise.render.blocks import Block, Column, Heading, Paragraph, Table
from spindlewise.render.naming import Naming, naming
from spindlewise.render.words_notices import notice_blocks
from spindlewise.render.words_rank import HELD_BACK, frame_words, notice_of_invention
from spindlewise.render.words_why import place_words
from spindlewise.units import money_text, points_text

TAXES = {"in": "tax in", "out": "before tax"}


MOST_TOLD = 40
"""Design choice, no source: a screen or two of prices."""


def history_blocks(
    catalog: Catalog, product: str, lines: Sequence[PriceLine], day: str, whole: bool = True
) -> tuple[Block, ...]:
    """A product's price observations, oldest first.

    Unless it is to be the whole record: those in force and the newest MOST_TOLD, and how many more there are.
    """
    name = naming(catalog).product(product)
    head = Heading(f"What the {name} has cost", 1)
    if not lines:
        return head, Paragraph(f"No price was seen by {day}.", "important")
    newest = len(lines) - MOST_TOLD
    told = [line for at, line in enumerate(lines) if whole or at >= newest or line.state == "in force"]
    columns = (
        Column("Seen"),
        Column("Region"),
        Column("Price", "right"),
        Column("Before", "right", spare=1),
        Column("Tax", spare=3),
        Column("Kind", spare=2),
        Column("Seller"),
        Column("Until", spare=4),
        Column("State"),
    )
    rows = tuple(
        (
            line.row.date.isoformat(),
            line.row.region,
            money_text(line.row.amount, line.row.currency),
            "" if line.before is None else money_text(line.before.amount, line.before.currency),
            TAXES[line.row.tax],
            line.row.kind,
            line.row.seller,
            line.row.valid_until.isoformat() if line.row.valid_until else "",
            line.state,
        )
        for line in told
    )
    more = len(lines) - len(told)
    earlier = "1 earlier price is" if more == 1 else f"{more:,} earlier prices are"
    rest = f"{earlier} not shown: give --all to see the whole record."
    said = (
        f"As of {day}. Before: what the same seller asked when last seen, for the same kind of price; "
        "a fall is told against nothing else."
    )
    return (
        head,
        Table("", columns, rows),
        *((Paragraph(rest, "quiet"),) if more else ()),
        Paragraph(said, "quiet"),
        *notice_of_invention(catalog),
    )


def change_blocks(catalog: Catalog, change: PriceChange, title: str, true: bool) -> tuple[Block, ...]:
    """The table before and after, with the moves, and whether the pick changes as the last word.

    `true` says that the price stands in the log, rather than being asked about.
    """
    names = naming(catalog)
    columns = (
        Column("Place", "right"),
        Column("Was", "right"),
        Column("Move"),
        Column("Product"),
        Column("Score", "right"),
        Column("Was", "right", spare=2),
        Column("Price", "right"),
        Column("Was", "right", spare=1),
    )
    rows = tuple(_move_row(move, names) for move in change.moves)
    held = [move.product for move in change.moves if move.after and move.after.held_back]
    return (
        Heading(title, 1),
        Paragraph(f"For {change.after.buyer.name}. {frame_words(change.after.buyer, change.after)}", "quiet"),
        Table("", columns, rows),
        *((Paragraph(HELD_BACK, "quiet"),) if held else ()),
        *notice_blocks(catalog, held, change.after.day, names),
        *notice_of_invention(catalog),
        Paragraph(pick_change_words(change, names, true), "important"),
    )


def pick_change_words(change: PriceChange, names: Naming, true: bool) -> str:
    """In one line: whether another product is recommended than before."""
    before, after = change.before.pick, change.after.pick
    if before is None and after is None:
        return "There is no pick, before or after."
    if after is None:
        return f"The pick {'is' if true else 'would be'} gone: nothing is left that meets the needs."
    if before is None:
        verb = "becomes" if true else "would become"
        return f"{names.product(after.product)} {verb} the pick; there was none."
    if not change.pick_changes:
        verb = "stays" if true else "would stay"
        return f"The pick {verb} the same: {names.product(after.product)}."
    verb = "changes" if true else "would change"
    return f"The pick {verb} from {names.product(before.product)} to {names.product(after.product)}."


def row_words(row: PriceRow, names: Naming) -> str:
    """One price observation in a sentence."""
    until = f", until {row.valid_until.isoformat()}" if row.valid_until else ""
    return (
        f"{names.product(row.product)}, {row.region}: {money_text(row.amount, row.currency)}, "
        f"{TAXES[row.tax]}, {row.kind}, {row.seller}, {row.date.isoformat()}{until}"
    )


def _move_row(move: Move, names: Naming) -> tuple[str, ...]:
    return (
        place_words(move.after) if move.after else "out",
        place_words(move.before) if move.before else "out",
        "" if move.way == "stays" or _held_throughout(move) else move.way,
        names.product(move.product),
        points_text(move.after.score.expected) if move.after else "",
        points_text(move.before.score.expected) if move.before else "",
        _paid(move.price_after),
        _paid(move.price_before) if move.price_before != move.price_after else "",
    )


def _held_throughout(move: Move) -> bool:
    return bool(move.before and move.after and move.before.held_back and move.after.held_back)


def _paid(paid: Paid | Unpriced) -> str:
    return "no price" if isinstance(paid, Unpriced) else money_text(paid.amount, paid.currency)
