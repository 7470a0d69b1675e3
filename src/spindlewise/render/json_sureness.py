"""How sure a reply is, what its weights trade, and what is odd about the question, as JSON."""

from spindlewise.answer.promised import Promise
from spindlewise.answer.reply import Reply
from spindlewise.decide.second_opinions import SecondOpinion
from spindlewise.decide.stability import Stability
from spindlewise.render.as_json import Json, number
from spindlewise.render.json_rank import reception_json
from spindlewise.render.json_swap import climb_json, crank_json
from spindlewise.units import amount_text


def sureness_json(reply: Reply) -> dict[str, Json]:
    """The keys that a reply has beside the ranking's."""
    currency = reply.ranking.buyer.currency
    found, what_if = reply.outlook.stability, reply.what_if
    return {
        "stability": stability_json(found) if found is not None else None,
        "second_opinions": [_opinion(each) for each in reply.outlook.second_opinions],
        "trades": [
            {
                "criterion": each.criterion,
                "share": number(each.share),
                "amount": number(each.amount),
                "unit": each.unit,
                "from": each.worse or None,
                "to": each.better or None,
                "points": number(each.points),
                "money": None if each.money is None else amount_text(each.money, currency),
                "currency": currency,
            }
            for each in reply.trades
        ],
        "doubts": _doubts(reply),
        "promised": {
            "promises": [_promise(each) for each in what_if.promises],
            "pick_then": what_if.pick_then,
            "changes_pick": what_if.changes_pick,
        },
        "crank_setting": crank_json(reply.crank),
        "climb": climb_json(reply.gram_worth),
    }


def stability_json(found: Stability) -> dict[str, Json]:
    """Chances of each place and of beating each other, with their standard errors, by product."""
    errors = found.standard_error(found.first).tolist()
    return {
        "draws": found.draws,
        "seed": found.seed,
        "products": [
            {
                "product": name,
                "first": number(float(found.first[i])),
                "standard_error": number(errors[i]),
                "places": [number(float(chance)) for chance in found.places[i]],
                "beats": {
                    other: number(float(found.beats[i, j]))
                    for j, other in enumerate(found.products)
                    if j != i
                },
                "central_weights": None
                if found.first[i] == 0
                else [number(float(weight)) for weight in found.central_weights[i]],
            }
            for i, name in enumerate(found.products)
        ],
    }


def _opinion(each: SecondOpinion) -> dict[str, Json]:
    reason = each.reason
    return {
        "method": each.method,
        "first": each.first,
        "tau_b": number(each.tau_b),
        "reversed_by": list(reason.reversed_by) if reason else [],
        "stretched": [
            {
                "criterion": stretch.criterion,
                "share": number(stretch.share),
                "effective_share": number(stretch.effective_share),
            }
            for stretch in (reason.stretched if reason else ())
        ],
    }


def _doubts(reply: Reply) -> dict[str, Json]:
    found, pairs = reply.doubts, reply.ranking.weighed.pairs
    contradiction = pairs.contradiction if pairs else None
    return {
        "counted_twice": [
            {"kind": each.kind, "first": each.first, "second": each.second} for each in found.twice
        ],
        "all_alike": [each.criterion for each in found.alike],
        "without_effect": [{"criterion": each.criterion, "kind": each.kind} for each in found.idle],
        "nobody_left": [
            {"need": need, "would_bring_back": list(back)}
            for need, back in (found.nobody.relief if found.nobody else ())
        ],
        "budget_missed_by_little": [each.product for each in found.missed],
        "consistency_ratio": number(pairs.ratio) if pairs else None,
        "contradiction": {
            "more": contradiction.more,
            "than": contradiction.than,
            "times": number(contradiction.times),
            "fits": number(contradiction.fits),
        }
        if contradiction
        else None,
    }


def _promise(each: Promise) -> dict[str, Json]:
    return {
        "product": each.product,
        "firmware": list(each.firmware),
        "now": reception_json(each.now),
        "then": reception_json(each.then),
    }
