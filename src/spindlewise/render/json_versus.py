"""Two products side by side as JSON."""

from spindlewise.answer.versus import Contender, Versus
from spindlewise.render.as_json import Json, number
from spindlewise.render.json_rank import (
    break_even_json,
    not_known_json,
    price_json,
    reception_json,
    span_json,
    standing_json,
)
from spindlewise.render.json_swap import swap_json

SCHEMA = "spindlewise versus 1"


def versus_json(found: Versus) -> dict[str, Json]:
    """The whole comparison without its schema key."""
    return {
        "as_of": found.swap.day.isoformat(),
        "buyer": found.buyer.id,
        "currency": found.buyer.currency,
        "criteria": {name: number(share) for name, share in found.weighed.by_name.items()},
        "level": found.level,
        "level_only_by": not_known_json(found.level_only_by),
        "points_of_the_first": number(found.against.total),
        "parts": {part.criterion: number(part.points) for part in found.against.parts},
        "products": [_contender(each, found.buyer.currency) for each in (found.first, found.second)],
        "swap": swap_json(found.swap),
    }


def _contender(each: Contender, currency: str) -> dict[str, Json]:
    level = each.draws_level_at
    return {
        "product": each.product.id,
        "score": span_json(each.score),
        "merits": {
            name: {**span_json(merit), **standing_json(each.standings[name])}
            for name, merit in each.merits.items()
        },
        "price": price_json(each.paid),
        "draws_level_at": break_even_json(level, currency),
        "draws_level_outcome": level.outcome.value if level else None,
        "reading": [reception_json(reception) for reception in each.received.receptions],
        "fails": [failure.because for failure in each.sifted.failures],
        "unchecked": list(each.sifted.unchecked),
        "safety_notices": [notice.what for notice in each.notices],
    }
