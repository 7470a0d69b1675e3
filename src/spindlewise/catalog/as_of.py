"""The as-of view of a product: its status, notices and links as they stand on one day."""

from dataclasses import dataclass
from datetime import date
from typing import Literal, TypeVar

from spindlewise.catalog.link import CARRIED_WAYS, POWER_WAYS, Carried, CarriedWay, PowerWay
from spindlewise.catalog.product import Product, SafetyNotice, State, StatusSince

Way = TypeVar("Way", bound=str)


@dataclass(frozen=True, slots=True)
class LinkState:
    """What one protocol carries on the day; `promised` lists what is only announced."""

    protocol: str
    power: PowerWay
    balance: CarriedWay
    stroke_metrics: CarriedWay
    since: date | None
    firmware: str | None
    promised: tuple[Carried, ...]


def status(product: Product, as_of: date) -> StatusSince | None:
    """The newest status dated on or before the day, of two the later listed; nothing before the first."""
    dated = [s for s in product.statuses if s.since <= as_of]
    return max(reversed(dated), key=lambda s: s.since, default=None)


def state(product: Product, as_of: date) -> State | Literal["not yet sold"]:
    """The status in a word."""
    found = status(product, as_of)
    return found.state if found else "not yet sold"


def standing_notices(product: Product, as_of: date) -> tuple[SafetyNotice, ...]:
    """The safety notices issued by the day and not lifted by it."""
    if isinstance(product.safety_notices, str):
        return ()
    return tuple(
        n for n in product.safety_notices if n.date <= as_of and (isinstance(n.ended, str) or n.ended > as_of)
    )


def links(product: Product, as_of: date, with_promised: bool = False) -> tuple[LinkState, ...]:
    """Each protocol as it stands on the day; promised firmware counts as absent unless a what-if asks."""
    if isinstance(product.links, str):
        return ()
    return tuple(_link_state(link.protocol, link.carries, as_of, with_promised) for link in product.links)


def _link_state(protocol: str, carries: tuple[Carried, ...], as_of: date, with_promised: bool) -> LinkState:
    standing: dict[str, Carried] = {}
    days: dict[str, date] = {}
    promised: list[Carried] = []
    for said in carries:
        if isinstance(said.since, str):
            promised.append(said)
        elif said.since <= as_of and (said.what not in days or said.since >= days[said.what]):
            standing[said.what] = said
            days[said.what] = said.since
    if with_promised:
        standing.update({said.what: said for said in promised})
    firmware = [s.firmware for s in standing.values() if s.firmware not in ("unknown", "not applicable")]
    return LinkState(
        protocol=protocol,
        power=_way(standing.get("power"), POWER_WAYS, "none"),
        balance=_way(standing.get("balance"), CARRIED_WAYS, "absent"),
        stroke_metrics=_way(standing.get("stroke metrics"), CARRIED_WAYS, "absent"),
        since=_day(standing.get("power")),
        firmware=max(firmware, key=_version, default=None),
        promised=tuple(promised),
    )


def _day(said: Carried | None) -> date | None:
    return None if said is None or isinstance(said.since, str) else said.since


def _way(said: Carried | None, ways: tuple[Way, ...], silent: Way) -> Way:
    """How the thing is carried; what nobody states is not carried."""
    return silent if said is None else ways[ways.index(said.how)]


def _version(text: str) -> tuple[tuple[int, str], ...]:
    """Firmware versions compare part by part, numbers as numbers: 2.10 comes after 2.9."""
    return tuple((int(part), "") if part.isdecimal() else (-1, part) for part in text.split("."))
