"""The desk: one catalog on one day, with all that is worked out once and serves many questions."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from datetime import date
from itertools import count
from typing import Any, TypeVar, cast

from spindlewise.answer.claims import weight_record
from spindlewise.answer.likeness import Likeness
from spindlewise.answer.market import Market, open_market
from spindlewise.answer.merits import Yardstick
from spindlewise.answer.owning import Owned, own_all, riding_key
from spindlewise.answer.received import Received, receive_all, reception_key
from spindlewise.answer.receptions import Receptions
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.decide.claims_record import ClaimsRecord

T = TypeVar("T")

MOST_KEPT = 1024
"""So many worked-out things are kept at most, so that any number of questions fits into the same memory."""


class Desk:
    """Answers questions from one catalog as of one day; what it has worked out it keeps."""

    def __init__(
        self,
        catalog: Catalog,
        day: date | None = None,
        record: ClaimsRecord | None = None,
        receptions: Receptions | None = None,
    ) -> None:
        """`day` is the as-of date; without one the catalog's own pinned day, which must then exist.

        `record` is the catalog's record of claimed against weighed, worked out unless given; `receptions` are
        shared with other desks on the same products.
        """
        if day is None:
            if isinstance(catalog.settings.as_of, str):
                raise ValueError("the catalog pins no day of its own | say which day with --as-of")
            day = catalog.settings.as_of
        self.catalog = catalog
        self.day = day
        self.yardstick = Yardstick(catalog.criteria)
        self.record = weight_record(catalog, day) if record is None else record
        self._receive = receive_all if receptions is None else receptions.all
        self._kept: OrderedDict[Hashable, Any] = OrderedDict()
        self._numbers: dict[Hashable, int] = {}
        self._next = count()
        self._latest: tuple[Buyer, Likeness] | None = None

    def kept(self, key: Hashable, work: Callable[[], T]) -> T:
        """What `work` gives, done once for each key; of what was not asked for lately nothing is kept."""
        if key in self._kept:
            self._kept.move_to_end(key)
            return cast(T, self._kept[key])
        found = self._kept[key] = work()
        if len(self._kept) > MOST_KEPT:
            self._kept.popitem(last=False)
        return found

    def likeness(self, buyer: Buyer) -> Likeness:
        """In what this buyer is like others, as numbers to keep things by; worked out once a buyer."""
        if self._latest is None or self._latest[0] is not buyer:
            found = Likeness(
                self.number("reception", reception_key(buyer)),
                self.number("needs", buyer.needs),
                self.number("riding", riding_key(buyer)),
            )
            self._latest = (buyer, found)
        return self._latest[1]

    def number(self, kind: str, parts: Hashable) -> int:
        """A number that stands for these parts of a question from now on, and for no others ever.

        Parts are models within models, dear to hash and to compare: as keys they are looked up here once.
        """
        found = self._numbers.get((kind, parts))
        if found is None:
            if len(self._numbers) >= MOST_KEPT:
                self._numbers.clear()
            found = self._numbers[kind, parts] = next(self._next)
        return found

    def market(self, region: str, currency: str) -> Market:
        """The market of a region and currency; raises NoMarket."""
        return self.kept(
            ("market", region, currency),
            lambda: open_market(self.catalog, self.yardstick, self.record, region, currency, self.day),
        )

    def received(self, buyer: Buyer, with_promised: bool = False) -> dict[str, Received]:
        """What each product shows on the buyer's receivers, by product id; promises only for a what-if."""
        return self.kept(
            ("received", self.likeness(buyer).reception, with_promised),
            lambda: self._receive(self.catalog, self.yardstick, buyer, self.day, with_promised),
        )

    def ownership(self, buyer: Buyer) -> dict[str, Owned]:
        """The cost of owning each product over the buyer's years, by product id."""
        return self.kept(
            ("owned", self.likeness(buyer).riding),
            lambda: own_all(self.catalog, self.yardstick, self.market(buyer.region, buyer.currency), buyer),
        )
