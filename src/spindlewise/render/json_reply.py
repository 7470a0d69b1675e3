"""The whole reply to one buyer as JSON: the ranking's keys and what a reply says beside it."""

from spindlewise.answer.reply import Reply
from spindlewise.answer.trust import side_error
from spindlewise.catalog.catalog import Catalog
from spindlewise.decide.differences import Differences
from spindlewise.render.as_json import Json, number
from spindlewise.render.fragment import page_link
from spindlewise.render.json_budget import budget_json
from spindlewise.render.json_ladder import ladder_json
from spindlewise.render.json_owning import owned_json
from spindlewise.render.json_rank import break_even_json, price_json, rank_json, reception_json
from spindlewise.render.json_sureness import sureness_json
from spindlewise.render.json_swap import swap_json
from spindlewise.units import amount_text

SCHEMA = "spindlewise answer 1"


def reply_json(catalog: Catalog, reply: Reply) -> dict[str, Json]:
    """The whole reply without its schema key."""
    buyer, room = reply.ranking.buyer, reply.break_evens.room
    return {
        **rank_json(reply.ranking, reply.break_evens),
        "question": buyer.question,
        "weigh": page_link(catalog, buyer),
        "nothing_because": reply.nothing_because or None,
        "against_pick": [_against(f.against_pick) for f in reply.followers],
        "near_misses": [
            {
                "product": miss.product,
                "score": number(miss.score),
                "need": miss.failure.need,
                "because": miss.failure.because,
                "price": price_json(miss.paid),
            }
            for miss in reply.near_misses
        ],
        "reading": _reading(catalog, reply),
        "reading_of_excluded": {
            out.product: [reception_json(each) for each in reply.ranking.received[out.product].receptions]
            for out in reply.ranking.excluded
            if catalog.products[out.product].kind == "power pedal"
        },
        "reading_budgets": {
            told.product: budget_json(told.received.budget, told.received.reception.receiver)
            for told in ([reply.pick, *(f.placed for f in reply.followers)] if reply.pick else [])
        },
        "channel_freed_by_cadence": [
            {"product": each.product, "now": reception_json(each.now), "then": reception_json(each.then)}
            for each in reply.freed
        ],
        "ownership": {name: owned_json(owned, buyer.currency) for name, owned in reply.owned},
        "swap": swap_json(reply.swap) if reply.swap else None,
        "ladder": ladder_json(reply.climb) if reply.climb else None,
        "ladder_missing": reply.climb_missing or None,
        "pick_stays_first_up_to": break_even_json(room, buyer.currency),
        "pick_stays_first": room.outcome.value if room else None,
        "dearer_costs_no_points_beyond": None
        if reply.break_evens.flat_beyond is None
        else amount_text(reply.break_evens.flat_beyond, buyer.currency),
        "pick_price_ends": _end(reply),
        "weight_ranges": [
            {
                "criterion": found.criterion,
                "share": number(found.share),
                "low": number(found.low),
                "high": number(found.high),
                "low_rival": found.low_rival,
                "high_rival": found.high_rival,
            }
            for found in reply.outlook.ranges
        ],
        "smallest_change": _change(reply),
        **sureness_json(reply),
        "unknowns": [
            {"product": product, "criterion": criterion, "because": why}
            for product, criterion, why in reply.unknowns
        ],
        "disclosures": [
            {
                "product": name,
                "unit": found.unit,
                "returned": found.returned,
                "commission": found.commission,
                "source": found.source,
            }
            for name, found in reply.disclosures
        ],
        "safety_notices": [
            {
                "product": name,
                "date": notice.date.isoformat(),
                "what": notice.what,
                "action": notice.action,
                "issued_by": notice.issued_by,
            }
            for name, notice in reply.notices
        ],
        "cautions": list(reply.swap.cautions if reply.swap else reply.cautions),
        "invented": None if catalog.settings.invented == "no" else catalog.settings.invented,
        "budget": None if buyer.budget_amount is None else amount_text(buyer.budget_amount, buyer.currency),
    }


def _end(reply: Reply) -> Json:
    end = reply.offer_end
    if end is None:
        return None
    return {"last_day": end.last_day.isoformat(), "days_left": end.days_left, "after": price_json(end.after)}


def _against(found: Differences) -> dict[str, Json]:
    return {
        "product": found.product,
        "points": number(found.total),
        "parts": {part.criterion: number(part.points) for part in found.parts},
    }


def _reading(catalog: Catalog, reply: Reply) -> list[Json]:
    pick = reply.pick
    if pick is None:
        return []
    product, entries = catalog.products[pick.product], []
    for reception in pick.received.receptions:
        error = side_error(product, reception, reply.ranking.buyer)
        doubled: Json = None
        if error is not None:
            doubled = {
                "balance_of": error.basis,
                "sensor_side": error.sensor_side,
                "low_pct": number(error.low_pct),
                "expected_pct": number(error.expected_pct),
                "high_pct": number(error.high_pct),
                "low_w": number(error.low_w),
                "expected_w": number(error.expected_w),
                "high_w": number(error.high_w),
            }
        entries.append({**reception_json(reception), "doubled_side": doubled})
    return list(entries)


def _change(reply: Reply) -> Json:
    change = reply.outlook.change
    if change is None:
        return None
    shares = zip(reply.ranking.table.criteria, change.shares, strict=True)
    return {"product": change.product, "shares": {name: number(float(share)) for name, share in shares}}
