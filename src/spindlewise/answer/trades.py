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


@dataclass(frozen=True, slots=True)
class Trade:
    """One weight in words of money: `amount` of the criterion's unit weighs as much as `money`.

    For a criterion scored by name, `better` against `worse` stands in place of an amount. `money` is in the
    buyer's currency and None where no criterion about money is weighed; `points` is what both come to.
    """

    criterion: str
    share: float
    amount: float | None
    unit: str
    better: str
    worse: str
    points: float
    money: Decimal | None


def trades(desk: Desk, buyer: Buyer, weighed: Weighed) -> tuple[Trade, ...]:
    """A trade for each weighed criterion, by the mean slope of its curve over the plausible span.

    The slope is that of the fixed curve, so that a trade does not depend on who else is compared.
    """
    by_name = weighed.by_name
    market = desk.market(buyer.region, buyer.currency)
    point_costs: Decimal | None = None
    money = next((name for name in MONEY if name in by_name), None)
    if money is not None:
        slope = _points_per_unit(desk, money, by_name[money])
        # a curve that is flat over the whole span trades nothing
        point_costs = Decimal(repr(1 / slope)) / market.factor if slope > 0 else None
    return tuple(_trade(desk, buyer.currency, name, by_name[name], point_costs) for name in weighed.criteria)


def _points_per_unit(desk: Desk, criterion: str, share: float) -> float:
    low, high = desk.yardstick.spans[criterion]
    ends = desk.yardstick.curves[criterion].at([low, high])
    return 100 * share * abs(float(ends[1] - ends[0])) / (high - low)


def _trade(desk: Desk, currency: str, criterion: str, share: float, point_costs: Decimal | None) -> Trade:
    better = worse = unit = ""
    amount: float | None = None
    if criterion in desk.yardstick.steps:
        merits = sorted(desk.yardstick.steps[criterion].merits.items(), key=lambda item: (-item[1], item[0]))
        (better, high), (worse, low) = merits[0], next(m for m in merits if m[0] == "power only")
        points = 100 * share * (high - low)
    else:
        span = desk.yardstick.spans[criterion]
        amount = rounded_part((span[1] - span[0]) / PARTS_OF_SPAN)
        points = amount * _points_per_unit(desk, criterion, share)
        unit = desk.yardstick.currency if criterion in MONEY else desk.yardstick.units[criterion]
    money = None
    if point_costs is not None and criterion not in MONEY:
        money = to_minor_unit(Decimal(repr(points)) * point_costs, currency)
    return Trade(criterion, share, amount, unit, better, worse, points, money)


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
