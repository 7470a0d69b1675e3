"""What products show on receivers, worked out once for all days on which their records read the same."""

from collections.abc import Hashable
from datetime import date

from spindlewise.answer.merits import Yardstick
from spindlewise.answer.received import Received, Receiving, links_now, reception_key
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import Product
from spindlewise.catalog.product_days import product_days, stretch
from spindlewise.reception.reading_mode import LinkNow


class Receptions:
    """Shared by desks on many days and in many regions, whose products are the same records.

    What the products show depends on the buyer's receivers and balance, and on what the record says by the
    day: not on prices. All that is asked for is kept, so it is for a publish, not for a batch of questions.
    """

    def __init__(self) -> None:
        """Begin with nothing."""
        self._kinds: dict[Hashable, dict[Hashable, Received]] = {}
        self._links: dict[Hashable, tuple[LinkNow, ...]] = {}
        self._days: dict[str, tuple[date, ...]] = {}

    def all(
        self, catalog: Catalog, yardstick: Yardstick, buyer: Buyer, day: date, with_promised: bool = False
    ) -> dict[str, Received]:
        """What every product of the catalog shows on the buyer's receivers, by product id."""
        known = self._kinds.setdefault((reception_key(buyer), with_promised), {})
        receiving = Receiving(yardstick, buyer, day, with_promised)
        found = {}
        for name, product in catalog.products.items():
            key = (name, stretch(self._days_of(product), day))
            if key not in known:
                known[key] = receiving.received(product, self._sent(product, key, day, with_promised))
            found[name] = known[key]
        return found

    def _sent(
        self, product: Product, key: tuple[str, tuple[int, int]], day: date, with_promised: bool
    ) -> tuple[LinkNow, ...]:
        """What it sends on the day, whoever receives it."""
        found = self._links.get((key, with_promised))
        if found is None:
            found = self._links[key, with_promised] = links_now(product, day, with_promised)
        return found

    def _days_of(self, product: Product) -> tuple[date, ...]:
        if product.id not in self._days:
            self._days[product.id] = product_days(product)
        return self._days[product.id]
