"""Pedals send cadence with the power: what a receiver would show with the cadence sensor's channel free."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from spindlewise.answer.promised import seen
from spindlewise.answer.received import links_now, receiver_now
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.product import Product
from spindlewise.reception.channel_budget import channel_budget
from spindlewise.reception.reading_mode import Reception, receive


@dataclass(frozen=True, slots=True)
class Freed:
    """One product on one receiver, as it is and with the channel of the cadence sensor free."""

    product: str
    now: Reception
    then: Reception


def freed(products: Iterable[Product], buyer: Buyer, day: date) -> tuple[Freed, ...]:
    """Where giving up the cadence sensor changes what is seen, by product, then receiver; mostly nowhere."""
    crowded = [
        (receiver_now(each), channel_budget(total, kept, cadence_comes_with_power=True).free_channels)
        for each in buyer.receivers
        if not isinstance(each.channels, str)
        for total, kept in ((each.channels.total, each.channels.kept),)
        if "cadence" in kept
    ]
    found = []
    for product in products if crowded else ():
        sent = links_now(product, day)
        for receiver, more in crowded:
            now, then = receive(sent, receiver), receive(sent, replace(receiver, free_channels=more))
            if seen(now) != seen(then):
                found.append(Freed(product.id, now, then))
    return tuple(found)
