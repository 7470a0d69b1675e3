"""What a price changes: the ranking before and after, who moves, and whether the pick does."""

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from spindlewise.answer.desk import Desk
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.ranking import Placed, Ranking, rank
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.price_rows import with_one_more, without_those

WHAT_IF = "what if"
"""The seller of a price that is not yet true."""


@dataclass(frozen=True, slots=True)
class Move:
    """One product before and after; None where it was not or is no longer among the candidates."""

    product: str
    before: Placed | None
    after: Placed | None
    price_before: Paid | Unpriced
    price_after: Paid | Unpriced

    @property
    def way(self) -> Literal["up", "down", "stays", "comes in", "drops out"]:
        """Which way the product moves by its rank."""
        if self.before is None:
            return "comes in"
        if self.after is None:
            return "drops out"
        if self.before.rank == self.after.rank:
            return "stays"
        return "up" if self.after.rank < self.before.rank else "down"


@dataclass(frozen=True, slots=True)
class PriceChange:
    """Both rankings, and every product that stands in either, in the order of the later one."""

    product: str
    before: Ranking
    after: Ranking
    moves: tuple[Move, ...]

    @property
    def pick_changes(self) -> bool:
        """Whether another product is recommended than before."""
        return _name(self.before.pick) != _name(self.after.pick)


def with_row(desk: Desk, row: PriceRow) -> Desk:
    """The desk as it would be with one more price in its log, on the same day."""
    return Desk(replace(desk.catalog, prices=with_one_more(desk.catalog.prices, row)), desk.day)


def at_price(desk: Desk, product: str, region: str, currency: str, amount: Decimal) -> Desk:
    """The desk as it would be if this were all that the product costs in the region, tax in, on the day.

    It stands in place of all other prices of the product there, higher or lower.
    """
    row = PriceRow(
        0, desk.day, product, region, currency, amount, "in", "street", WHAT_IF, None, "not yet true"
    )
    others = without_those(desk.catalog.prices, product, region)
    return Desk(replace(desk.catalog, prices=with_one_more(others, row)), desk.day)


def price_change(before: Desk, after: Desk, buyer: Buyer, product: str) -> PriceChange:
    """The buyer's ranking on both desks; raises NoMarket where a desk cannot serve the buyer."""
    first, second = rank(before, buyer), rank(after, buyer)
    placed = [{p.product: p for p in ranking.placed} for ranking in (first, second)]
    names = [*placed[1], *(name for name in placed[0] if name not in placed[1])]
    moves = tuple(
        Move(name, placed[0].get(name), placed[1].get(name), first.prices[name], second.prices[name])
        for name in names
    )
    return PriceChange(product, first, second, moves)


def _name(placed: Placed | None) -> str | None:
    return placed.product if placed else None
