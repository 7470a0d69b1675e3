"""The brief answer: what fits into a message, for many questions at once."""

from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.near_misses import NearMiss, near_misses
from spindlewise.answer.notices import notices_told
from spindlewise.answer.ranking import Placed, Ranking, rank
from spindlewise.answer.swap import Swap, swap
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.product import Disclosure, SafetyNotice
from spindlewise.decide.differences import Differences


@dataclass(frozen=True, slots=True)
class Brief:
    """Pick, the next one, the nearest miss, what moves, and what must be said with it."""

    ranking: Ranking
    pick: Placed | None
    next: Placed | None
    against_pick: Differences | None
    near_miss: NearMiss | None
    swap: Swap | None
    disclosure: Disclosure | None
    notices: tuple[tuple[str, SafetyNotice], ...]


def brief(desk: Desk, buyer: Buyer) -> Brief:
    """Answer one buyer in brief; raises NoMarket as `rank` does."""
    ranking = rank(desk, buyer)
    pick = ranking.pick
    follower = ranking.place_at(1) if pick is not None and len(ranking.order) > 1 else None
    missed = near_misses(ranking)
    return Brief(
        ranking=ranking,
        pick=pick,
        next=follower,
        against_pick=ranking.against(follower.product, pick.product) if follower and pick else None,
        near_miss=missed[0] if missed else None,
        swap=_swap(desk, buyer, pick),
        disclosure=desk.catalog.products[pick.product].disclosure if pick else None,
        notices=notices_told(desk, ranking),
    )


def _swap(desk: Desk, buyer: Buyer, pick: Placed | None) -> Swap | None:
    old = desk.catalog.products.get(buyer.present_pedals)
    if pick is None or old is None:
        return None
    new = desk.catalog.products[pick.product]
    moves = desk.number("moves", (buyer.bike, buyer.shoes, buyer.body))
    key = ("swap", old.id, new.id, moves)
    return desk.kept(key, lambda: swap(old, new, desk.day, buyer, desk.catalog.settings.cautions))
