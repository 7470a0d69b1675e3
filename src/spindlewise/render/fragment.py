"""A buyer as the fragment of a link to the page on which everybody weighs for themselves."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from math import lcm
from urllib.parse import quote

from spindlewise.answer.weighing import weigh
from spindlewise.buyer.buyer import Buyer
from spindlewise.buyer.receiver import Channels, Receiver
from spindlewise.catalog.catalog import Catalog
from spindlewise.decide.order_weights import centroids

VERSION = "v=1"
PAGE = "weigh.html"
MOST_POINTS = 1000
"""More points than this cannot be stated."""
LONGEST = 2000
"""Longer fragments are refused by the page."""


def fragment(buyer: Buyer, with_private: bool = False, pair: tuple[str, str] | None = None) -> str:
    """The buyer's question as `#v=1&key=value…`; nothing of body or health in it unless asked.

    Left out, because the page has no place for it: name, question, how sure the weights are, body, climb, and
    what bears on the leg model alone. Weights stated as an order or in pairs become points. Rider weight and
    balance come in `with_private` only. The currency is the region's own. `pair` are the ids of two products
    that stand side by side there.
    """
    return "#" + "&".join([VERSION, *(f"{key}={value}" for key, value in _parts(buyer, with_private, pair))])


def page_link(catalog: Catalog, buyer: Buyer, pair: tuple[str, str] | None = None) -> str | None:
    """The page with the buyer's question in it, as the site has it; None where it cannot be asked there."""
    return PAGE + fragment(buyer, pair=pair) if can_be_linked(catalog, buyer) else None


def can_be_linked(catalog: Catalog, buyer: Buyer) -> bool:
    """Whether the page can ask the buyer's question: in a region of the catalog, in that region's money."""
    facts = catalog.settings.regions.get(buyer.region)
    return facts is not None and facts.currency == buyer.currency


def _parts(buyer: Buyer, with_private: bool, pair: tuple[str, str] | None) -> Iterator[tuple[str, str]]:
    needs, bike, shoes, riding = buyer.needs, buyer.bike, buyer.shoes, buyer.riding
    yield "region", buyer.region
    if buyer.budget_amount is not None:
        yield "budget", _plain(buyer.budget_amount)
    yield "points", ",".join(f"{name}:{_number(points)}" for name, points in _points(buyer))
    for receiver in buyer.receivers[:3]:
        yield "receiver", _receiver(receiver)
    if buyer.present_pedals != "none":
        yield "present", buyer.present_pedals
    if needs.kind != "power pedal":
        yield "kind", needs.kind.removesuffix(" pedal")
    if not isinstance(needs.states, str):
        yield "states", ",".join(dict.fromkeys(needs.states))
    if not isinstance(needs.shoes, str):
        yield "shoes", needs.shoes.bolts
        if not isinstance(needs.shoes.patterns, str):
            yield from (("pattern", quote(pattern, safe="")) for pattern in needs.shoes.patterns)
    if needs.reading != "any":
        yield "reading", needs.reading.removesuffix(" sides")
    if needs.balance != "not needed":
        yield "balance", needs.balance
    if needs.water != "not stated":
        yield "water", needs.water
    stated = (
        ("grams", needs.weight_g_at_most),
        ("hours", needs.running_hours_at_least),
        ("warranty", needs.warranty_years_at_least),
        ("crank", bike.crank_mm),
        ("new-crank", bike.new_crank_mm),
        ("set-crank", bike.head_unit_crank_mm),
        ("sole", shoes.sole_mm),
        ("new-sole", shoes.new_sole_mm),
        ("ride", riding.hours_per_year),
        ("keep", riding.years),
    )
    for key, value in stated:
        if value not in ("not stated", "unchanged"):
            yield key, value if isinstance(value, str) else _number(value)
    if pair is not None:
        yield "pair", ",".join(pair)
    if with_private:
        if not isinstance(needs.rider_mass_kg, str):
            yield "mass", _number(needs.rider_mass_kg)
        if not isinstance(riding.balance_left_pct, str):
            yield "left", f"{_number(riding.balance_left_pct.low)}-{_number(riding.balance_left_pct.high)}"


def _points(buyer: Buyer) -> list[tuple[str, float]]:
    weighed = weigh(buyer.weights)
    points = {name: 100 * share for name, share in weighed.by_name.items()}
    if buyer.weights.points is not None:
        points = {str(name): value for name, value in buyer.weights.points.items()}
    elif buyer.weights.order is not None:
        points = _whole_points(buyer.weights.order) or points
    return [(name, points[name]) for name in weighed.criteria]


def _whole_points(order: Sequence[str]) -> dict[str, float] | None:
    """The weights of an order in the smallest whole numbers, None where these become too large."""
    weights = centroids(len(order))
    whole = lcm(*(weight.denominator for weight in weights))
    if whole * weights[0] > MOST_POINTS:
        return None
    return {name: float(whole * weight) for name, weight in zip(order, weights, strict=True)}


def _receiver(receiver: Receiver) -> str:
    protocols = "-".join(
        word for name, word in (("ANT+", "ant"), ("Bluetooth", "bluetooth")) if name in receiver.protocols
    )
    channels = receiver.channels
    free = str(max(channels.total - len(channels.kept), 0)) if isinstance(channels, Channels) else channels
    able = (receiver.pairs_two_sensors, receiver.shows_balance, receiver.shows_stroke_metrics)
    return ",".join((protocols, free, *able))


def _number(value: float) -> str:
    """The number in plain decimals, as short as may be."""
    return _plain(Decimal(repr(float(value))))


def _plain(value: Decimal) -> str:
    text = f"{value:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
