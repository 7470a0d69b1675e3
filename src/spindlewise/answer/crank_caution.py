"""Cranks changed with the pedals: what a crank length left as it was in the head unit would do."""

from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Placed
from spindlewise.answer.trust import reading_budget
from spindlewise.buyer.buyer import Buyer
from spindlewise.reception.budget import Budget
from spindlewise.reception.crank_setting import CrankSettingError, crank_setting_error


@dataclass(frozen=True, slots=True)
class CrankCaution:
    """The error of the setting; `stated` tells a setting that the buyer states from one only feared."""

    error: CrankSettingError
    stated: bool


def crank_caution(buyer: Buyer) -> CrankCaution | None:
    """A wrong crank length in the head unit, or the old one that would be wrong after a change of cranks.

    Nothing where the setting is right, or where no length is known.
    """
    bike, threshold = buyer.bike, buyer.riding.threshold_power_w
    watts = None if isinstance(threshold, str) else threshold
    changes = not isinstance(bike.new_crank_mm, str)
    ridden = bike.new_crank_mm if not isinstance(bike.new_crank_mm, str) else bike.crank_mm
    if isinstance(ridden, str):
        return None
    if not isinstance(bike.head_unit_crank_mm, str):
        if bike.head_unit_crank_mm == ridden:
            return None
        return CrankCaution(crank_setting_error(bike.head_unit_crank_mm, ridden, watts), stated=True)
    if changes and not isinstance(bike.crank_mm, str) and bike.crank_mm != ridden:
        return CrankCaution(crank_setting_error(bike.crank_mm, ridden, watts), stated=False)
    return None


def reading_if_left(desk: Desk, buyer: Buyer, placed: Placed, found: CrankCaution) -> Budget:
    """A what-if: the budget of a product's reading were the crank length left wrong; no score counts it."""
    product, unmeasured = desk.catalog.products[placed.product], desk.yardstick.unmeasured
    return reading_budget(product, placed.received.reception, buyer, desk.day, unmeasured, found.error)
