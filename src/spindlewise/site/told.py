"""What one part of the site tells the others: enough for their pages, and small enough to be kept."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from spindlewise.answer.market import NoMarket
from spindlewise.answer.reply import Reply
from spindlewise.site.bench_pages import BenchPages
from spindlewise.site.buyer_places import PlaceWithBuyer, buyer_places
from spindlewise.site.facts import Facts
from spindlewise.units import money_text, points_text


@dataclass(frozen=True, slots=True)
class PickTold:
    """A buyer's pick: its id, price and score in words, and with how many others it shares its place."""

    product: str
    price: str
    score: str
    others: int


@dataclass(frozen=True, slots=True)
class PairTold:
    """The pick beside what comes next, both by id, and what is said of them."""

    buyer_name: str
    first: str
    second: str
    verdict: str


@dataclass(frozen=True, slots=True)
class BuyerTold:
    """A buyer's answer in short, and the place of every product in it, by id."""

    pick: PickTold | None
    nothing_because: str
    unserved: str
    """Why the catalog cannot serve the region or currency; empty where it can."""
    pair: PairTold | None
    places: Mapping[str, PlaceWithBuyer]


@dataclass(frozen=True, slots=True)
class RideTold:
    """A ride of the bench, as a product's page names it."""

    path: str
    title: str
    date: date
    generated: bool
    because: str
    """Why it counts for nothing, where it does."""


@dataclass(frozen=True, slots=True)
class BenchTold:
    """By product, the rides in which it was ridden; and the products that have sessions."""

    rides: Mapping[str, tuple[RideTold, ...]]
    with_sessions: tuple[str, ...]


def buyer_told(facts: Facts, name: str) -> BuyerTold:
    """What a buyer's part tells."""
    reply = facts.reply(name)
    if isinstance(reply, str):
        return BuyerTold(None, "", reply, None, {})
    pair = facts.pair(name)
    return BuyerTold(
        pick=_pick(reply),
        nothing_because="" if reply.pick else reply.nothing_because,
        unserved="",
        pair=None if pair is None else PairTold(pair.buyer_name, pair.first, pair.second, pair.verdict),
        places=buyer_places(name, reply),
    )


def _pick(reply: Reply) -> PickTold | None:
    pick = reply.pick
    if pick is None:
        return None
    price = money_text(pick.paid.amount, pick.paid.currency)
    return PickTold(pick.product, price, points_text(pick.score.expected), len(pick.level_with))


def market_missing(facts: Facts, region: str) -> str:
    """Why nothing is sold in a region; empty where something is."""
    try:
        facts.desk_in(region).market(region, facts.desk.catalog.settings.regions[region].currency)
    except NoMarket as none:
        return str(none)
    return ""


def bench_told(bench: BenchPages) -> BenchTold:
    """What the bench's part tells."""
    rides = {
        product: tuple(
            RideTold(ride.path, ride.title, ride.date, ride.generated, ride.because) for ride in own
        )
        for product, own in bench.by_product.items()
    }
    return BenchTold(rides, tuple(sorted(bench.with_sessions)))
