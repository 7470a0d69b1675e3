"""Where the feet stand after a swap: the pedals' part and the cranks' part, kept apart."""

from dataclasses import dataclass
from datetime import date

from spindlewise.buyer.buyer import Bike, EachSide
from spindlewise.catalog.figure import Known, pedal_offset_mm
from spindlewise.catalog.product import Product
from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.stance import Pedals, StanceChange, WasherCaution, stance_change, washer_cautions


@dataclass(frozen=True, slots=True)
class Stance:
    """The pedals and their washers by side, and what new cranks add by their Q-factor."""

    pedals: StanceChange | MissingFigures
    q_factor_mm: float | None
    """The change of Q-factor: 0 where the cranks stay, None where new ones come of which nobody says."""
    washers: tuple[WasherCaution, ...]
    bare_offsets: tuple[str, ...] = ()
    """The products whose pedal offset comes without a plus-minus, so that the stance's falls short of it."""

    @property
    def width_mm(self) -> float | None:
        """The change of the whole stance width; None where a part of it is not known."""
        if isinstance(self.pedals, MissingFigures) or self.q_factor_mm is None:
            return None
        return self.pedals.width_mm + self.q_factor_mm


def stance(old: Product, new: Product, day: date, bike: Bike) -> Stance:
    """What changes between the feet; washers count with the pedals they sit on."""
    before = _pedals(old, day, bike.washers_each_side_mm)
    after = _pedals(new, day, bike.new_washers_each_side_mm)
    bare = tuple(product.id for product in (old, new) if old.id != new.id and _has_bare_offset(product, day))
    return Stance(stance_change(before, after), _q_factor_mm(bike), washer_cautions(after), bare)


def _has_bare_offset(product: Product, day: date) -> bool:
    offset = pedal_offset_mm(product, day)
    return isinstance(offset, Known) and not offset.plus_minus


def _q_factor_mm(bike: Bike) -> float | None:
    before, after = bike.q_factor_mm, bike.new_q_factor_mm
    if after == "unchanged":
        new_cranks = not isinstance(bike.new_crank_mm, str) and bike.new_crank_mm != bike.crank_mm
        return None if new_cranks else 0.0
    if isinstance(before, str) or isinstance(after, str):
        return None
    return after - before


def _pedals(product: Product, day: date, washers: float | EachSide) -> Pedals:
    offset = pedal_offset_mm(product, day)
    value, spread = (offset.value, offset.plus_minus or 0.0) if isinstance(offset, Known) else (None, 0.0)
    left, right = (washers.left, washers.right) if isinstance(washers, EachSide) else (washers, washers)
    return Pedals(product.id, value, value, left, right, offset_plus_minus_mm=spread)
