"""What each weight trades: how much money weighs as much as so many grams, hours or percent."""

from dataclasses import dataclass
from decimal import Decimal

from spindlewise.answer.desk import Desk
from spindlewise.answer.weighing import Weighed
from spindlewise.buyer.buyer import Buyer
from spindlewise.units import to_minor_unit

MONEY = ("price", "ownership")
PARTS_OF_SPAN = 10
"""A trade is told for about a tenth of the plausible span: large enough to picture, small enough to occur."""
LEAST_AMOUNT = {"years": 1.0}
"""Warranties come by the year: a tenth of their span occurs nowhere."""


@dataclass(frozen=True, slots=True)
class Trade:
    """One weight in words of money: `amount` of the criterion's unit weighs as much as `money`.

    For a criterion scored by name, `better` against `worse` stands in place of an amount. `money` is in the
    buyer's currency, as is the amount of a criterion about money itself; it is None where no criterion about
    money is weighed. `points` is what both come to. Where `money` is more than the whole plausible span of
    prices, `beyond` gives that span: so much money is at stake nowhere.
    """

    criterion: str
    share: float
    amount: float | None
    unit: str
    better: str
    worse: str
    points: float
    money: Decimal | None
    beyond: tuple[Decimal, Decimal] | None = None


def trades(desk: Desk, buyer: Buyer, weighed: Weighed) -> tuple[Trade, ...]:
    """A trade for each weighed criterion, by the mean slope of its curve over the plausible span.

    The slope is that of the fixed curve, so that a trade does not depend on who else is compared.
    """
    by_name = weighed.by_name
    factor = desk.market(buyer.region, buyer.currency).factor
    money = next((name for name in MONEY if name in by_name), None)
    point_costs: Decimal | None = None
    span: tuple[Decimal, Decimal] | None = None
    if money is not None:
        slope = _points_per_unit(desk, money, by_name[money])
        # a curve that is flat over the whole span trades nothing
        point_costs = Decimal(repr(1 / slope)) / factor if slope > 0 else None
        low, high = (Decimal(repr(end)) / factor for end in desk.yardstick.spans[money])
        span = low, high
    found = []
    for name in weighed.criteria:
        if name in MONEY:
            found.append(_of_money(desk, buyer.currency, factor, name, by_name[name]))
        else:
            found.append(_trade(desk, buyer.currency, name, by_name[name], point_costs, span))
    return tuple(found)


def _points_per_unit(desk: Desk, criterion: str, share: float) -> float:
    low, high = desk.yardstick.spans[criterion]
    ends = desk.yardstick.curves[criterion].at([low, high])
    return 100 * share * abs(float(ends[1] - ends[0])) / (high - low)


def _of_money(desk: Desk, currency: str, factor: Decimal, criterion: str, share: float) -> Trade:
    low, high = desk.yardstick.spans[criterion]
    amount = rounded_part((high - low) / PARTS_OF_SPAN / float(factor))
    points = amount * float(factor) * _points_per_unit(desk, criterion, share)
    return Trade(criterion, share, amount, currency, "", "", points, None)


def _trade(
    desk: Desk,
    currency: str,
    criterion: str,
    share: float,
    point_costs: Decimal | None,
    span: tuple[Decimal, Decimal] | None,
) -> Trade:
    better = worse = unit = ""
    amount: float | None = None
    if criterion in desk.yardstick.steps:
        merits = sorted(desk.yardstick.steps[criterion].merits.items(), key=lambda item: (-item[1], item[0]))
        (better, high), (worse, low) = merits[0], next(m for m in merits if m[0] == "power only")
        points = 100 * share * (high - low)
    else:
        ends, unit = desk.yardstick.spans[criterion], desk.yardstick.units[criterion]
        amount = max(rounded_part((ends[1] - ends[0]) / PARTS_OF_SPAN), LEAST_AMOUNT.get(unit, 0.0))
        points = amount * _points_per_unit(desk, criterion, share)
    if point_costs is None or span is None:
        return Trade(criterion, share, amount, unit, better, worse, points, None)
    worth = Decimal(repr(points)) * point_costs
    money = to_minor_unit(worth, currency)
    beyond = span if worth > span[1] - span[0] else None
    return Trade(criterion, share, amount, unit, better, worse, points, money, beyond)


def rounded_part(size: float) -> float:
    """The 1, 2 or 5 times a power of ten that is nearest below or at the size.

    >>> rounded_part(14.0), rounded_part(0.65), rounded_part(80.0)
    (10.0, 0.5, 50.0)
    """
    power = 0
    while size >= 10:
        size, power = size / 10, power + 1
    while size < 1:
        size, power = size * 10, power - 1
    step = 5 if size >= 5 else 2 if size >= 2 else 1
    return step * 10.0**power if power >= 0 else step / 10.0**-power
