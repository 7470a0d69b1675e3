"""What promised firmware would change, if it came: a what-if, never counted in a ranking."""

from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Ranking, rank
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.as_of import links
from spindlewise.reception.reading_mode import Reception


@dataclass(frozen=True, slots=True)
class Promise:
    """One product on one receiver, as it is and as it would be with the firmware that its maker promises."""

    product: str
    firmware: tuple[str, ...]
    now: Reception
    then: Reception


@dataclass(frozen=True, slots=True)
class WhatIf:
    """Promises that would change what the buyer sees, and the pick if all of them were kept."""

    promises: tuple[Promise, ...]
    pick_then: str | None
    changes_pick: bool


def promised(desk: Desk, buyer: Buyer, ranking: Ranking) -> WhatIf:
    """Every promise that would show on one of the buyer's receivers, by product, then receiver."""
    now, then = desk.received(buyer), desk.received(buyer, with_promised=True)
    found = []
    for name, product in desk.catalog.products.items():
        said = {p.firmware for state in links(product, desk.day) for p in state.promised}
        if not said:
            continue
        for before, after in zip(now[name].receptions, then[name].receptions, strict=True):
            if seen(before) != seen(after):
                found.append(Promise(name, tuple(sorted(said)), before, after))
    if not found:
        pick = ranking.pick.product if ranking.pick else None
        return WhatIf((), pick, False)
    what_if = rank(desk, buyer, with_promised=True, barred=ranking.barred)
    picks = [r.pick.product if r.pick else None for r in (ranking, what_if)]
    return WhatIf(tuple(found), picks[1], picks[0] != picks[1])


def seen(reception: Reception) -> tuple[str, str, str]:
    """What the rider sees of a reception: mode, balance, stroke metrics."""
    return reception.mode, reception.balance, reception.stroke_metrics
