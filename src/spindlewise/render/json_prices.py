"""Prices as JSON: a product's record, and what one price changes."""

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.price_change import PriceChange
from spindlewise.answer.price_record import PriceLine
from spindlewise.catalog.price_row import PriceRow
from spindlewise.render.as_json import Json
from spindlewise.render.json_rank import price_json, rank_json, span_json
from spindlewise.units import amount_text

HISTORY_SCHEMA = "spindlewise price history 1"
CHANGE_SCHEMA = "spindlewise price change 1"


def history_json(product: str, lines: tuple[PriceLine, ...], day: str) -> dict[str, Json]:
    """A product's price observations, oldest first."""
    return {
        "as_of": day,
        "product": product,
        "prices": [
            {
                **row_json(line.row),
                "state": line.state,
                "before": amount_text(line.before.amount, line.before.currency) if line.before else None,
            }
            for line in lines
        ],
    }


def change_json(change: PriceChange, row: PriceRow, even: BreakEvens, written: bool) -> dict[str, Json]:
    """The price, who moves, whether the pick changes, and the whole ranking after it."""
    before, after = change.before.pick, change.after.pick
    return {
        "as_of": change.after.day.isoformat(),
        "product": change.product,
        "price": row_json(row),
        "written": written,
        "pick_before": before.product if before else None,
        "pick_after": after.product if after else None,
        "pick_changes": change.pick_changes,
        "moves": [
            {
                "product": move.product,
                "move": move.way,
                "rank_before": move.before.rank if move.before else None,
                "rank_after": move.after.rank if move.after else None,
                "score_before": span_json(move.before.score) if move.before else None,
                "score_after": span_json(move.after.score) if move.after else None,
                "price_before": price_json(move.price_before),
                "price_after": price_json(move.price_after),
            }
            for move in change.moves
        ],
        "ranking": rank_json(change.after, even),
    }


def row_json(row: PriceRow) -> dict[str, Json]:
    """One line of the log."""
    return {
        "date": row.date.isoformat(),
        "region": row.region,
        "amount": amount_text(row.amount, row.currency),
        "currency": row.currency,
        "tax": row.tax,
        "kind": row.kind,
        "seller": row.seller,
        "valid_until": row.valid_until.isoformat() if row.valid_until else None,
        "source": row.source,
    }
