"""One product with each published buyer: its place, what it shows there, and what would make it first."""

from dataclasses import dataclass

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.ranking import Placed
from spindlewise.answer.reply import Reply
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.site.places import place_text
from spindlewise.units import money_text


@dataclass(frozen=True, slots=True)
class PlaceWithBuyer:
    """How the product fares with one buyer: its place, or why it is out."""

    buyer: str
    name: str
    rank: int | None
    place: str
    held_back: bool
    is_pick: bool
    level_with_pick: bool
    shows: tuple[tuple[str, str], ...]
    """Each of the buyer's receivers, and what it shows of the product."""
    first_at: str
    """What would make it first: the price at which it draws level, or why no price does."""
    because: tuple[str, ...]


def buyer_places(name: str, reply: Reply) -> dict[str, PlaceWithBuyer]:
    """Every product with one buyer, by the product's id."""
    placed = {each.product: each for each in reply.ranking.placed}
    return {product: _place(name, reply, product, placed.get(product)) for product in reply.ranking.received}


def _place(name: str, reply: Reply, product: str, placed: Placed | None) -> PlaceWithBuyer:
    ranking, pick = reply.ranking, reply.pick
    receptions = ranking.received[product].receptions
    is_pick = pick is not None and pick.product == product
    return PlaceWithBuyer(
        buyer=name,
        name=ranking.buyer.name,
        rank=placed.rank if placed else None,
        place=place_text(placed) if placed else "",
        held_back=placed is not None and placed.held_back,
        is_pick=is_pick,
        level_with_pick=pick is not None and product in pick.level_with,
        shows=tuple((r.receiver, "unknown" if r.mode == "unknown" else r.mode) for r in receptions),
        first_at=first_at(reply.break_evens, product, ranking.buyer.currency),
        because=() if placed else tuple(f.because for f in ranking.sifted[product].failures),
    )


def first_at(even: BreakEvens, product: str, currency: str) -> str:
    """What would make a product first for a buyer, as a cell."""
    if product in even.out:
        amount = even.out[product].amount
        return f"in and level at {money_text(amount, currency)} or less" if amount is not None else "no price"
    found = even.against_leader.get(product)
    if found is None:
        return _stands(even.room, currency)
    if found.outcome is Outcome.AT_PRICE and found.amount is not None:
        return f"level at {money_text(found.amount, currency)} or less"
    if found.outcome is Outcome.ANY_PRICE:
        return "level at any price"
    return "held back at any price" if found.outcome is Outcome.HELD_BACK else "no price"


def _stands(room: BreakEven | None, currency: str) -> str:
    if room is not None and room.outcome is Outcome.AT_PRICE and room.amount is not None:
        return f"stands first, up to {money_text(room.amount, currency)}"
    return "stands first"
