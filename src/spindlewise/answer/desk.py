"""The desk: one catalog on one day, with all that is worked out once and serves many questions."""

from datetime import date

from spindlewise.answer.claims import weight_record
from spindlewise.answer.market import Market, open_market
from spindlewise.answer.merits import Yardstick
from spindlewise.answer.owning import Owned, own_all, riding_key
from spindlewise.answer.received import Received, receive_all, reception_key
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.decide.claims_record import ClaimsRecord


class Desk:
    """Answers questions from one catalog as of one day; what it has worked out it keeps."""

    def __init__(self, catalog: Catalog, day: date | None = None, record: ClaimsRecord | None = None) -> None:
        """`day` is the as-of date; without one the catalog's own pinned day, which must then exist.

        `record` is the catalog's record of claimed against weighed, worked out unless given.
        """
        if day is None:
            if isinstance(catalog.settings.as_of, str):
                raise ValueError("the catalog pins no day of its own | say which day with --as-of")
            day = catalog.settings.as_of
        self.catalog = catalog
        self.day = day
        self.yardstick = Yardstick(catalog.criteria)
        self.record = weight_record(catalog, day) if record is None else record
        self._markets: dict[tuple[str, str], Market] = {}
        self._received: dict[object, dict[str, Received]] = {}
        self._owned: dict[object, dict[str, Owned]] = {}

    def market(self, region: str, currency: str) -> Market:
        """The market of a region and currency; raises NoMarket."""
        key = (region, currency)
        if key not in self._markets:
            self._markets[key] = open_market(
                self.catalog, self.yardstick, self.record, region, currency, self.day
            )
        return self._markets[key]

    def received(self, buyer: Buyer, with_promised: bool = False) -> dict[str, Received]:
        """What each product shows on the buyer's receivers, by product id; promises only for a what-if."""
        key = (reception_key(buyer), with_promised)
        if key not in self._received:
            self._received[key] = receive_all(self.catalog, self.yardstick, buyer, self.day, with_promised)
        return self._received[key]

    def ownership(self, buyer: Buyer) -> dict[str, Owned]:
        """The cost of owning each product over the buyer's years, by product id."""
        key = riding_key(buyer)
        if key not in self._owned:
            market = self.market(buyer.region, buyer.currency)
            self._owned[key] = own_all(self.catalog, self.yardstick, market, buyer)
        return self._owned[key]
