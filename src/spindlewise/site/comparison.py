"""A region's comparison to take along: as a sheet, as JSON, as Markdown; the same numbers."""

from dataclasses import dataclass

from spindlewise.answer.break_evens import BreakEvens, break_evens
from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.ranking import Ranking, rank
from spindlewise.render.as_json import lined_json
from spindlewise.render.as_markdown import as_markdown
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph
from spindlewise.render.json_rank import SCHEMA, rank_json
from spindlewise.render.naming import Naming, listed, naming
from spindlewise.render.rank_sheet import rank_sheet
from spindlewise.render.words_notices import notice_blocks
from spindlewise.render.words_rank import (
    excluded_sentences,
    notice_of_invention,
    rank_table,
    weights_words,
)
from spindlewise.site.usual import usual_buyer


@dataclass(frozen=True, slots=True)
class Comparison:
    """Everything that a region sells, ranked, with the price at which each would lead."""

    ranking: Ranking
    even: BreakEvens


def region_comparison(desk: Desk, region: str) -> Comparison | None:
    """The comparison under the weights that stand in where nobody states any; None without a market."""
    try:
        ranking = rank(desk, usual_buyer(desk.catalog, region))
    except NoMarket:
        return None
    return Comparison(ranking, break_evens(desk, ranking))


def comparison_csv(desk: Desk, comparison: Comparison) -> bytes:
    """The sheet (RFC 4180): units in its head, a status by each figure, no field that runs as a formula."""
    return rank_sheet(desk.catalog, comparison.ranking, comparison.even).encode()


def comparison_json(comparison: Comparison) -> bytes:
    """The keys that `rank --json` has."""
    return lined_json(SCHEMA, rank_json(comparison.ranking, comparison.even)).encode()


def comparison_markdown(desk: Desk, comparison: Comparison) -> bytes:
    """The table as Markdown with the notices that stand, and below it who is out and why."""
    return as_markdown(_blocks(desk, comparison)).encode()


def _blocks(desk: Desk, comparison: Comparison) -> list[Block]:
    ranking, settings, names = comparison.ranking, desk.catalog.settings, naming(desk.catalog)
    region = settings.regions[ranking.buyer.region].name
    blocks: list[Block] = [
        Heading(f"{settings.title}: power pedals, {region}", 1),
        *notice_of_invention(desk.catalog),
        Paragraph(f"As of {ranking.day.isoformat()}, prices in {ranking.buyer.currency}, tax in."),
        Paragraph(f"Scores run from 0 to 100. {weights_words(ranking, names)}"),
    ]
    if ranking.placed:
        blocks.append(rank_table(ranking, ranking.placed, names, comparison.even))
        blocks.append(Paragraph(" ".join(_marks(comparison, names))))
    held = [placed.product for placed in ranking.placed if placed.held_back]
    blocks += notice_blocks(desk.catalog, held, ranking.day, names)
    if ranking.excluded:
        blocks += [Heading("Out, and why"), Bullets(excluded_sentences(ranking, names))]
    return blocks


def _marks(comparison: Comparison, names: Naming) -> list[str]:
    said = ["“First at” is the highest price at which a pedal would score no less than the first."]
    if any(placed.level_with for placed in comparison.ranking.placed):
        said.append("Pedals that share a range of places are level: the figures cannot tell them apart.")
    held = [names.product(placed.product) for placed in comparison.ranking.placed if placed.held_back]
    if held:
        said.append(f"Held back by a safety notice, without a place: {listed(held)}.")
    return said
