"""What a buyer's receivers show of each product, and how far the reading may be trusted."""

from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache, cached_property

from spindlewise.answer.merits import MeritSpan, Yardstick
from spindlewise.answer.standing import Standing
from spindlewise.answer.trust import known_uncertainty, reading_budget, uncertainty_standing
from spindlewise.buyer.buyer import Buyer
from spindlewise.buyer.receiver import Receiver
from spindlewise.catalog.as_of import LinkState, links
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import Product
from spindlewise.reception.budget import Budget
from spindlewise.reception.channel_budget import channel_budget
from spindlewise.reception.reading_mode import LinkNow, ReceiverNow, Reception, receive

ANY_RECEIVER = ReceiverNow(
    "any receiver (none stated)", ("ANT+", "Bluetooth"), "unlimited", "can", "can", "can"
)
"""Stands in where a buyer states no receiver: the best case, and said to be so."""


@dataclass(frozen=True)
class Received:
    """A product on the buyer's receivers: all of them in the buyer's order, the first one counting."""

    product: Product
    buyer: Buyer
    day: date
    yardstick: Yardstick
    receptions: tuple[Reception, ...]

    @property
    def assumed(self) -> bool:
        """Whether no receiver was stated and the best case stands in."""
        return not self.buyer.receivers

    @cached_property
    def budget(self) -> Budget:
        """How far the reading on the first receiver may be trusted."""
        return reading_budget(self.product, self.reception, self.buyer, self.day, self.yardstick.unmeasured)

    @cached_property
    def standings(self) -> Mapping[str, Standing]:
        """What the first receiver shows, and how far it may be trusted, by criterion."""
        return {
            "detail": detail_standing(self.reception),
            "reading_uncertainty": uncertainty_standing(self.product, self.budget),
        }

    @cached_property
    def merits(self) -> Mapping[str, MeritSpan]:
        """The merits of both."""
        return {name: self.yardstick.merits(standing) for name, standing in self.standings.items()}

    @cached_property
    def reading_known(self) -> MeritSpan:
        """The merits of the reading's uncertainty, with all that nobody has measured as it is expected."""
        whole = self.standings["reading_uncertainty"]
        return self.yardstick.merits(known_uncertainty(whole, self.budget, self.buyer))

    @property
    def reception(self) -> Reception:
        """What the first receiver shows: it counts for needs and score."""
        return self.receptions[0]


def reception_key(buyer: Buyer) -> Hashable:
    """All of a buyer that bears on reception; buyers alike in this share one answer."""
    return (buyer.receivers, buyer.riding.balance_left_pct, buyer.riding.threshold_power_w)


def receive_all(
    catalog: Catalog, yardstick: Yardstick, buyer: Buyer, day: date, with_promised: bool = False
) -> dict[str, Received]:
    """What every product shows on the buyer's receivers, by product id."""
    receiving = Receiving(yardstick, buyer, day, with_promised)
    return {name: receiving.received(product) for name, product in catalog.products.items()}


class Receiving:
    """One buyer's receivers on one day, on which any product may be tried."""

    def __init__(self, yardstick: Yardstick, buyer: Buyer, day: date, with_promised: bool = False) -> None:
        """Set the receivers up; `with_promised` counts promised firmware as if it were there."""
        self._asked = buyer, day, yardstick
        self._with_promised = with_promised
        receivers = [receiver_now(r) for r in buyer.receivers] or [ANY_RECEIVER]

        @cache  # many products send the same
        def shown(sent: tuple[LinkNow, ...]) -> tuple[Reception, ...]:
            return tuple(receive(sent, receiver) for receiver in receivers)

        self._shown = shown

    def received(self, product: Product, sent: tuple[LinkNow, ...] | None = None) -> Received:
        """What a product shows on them; `sent` is what it sends on the day, looked up unless given."""
        buyer, day, yardstick = self._asked
        if sent is None:
            sent = links_now(product, day, self._with_promised)
        return Received(product, buyer, day, yardstick, self._shown(sent))


def receiver_now(receiver: Receiver) -> ReceiverNow:
    """A receiver as stated, with the channels that the rider's other sensors leave free."""
    channels = receiver.channels
    free = (
        channels if isinstance(channels, str) else channel_budget(channels.total, channels.kept).free_channels
    )
    return ReceiverNow(
        receiver.name,
        receiver.protocols,
        free,
        receiver.pairs_two_sensors,
        receiver.shows_balance,
        receiver.shows_stroke_metrics,
    )


def links_now(product: Product, day: date, with_promised: bool = False) -> tuple[LinkNow, ...]:
    """The product's links on the day; a power pedal of unknown links may send anything on either protocol."""
    if product.links == "unknown":
        return tuple(LinkNow(p, "unknown", "unknown", "unknown") for p in ("ANT+", "Bluetooth"))
    return tuple(_link_now(state) for state in links(product, day, with_promised))


def _link_now(state: LinkState) -> LinkNow:
    since = state.since.isoformat() if state.since else ""
    return LinkNow(state.protocol, state.power, state.balance, state.stroke_metrics, since, state.firmware)


def detail_standing(reception: Reception) -> Standing:
    """How much of the stroke arrives at the first receiver, as one of the steps of the criterion.

    Where something is unknown, the steps that remain possible are named.
    """
    note = "; ".join(reception.because)
    possible = _possible_steps(reception)
    where = f"on {reception.receiver}"
    if len(possible) == 1:
        return Standing("detail", possible[0], None, None, "", "worked out", None, where, note)
    return Standing("detail", None, None, None, "", "unknown", None, where, note, possible)


def _possible_steps(reception: Reception) -> tuple[str, ...]:
    if reception.mode == "unknown":
        return ()
    if reception.mode != "both sides":
        return (reception.mode,)
    if reception.balance == "does not arrive":
        return ("power only",)
    rich = {
        "arrives": ("power, balance and stroke metrics",),
        "does not arrive": ("power and balance",),
        "unknown": ("power and balance", "power, balance and stroke metrics"),
    }[reception.stroke_metrics]
    return rich if reception.balance == "arrives" else ("power only", *rich)
