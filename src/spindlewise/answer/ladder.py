"""The cost-per-gram-saved ladder for a buyer, from the present pedals or from any baseline."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from spindlewise.answer.desk import Desk
from spindlewise.answer.missing import NoAnswer
from spindlewise.answer.paid import Paid
from spindlewise.answer.ranking import Ranking
from spindlewise.answer.standing import Standing
from spindlewise.cost.ladder import LadderStep, ladder
from spindlewise.cost.quadrants import Offer

HELD_BACK = "a safety notice holds it back"
"""Why a product that could be bought is no step: nobody should climb to it or be measured by it."""


@dataclass(frozen=True, slots=True)
class Climb:
    """The ladder's steps, and what stands beside it because a figure is missing."""

    baseline: str
    owned: bool
    """Whether the baseline is owned already, so that its price is spent either way and counts as 0."""
    currency: str
    day: date
    steps: tuple[LadderStep, ...]
    left_out: tuple[tuple[str, str], ...]
    """Product and reason."""
    weights: dict[str, Standing]


def climb(desk: Desk, ranking: Ranking, baseline: str | None = None) -> Climb:
    """The ladder over all that pass the buyer's needs; raises NoAnswer where the baseline has no figures.

    What a safety notice holds back is left out, so that it neither is a step nor makes another look dear.
    Without a named baseline it is the buyer's present pedals, owned; a named one is bought like the rest.
    """
    buyer = ranking.buyer
    owned = baseline is None or baseline == buyer.present_pedals
    start = buyer.present_pedals if baseline is None else baseline
    if start in ("none", "unknown"):
        raise NoAnswer("the buyer states no present pedals", "name a baseline with --from PRODUCT")
    if start not in desk.catalog.products:
        raise NoAnswer(f"the catalog has no product {start}", "see the ids in catalog/products/")
    market = desk.market(buyer.region, buyer.currency)
    weights = {name: market.standings[name]["weight"] for name in {*ranking.table.products, start}}
    if weights[start].value is None:
        raise NoAnswer(
            f"the weight of {start} is {weights[start].origin}: {weights[start].source}", "weigh it"
        )
    paid = market.prices[start]
    if not owned and not isinstance(paid, Paid):
        raise NoAnswer(f"{start}: {paid.because}", "name a baseline that has a price")
    first = _offer(start, Decimal(0) if owned or not isinstance(paid, Paid) else paid.amount, weights[start])
    offers, left_out = [], []
    for name in ranking.table.products:
        price = market.prices[name]
        if name == start or not isinstance(price, Paid):
            continue
        if name in market.held_back:
            left_out.append((name, HELD_BACK))
        elif weights[name].value is None:
            left_out.append((name, f"weight {weights[name].origin}: {weights[name].source}"))
        else:
            offers.append(_offer(name, price.amount, weights[name]))
    return Climb(start, owned, buyer.currency, desk.day, ladder(first, offers), tuple(left_out), weights)


def _offer(product: str, price: Decimal, weight: Standing) -> Offer:
    value = float(weight.value or 0.0)
    low = value if weight.low is None else weight.low
    high = value if weight.high is None else weight.high
    return Offer(product, price, value, low, high)
