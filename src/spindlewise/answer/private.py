"""What a buyer keeps private: body, rider weight and balance; and the question as anybody may see it.

A page and a log show nothing of these unless the buyer says so. The rider's weight still keeps out what it
keeps out: only which products those are is told, never the weight.
"""

from datetime import date

from spindlewise.answer.desk import Desk
from spindlewise.answer.needs import rider_weight_failure
from spindlewise.buyer.buyer import Body, Buyer


def without_private(buyer: Buyer) -> Buyer:
    """The question without body, rider weight and balance: what may be kept unless the buyer says more."""
    return buyer.model_copy(
        update={
            "body": Body(),
            "needs": buyer.needs.model_copy(update={"rider_mass_kg": "not stated"}),
            "riding": buyer.riding.model_copy(update={"balance_left_pct": "unknown"}),
        }
    )


def for_all_eyes(desk: Desk, buyer: Buyer) -> tuple[Buyer, frozenset[str]]:
    """The question as a page may show it, and the products that the rider's weight keeps out.

    A buyer whose file says `private: shown` is asked as it stands, and nothing need be kept out beside.
    """
    if buyer.private == "shown":
        return buyer, frozenset()
    return without_private(buyer), barred(desk, buyer, desk.day)


def barred(desk: Desk, buyer: Buyer, day: date) -> frozenset[str]:
    """The products that fail the rider's weight on the day; none where it is not stated."""
    products = desk.catalog.products.items()
    return frozenset(name for name, product in products if rider_weight_failure(product, buyer, day))
