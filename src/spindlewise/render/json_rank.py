"""The ranking as JSON: the keys that other programs may rely on."""

from collections.abc import Sequence
from decimal import Decimal

from spindlewise.answer.break_evens import BreakEvens, OutAt
from spindlewise.answer.could_lead import CouldLead
from spindlewise.answer.level_reasons import LevelReasons, LevelWith, NotKnown
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.ranking import Placed, Ranking, Span
from spindlewise.answer.standing import Standing
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.reception.reading_mode import Reception
from spindlewise.render.as_json import Json, number
from spindlewise.units import amount_text

SCHEMA = "spindlewise rank 1"


def rank_json(ranking: Ranking, even: BreakEvens) -> dict[str, Json]:
    """The whole ranking without its schema key."""
    pick, reasons = ranking.pick, LevelReasons(ranking)
    return {
        "as_of": ranking.day.isoformat(),
        "buyer": ranking.buyer.id,
        "region": ranking.buyer.region,
        "currency": ranking.buyer.currency,
        "criteria": {name: number(share) for name, share in ranking.weighed.by_name.items()},
        "pick": pick.product if pick else None,
        "order": [
            {**placed_json(placed, even), "level_only_by": level_json(_told(reasons, placed, pick))}
            for placed in ranking.placed
        ],
        "excluded": [
            {
                "product": out.product,
                "because": [failure.because for failure in out.because],
                "needs": [failure.need for failure in out.because],
                "price": price_json(out.paid),
                **out_json(even.out.get(out.product), ranking.buyer.currency),
            }
            for out in ranking.excluded
        ],
    }


def _told(reasons: LevelReasons, placed: Placed, pick: Placed | None) -> tuple[LevelWith, ...]:
    """Of the pick, why it is level with each; of another, why with the pick: not of every two of hundreds."""
    if pick is None or placed.product == pick.product:
        return reasons.of(placed)
    return reasons.of(placed, only=pick.product)


def leads_json(leads: Sequence[CouldLead]) -> dict[str, Json]:
    """Under which weights each candidate would lead by most, null where no weights do it; no key for none."""
    if not leads:
        return {}
    return {
        "could_lead": {
            lead.product: None
            if lead.shares is None
            else {name: number(share) for name, share in lead.shares.items()}
            for lead in leads
        }
    }


def nothing_json(day: str, buyer: str, because: str) -> dict[str, Json]:
    """A ranking that could not be made, with the reason, in the same keys."""
    return {
        "as_of": day,
        "buyer": buyer,
        "criteria": {},
        "pick": None,
        "order": [],
        "excluded": [],
        "because": because,
    }


def placed_json(placed: Placed, even: BreakEvens) -> dict[str, Json]:
    """One place: score, merits with the figure and grade behind each, price, reading and break-even price."""
    found = even.against_leader.get(placed.product)
    return {
        "product": placed.product,
        "rank": placed.rank,
        "level_with": list(placed.level_with),
        "held_back": placed.held_back,
        "score": span_json(placed.score),
        "merits": {
            name: {**span_json(merit), **standing_json(placed.standings[name])}
            for name, merit in placed.merits.items()
        },
        "price": price_json(placed.paid),
        "break_even": break_even_json(found, placed.paid.currency),
        "break_even_outcome": found.outcome.value if found else None,
        "reading": [reception_json(reception) for reception in placed.received.receptions],
        "unchecked": list(placed.unchecked),
    }


def level_json(reasons: Sequence[LevelWith]) -> list[Json]:
    """Of those told of, which it is level with only by figures that nobody knows, and by which."""
    return [
        {
            "product": each.product,
            "not_known": not_known_json(each.only_by),
        }
        for each in reasons
        if each.only_by
    ]


def not_known_json(figures: Sequence[NotKnown]) -> list[Json]:
    """Figures that nobody knows in whole; `missing` names the parts, and is empty where all of it is."""
    return [
        {"product": each.product, "criterion": each.criterion, "missing": list(each.missing)}
        for each in figures
    ]


def span_json(span: Span) -> dict[str, Json]:
    """Low, expected and high."""
    return {"low": number(span.low), "expected": number(span.expected), "high": number(span.high)}


def standing_json(standing: Standing) -> dict[str, Json]:
    """The figure, its unit, its grade and where it comes from; the value is null where there is none."""
    value: Json = number(standing.value) if isinstance(standing.value, float | int) else standing.value
    if standing.criterion in ("price", "ownership") and isinstance(standing.value, float | int):
        value = amount_text(Decimal(repr(standing.value)), standing.unit)
    return {
        "value": value,
        "value_low": number(standing.low),
        "value_high": number(standing.high),
        "unit": standing.unit,
        "grade": standing.origin,
        "date": standing.date.isoformat() if standing.date else None,
        "source": standing.source,
        "note": standing.note,
    }


def price_json(paid: Paid | Unpriced) -> dict[str, Json]:
    """What is paid and the row of the log behind it; or null with the reason."""
    if isinstance(paid, Unpriced):
        return {"amount": None, "currency": None, "because": paid.because}
    row = paid.row
    return {
        "amount": amount_text(paid.amount, paid.currency),
        "currency": paid.currency,
        "kind": row.kind,
        "seller": row.seller,
        "date": row.date.isoformat(),
        "valid_until": row.valid_until.isoformat() if row.valid_until else None,
        "age_days": paid.age_days,
        "conversion": list(paid.conversion),
    }


def out_json(found: OutAt | None, currency: str) -> dict[str, Json]:
    """At which price a product that is out would be in and no worse than the first; or why at none."""
    if found is None or found.amount is None:
        return {"break_even": None, "break_even_outcome": found.because if found else None}
    amount: Json = {"amount": amount_text(found.amount, currency), "currency": currency}
    return {"break_even": amount, "break_even_outcome": "at this price or less"}


def break_even_json(found: BreakEven | None, currency: str) -> Json:
    """The price at which it scores as much as the first, or null."""
    if found is None or found.outcome is not Outcome.AT_PRICE or found.amount is None:
        return None
    return {"amount": amount_text(found.amount, currency), "currency": currency}


def reception_json(reception: Reception) -> dict[str, Json]:
    """What one receiver shows."""
    return {
        "receiver": reception.receiver,
        "mode": reception.mode,
        "at_least": reception.at_least,
        "at_most": reception.at_most,
        "protocol": reception.protocol,
        "firmware": reception.firmware,
        "since": reception.since or None,
        "channels_used": reception.channels_used,
        "balance": reception.balance,
        "stroke_metrics": reception.stroke_metrics,
        "because": list(reception.because),
    }
