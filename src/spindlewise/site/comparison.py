"""A region's comparison to take along: as a sheet, as JSON, as Markdown; the same numbers."""

from dataclasses import dataclass

from spindlewise.answer.break_evens import BreakEvens, break_evens
from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.ranking import Ranking, rank
from spindlewise.render.as_json import as_json
from spindlewise.render.as_markdown import as_markdown
from spindlewise.render.json_rank import SCHEMA, rank_json
from spindlewise.render.rank_sheet import rank_sheet
from spindlewise.render.words_rank import rank_blocks
from spindlewise.site.usual import usual_buyer


@dataclass(frozen=True, slots=True)
class Comparison:
    """Everything that meets a buyer's needs, ranked, with the price at which each would lead."""

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
    return as_json(SCHEMA, rank_json(comparison.ranking, comparison.even)).encode()


def comparison_markdown(desk: Desk, comparison: Comparison) -> bytes:
    """The ranking as Markdown, its table first, then who is out and why."""
    return as_markdown(rank_blocks(desk.catalog, comparison.ranking, comparison.even)).encode()
