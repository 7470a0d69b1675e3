"""Two products side by side for one buyer: who gains where, what preferring one costs, what moves."""

from dataclasses import dataclass

import numpy as np

from spindlewise.answer.break_evens import price_scale
from spindlewise.answer.desk import Desk
from spindlewise.answer.level_reasons import NotKnown, level_only_by
from spindlewise.answer.needs import Sifted, sift
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.ranking import Span, merit_table, standings_of
from spindlewise.answer.received import Received
from spindlewise.answer.standing import Standing
from spindlewise.answer.swap import Swap, swap
from spindlewise.answer.weighing import Weighed, weigh
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.as_of import standing_notices
from spindlewise.catalog.product import Disclosure, Product, SafetyNotice
from spindlewise.decide.break_even import BreakEven, break_even
from spindlewise.decide.differences import Differences, differences
from spindlewise.decide.level import levels
from spindlewise.decide.score import score


@dataclass(frozen=True, slots=True)
class Contender:
    """One of the two, with all that the comparison rests on."""

    product: Product
    score: Span
    merits: dict[str, Span]
    standings: dict[str, Standing]
    paid: Paid | Unpriced
    received: Received
    sifted: Sifted
    notices: tuple[SafetyNotice, ...]
    draws_level_at: BreakEven | None
    """The price at which it draws level with the other; None where neither price nor ownership counts."""

    @property
    def disclosure(self) -> Disclosure:
        """How its unit was obtained."""
        return self.product.disclosure


@dataclass(frozen=True, slots=True)
class Versus:
    """The comparison; `against` is the first against the second, criterion by criterion, largest first."""

    buyer: Buyer
    weighed: Weighed
    first: Contender
    second: Contender
    against: Differences
    level: bool
    level_only_by: tuple[NotKnown, ...]
    """Where they are level: what is not known of them, if they are so by that alone."""
    swap: Swap
    """From the first to the second."""


def versus(desk: Desk, buyer: Buyer, first: str, second: str) -> Versus:
    """Compare two products of the catalog, whether or not they meet the buyer's needs.

    Raises NoMarket as `rank` does, and ValueError for one product named twice.
    """
    if first == second:
        raise ValueError(f"{first} is named twice | name two different products")
    names = (first, second)
    weighed = weigh(buyer.weights)
    table = merit_table(desk, buyer, names, weighed.criteria)
    scores = score(table, weighed.shares)
    market = desk.market(buyer.region, buyer.currency)
    standings = standings_of(desk, buyer, weighed.criteria)
    received = desk.received(buyer)
    held = np.array([name in market.held_back for name in names], dtype=np.bool_)
    scale, without = price_scale(desk, buyer, table, weighed)
    level_at: tuple[BreakEven | None, ...] = (None, None)
    if scale.terms:
        level_at = break_even(scale, without, scores.expected[::-1], held, held[::-1])

    def contender(row: int) -> Contender:
        name = names[row]
        product = desk.catalog.products[name]
        return Contender(
            product=product,
            score=Span(float(scores.low[row]), float(scores.expected[row]), float(scores.high[row])),
            merits={
                criterion: Span(*(float(part[row, k]) for part in (table.low, table.expected, table.high)))
                for k, criterion in enumerate(table.criteria)
            },
            standings=dict(standings[name]),
            paid=market.prices[name],
            received=received[name],
            sifted=sift(product, buyer, desk.day, market.prices[name], received[name].reception),
            notices=standing_notices(product, desk.day),
            draws_level_at=level_at[row],
        )

    old, new = (desk.catalog.products[name] for name in names)
    level = bool(levels(table, weighed.shares).level[0, 1])
    return Versus(
        buyer=buyer,
        weighed=weighed,
        first=contender(0),
        second=contender(1),
        against=differences(table, weighed.shares, 0, 1),
        level=level,
        level_only_by=level_only_by(table, weighed.shares, scores.expected, standings, received, buyer)
        if level
        else (),
        swap=swap(old, new, desk.day, buyer, desk.catalog.settings.cautions),
    )
