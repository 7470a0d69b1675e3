"""Answers read again, as JSON."""

from collections.abc import Sequence

from spindlewise.answer.recheck import Rechecked
from spindlewise.catalog.catalog import Catalog
from spindlewise.render.as_json import Json
from spindlewise.render.naming import naming
from spindlewise.render.words_recheck import reply_again, told_notices

SCHEMA = "spindlewise recheck 1"


def recheck_json(catalog: Catalog, found: Sequence[Rechecked], day: str) -> dict[str, Json]:
    """Every logged answer with its verdict, without the schema key."""
    names = naming(catalog)
    return {
        "as_of": day,
        "answers": [
            {
                "line": each.entry.line,
                "buyer": each.entry.buyer.id,
                "answered_as_of": each.entry.day.isoformat(),
                "verdict": each.verdict,
                "pick_then": each.entry.pick,
                "pick_now": each.pick_now,
                "because": [
                    {"product": c.product, "what": c.what, "before": c.before, "now": c.now}
                    for c in each.because
                ],
                "note": each.note or None,
                "reply": (
                    reply_again(each, names, told_notices(catalog, each, day))
                    if each.verdict == "no longer holds"
                    else None
                ),
            }
            for each in found
        ],
    }
