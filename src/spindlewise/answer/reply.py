"""The reply to one buyer: the pick, why, what nearly made it, what moves, what would change it."""

from collections.abc import Sequence
from dataclasses import dataclass

from spindlewise.answer.break_evens import BreakEvens, break_evens
from spindlewise.answer.crank_caution import CrankCaution, crank_caution, reading_if_left
from spindlewise.answer.desk import Desk
from spindlewise.answer.doubts import Doubts, doubts
from spindlewise.answer.freed_channel import Freed, freed
from spindlewise.answer.gram_worth import GramWorth, gram_worth
from spindlewise.answer.ladder import Climb, climb
from spindlewise.answer.missing import NoAnswer
from spindlewise.answer.near_misses import NearMiss, near_misses
from spindlewise.answer.notices import notices_told
from spindlewise.answer.offer_end import OfferEnd, offer_end
from spindlewise.answer.outlook import Outlook, outlook
from spindlewise.answer.owning import Owned, own, states_riding
from spindlewise.answer.promised import WhatIf, promised
from spindlewise.answer.ranking import Placed, Ranking, rank
from spindlewise.answer.swap import Swap, swap
from spindlewise.answer.trades import Trade, trades
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.product import Disclosure, SafetyNotice
from spindlewise.decide.differences import Differences
from spindlewise.reception.budget import Budget

FOLLOWERS = 3
"""So many places behind the pick are explained in a reply."""


@dataclass(frozen=True, slots=True)
class Follower:
    """A place beside or behind the pick, and where it gains and loses against it."""

    placed: Placed
    against_pick: Differences


@dataclass(frozen=True, slots=True)
class Reply:
    """All that one buyer is told. Where nothing can be recommended, `nothing_because` says why."""

    ranking: Ranking
    pick: Placed | None
    nothing_because: str
    followers: tuple[Follower, ...]
    near_misses: tuple[NearMiss, ...]
    break_evens: BreakEvens
    outlook: Outlook
    doubts: Doubts
    trades: tuple[Trade, ...]
    what_if: WhatIf
    freed: tuple[Freed, ...]
    """Where the channel of a separate cadence sensor would change what is seen."""
    offer_end: OfferEnd | None
    """When the pick's price runs out and what holds then; None where it has no last day."""
    owned: tuple[tuple[str, Owned], ...]
    """The cost of owning the pick and its followers; empty where the buyer says nothing of years or hours."""
    crank: CrankCaution | None
    crank_left: Budget | None
    """The pick's reading were the crank length left wrong: a what-if that no score counts."""
    gram_worth: GramWorth | str
    """What the swap's grams are worth on the buyer's climb, or what is missing to tell."""
    swap: Swap | None
    climb: Climb | None
    climb_missing: str
    unknowns: tuple[tuple[str, str, str], ...]
    """Product, criterion and what is not known of it, for the pick and its followers."""
    disclosures: tuple[tuple[str, Disclosure], ...]
    notices: tuple[tuple[str, SafetyNotice], ...]
    """Standing safety notices on all that is placed and on the present pedals; no weight can hide one."""
    cautions: tuple[str, ...]


def reply_to(desk: Desk, buyer: Buyer, barred: frozenset[str] = frozenset()) -> Reply:
    """Work out the whole reply; raises NoMarket where the region or currency cannot be served.

    `barred` products stay out: they fail a need that is not shown.
    """
    ranking = rank(desk, buyer, barred=barred)
    pick = ranking.pick
    followers = _followers(ranking, pick)
    steps, steps_missing = _climb(desk, ranking)
    moved = _swap(desk, buyer, pick)
    told = [pick, *(f.placed for f in followers)] if pick else []
    missed, crank = near_misses(ranking), crank_caution(buyer)
    products = desk.catalog.products
    return Reply(
        ranking=ranking,
        pick=pick,
        nothing_because=_nothing_because(ranking),
        followers=followers,
        near_misses=missed,
        break_evens=break_evens(desk, ranking),
        outlook=outlook(desk, ranking),
        doubts=doubts(ranking),
        trades=trades(desk, buyer, ranking.weighed),
        what_if=promised(desk, buyer, ranking),
        freed=freed((products[name] for name in _in_question(told, missed)), buyer, desk.day),
        offer_end=offer_end(desk, buyer, pick.product, pick.paid) if pick else None,
        owned=_owned(desk, buyer, told),
        crank=crank,
        crank_left=reading_if_left(desk, buyer, pick, crank) if pick and crank else None,
        gram_worth=gram_worth(buyer, moved.weight) if moved else "the present pedals",
        swap=moved,
        climb=steps,
        climb_missing=steps_missing,
        unknowns=tuple(u for placed in told for u in _unknowns(placed)),
        disclosures=tuple((p.product, products[p.product].disclosure) for p in told),
        notices=notices_told(desk, ranking),
        cautions=desk.catalog.settings.cautions,
    )


def _owned(desk: Desk, buyer: Buyer, told: Sequence[Placed]) -> tuple[tuple[str, Owned], ...]:
    if not states_riding(buyer):
        return ()
    market, products = desk.market(buyer.region, buyer.currency), desk.catalog.products
    return tuple(
        (each.product, own(products[each.product], desk.catalog, desk.yardstick, market, buyer))
        for each in told
    )


def _in_question(told: Sequence[Placed], missed: Sequence[NearMiss]) -> tuple[str, ...]:
    return (*(placed.product for placed in told), *(miss.product for miss in missed))


def _followers(ranking: Ranking, pick: Placed | None) -> tuple[Follower, ...]:
    """The next places; those that are level with the pick come before others that score more."""
    if pick is None:
        return ()
    others = ranking.placed[1:]
    told = sorted(others, key=lambda placed: placed.product not in pick.level_with)[:FOLLOWERS]
    return tuple(
        Follower(placed, ranking.against(placed.product, pick.product)) for placed in others if placed in told
    )


def _nothing_because(ranking: Ranking) -> str:
    if ranking.pick:
        return ""
    if ranking.placed:
        return "everything that no need keeps out is held back by a safety notice"
    return "nothing in the catalog meets all the needs"


def _swap(desk: Desk, buyer: Buyer, pick: Placed | None) -> Swap | None:
    old = desk.catalog.products.get(buyer.present_pedals)
    if pick is None or old is None:
        return None
    new = desk.catalog.products[pick.product]
    return swap(old, new, desk.day, buyer, desk.catalog.settings.cautions)


def _climb(desk: Desk, ranking: Ranking) -> tuple[Climb | None, str]:
    try:
        return climb(desk, ranking), ""
    except NoAnswer as none:
        return None, none.message


def _unknowns(placed: Placed) -> list[tuple[str, str, str]]:
    figures = [
        (placed.product, criterion, standing.source)
        for criterion, standing in placed.standings.items()
        if criterion in placed.merits and standing.origin == "unknown"
    ]
    return figures + [(placed.product, "need", unchecked) for unchecked in placed.unchecked]
