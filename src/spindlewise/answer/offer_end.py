"""When a price that is paid runs out, and what would be paid from the next day on."""

from dataclasses import dataclass
from datetime import date, timedelta

from spindlewise.answer.desk import Desk
from spindlewise.answer.paid import Paid, Unpriced, paid_for
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.price_log import prices_in_force
from spindlewise.catalog.price_rows import rows_of


@dataclass(frozen=True, slots=True)
class OfferEnd:
    """The last day of a price, how many days are left after the as-of day, and what is known to hold then."""

    last_day: date
    days_left: int
    after: Paid | Unpriced


def offer_end(desk: Desk, buyer: Buyer, product: str, paid: Paid) -> OfferEnd | None:
    """Give the end of the price that is paid; None where it has no last day.

    What holds afterwards rests on what has been seen by the as-of day: other prices of the record that are
    still in force on the day after the last, converted as of today.
    """
    until = paid.row.valid_until
    if until is None:
        return None
    seen = (row for row in rows_of(desk.catalog.prices, product) if row.date <= desk.day)
    later = prices_in_force(seen, buyer.region, until + timedelta(1))
    after = paid_for(product, later, desk.catalog, buyer.region, buyer.currency, desk.day)
    if isinstance(after, Unpriced) and not later.get(product):
        after = Unpriced("no price is known that holds")
    return OfferEnd(until, (until - desk.day).days, after)
