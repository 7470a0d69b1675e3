"""The pre-test sheet: what to note before a ride, with what the catalog knows of the product filled in."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from spindlewise.catalog.figure import Absent, Known, figure
from spindlewise.catalog.product import Product

Kind = Literal["pedals", "crank", "spider", "hub", "trainer"]
KINDS: tuple[Kind, ...] = ("pedals", "crank", "spider", "hub", "trainer")
SIDES = {"both": "both", "left": "left doubled", "right": "right doubled"}


@dataclass(frozen=True, slots=True)
class PreTest:
    """What a ride's sheet begins with. Torque and tolerance are what the maker says, if he does.

    `firmware` is the newest that the catalog names, empty where it names none: a hint, not what was ridden.
    `beside` are the other meters on the bike, the first of them the reference.
    """

    product: Product
    day: date
    side: str
    torque: Known | Absent
    tolerance: Known | Absent
    firmware: str
    after_fitting: str
    beside: tuple[str, ...]


def pre_test(product: Product, day: date, beside: Sequence[str]) -> PreTest:
    """The sheet for a power pedal beside these kinds of meter.

    Raises ValueError for a plain pedal, which reads nothing, and for no or an unknown kind beside it.
    """
    if product.kind != "power pedal":
        raise ValueError(f"{product.id} is a plain pedal; a sheet is for a product that reads power")
    if not beside or any(kind not in KINDS for kind in beside):
        raise ValueError(
            f"beside it {', '.join(beside) or 'nothing'}; name one or more of {', '.join(KINDS)}"
        )
    return PreTest(
        product=product,
        day=day,
        side=SIDES[product.sides],
        torque=figure(product, "fitting_torque_nm", day),
        tolerance=figure(product, "tolerance_pct", day),
        firmware=_newest_firmware(product, day),
        after_fitting=product.tools.after_fitting,
        beside=tuple(beside),
    )


def _newest_firmware(product: Product, day: date) -> str:
    if isinstance(product.links, str):
        return ""
    named = [
        (carried.since, carried.firmware)
        for link in product.links
        for carried in link.carries
        if isinstance(carried.since, date)
        and carried.since <= day
        and carried.firmware not in ("unknown", "not applicable")
    ]
    return max(named)[1] if named else ""
