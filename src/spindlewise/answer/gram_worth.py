"""What the weight difference of a swap is worth on the buyer's own climb, in seconds."""

from dataclasses import dataclass

from spindlewise.answer.weight_change import WeightChange
from spindlewise.buyer.buyer import Buyer
from spindlewise.cost.climb import Climb, climb_seconds, seconds_per_gram

HOUR_S = 3600.0
NO_CLIMB = "a climb"
"""What is missing where the buyer asks nothing of the kind."""


@dataclass(frozen=True, slots=True)
class GramWorth:
    """Seconds that the change of weight costs (positive) or saves (negative) on the climb.

    `per_hour_s` is the same for an hour of such climbing.
    """

    climb_s: float
    change_s: float
    low_s: float
    high_s: float
    per_gram_s: float
    per_hour_s: float


def gram_worth(buyer: Buyer, weight: WeightChange | None) -> GramWorth | str:
    """The seconds, or what is missing to tell them.

    The steady speed on the buyer's climb comes from the road-cycling power equation of Martin et al. 1998.
    """
    stated = buyer.riding.climb
    mass, bike = buyer.needs.rider_mass_kg, buyer.bike.bike_mass_kg
    lacking = [
        name
        for name, value in ((NO_CLIMB, stated), ("the rider's weight", mass), ("the bike's weight", bike))
        if isinstance(value, str)
    ]
    if isinstance(stated, str) or isinstance(mass, str) or isinstance(bike, str):
        return ", ".join(lacking)
    if weight is None:
        return "the weight of both pedals"
    climb = Climb(stated.length_m, stated.gradient_pct / 100, mass + bike, stated.power_w)
    total, each = climb_seconds(climb), seconds_per_gram(climb)
    change = each * weight.expected_g
    return GramWorth(
        climb_s=total,
        change_s=change,
        low_s=each * weight.low_g,
        high_s=each * weight.high_g,
        per_gram_s=each,
        per_hour_s=change * HOUR_S / total,
    )
