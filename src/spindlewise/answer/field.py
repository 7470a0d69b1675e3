"""The field: every product as buyers alike in market, needs and receivers meet it, before money counts."""

from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.needs import Sifted, sift_but_price
from spindlewise.answer.paid import Paid
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.table import BoolArray


@dataclass(frozen=True, slots=True, eq=False)
class Field:
    """All products by row, in order of id, held against every need but money."""

    names: tuple[str, ...]
    sifted: tuple[Sifted, ...]
    """What each fails and what of it could not be checked, money left out."""
    fails: tuple[int, ...]
    """How many needs each fails."""
    amounts: tuple[Decimal | None, ...]
    """What each costs, in the buyer's currency; None where it has no price."""
    held_back: BoolArray

    def too_dear(self, budget: Decimal | None) -> tuple[bool, ...]:
        """Which of them money keeps out: no price, or one over the budget."""
        if budget is None:
            return tuple(amount is None for amount in self.amounts)
        return tuple(amount is None or amount > budget for amount in self.amounts)


def field_for(desk: Desk, buyer: Buyer, with_promised: bool = False) -> Field:
    """The field that this buyer meets, worked out once for all who are alike; raises NoMarket."""
    like = desk.likeness(buyer)
    key = ("field", buyer.region, buyer.currency, like.reception, like.needs, with_promised)
    return desk.kept(key, lambda: _field(desk, buyer, with_promised))


def _field(desk: Desk, buyer: Buyer, with_promised: bool) -> Field:
    market, received = desk.market(buyer.region, buyer.currency), desk.received(buyer, with_promised)
    like = desk.likeness(buyer)
    sifted = desk.kept(
        ("sifted", like.needs, like.reception, with_promised),
        lambda: tuple(
            sift_but_price(product, buyer, desk.day, received[name].reception)
            for name, product in desk.catalog.products.items()
        ),
    )
    names = tuple(desk.catalog.products)
    prices = [market.prices[name] for name in names]
    return Field(
        names,
        sifted,
        tuple(len(found.failures) for found in sifted),
        tuple(paid.amount if isinstance(paid, Paid) else None for paid in prices),
        np.array([name in market.held_back for name in names], dtype=np.bool_),
    )
