"""By how much a swap makes the bike heavier or lighter, as far as the weighings can tell."""

from dataclasses import dataclass
from datetime import date

from spindlewise.catalog.figure import Absent, Known, weight_g
from spindlewise.catalog.product import Product


@dataclass(frozen=True, slots=True)
class WeightChange:
    """The change of weight in grams, positive is heavier, with the interval from the weighings."""

    expected_g: float
    low_g: float
    high_g: float
    old: Known
    new: Known


def weight_change(old: Product, new: Product, day: date) -> tuple[WeightChange | None, str]:
    """The change from the old pair to the new one; or none, and whose weight is missing."""
    before, after = weight_g(old, day), weight_g(new, day)
    lacking = [
        f"weight of {product.name}: {found.because}"
        for product, found in ((old, before), (new, after))
        if isinstance(found, Absent)
    ]
    if isinstance(before, Absent) or isinstance(after, Absent):
        return None, "; ".join(lacking)
    change = WeightChange(
        after.value - before.value, after.low - before.high, after.high - before.low, before, after
    )
    return change, ""
