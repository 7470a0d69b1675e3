"""Everything on a product's page."""

from collections.abc import Mapping
from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.paid import Paid
from spindlewise.catalog.as_of import standing_notices, status
from spindlewise.catalog.model import DatedPrice
from spindlewise.catalog.product import (
    Battery,
    Product,
    ReliabilityReport,
    SafetyNotice,
    Service,
    StatusSince,
)
from spindlewise.site.buyer_places import PlaceWithBuyer
from spindlewise.site.claims import Claim, claims
from spindlewise.site.link_rows import LinkRows, link_rows
from spindlewise.site.observation_rows import Attribute, attributes
from spindlewise.site.price_rows import RegionPrices, region_prices
from spindlewise.site.region_table import PriceShown, price_shown
from spindlewise.site.shown import Shown, shown


@dataclass(frozen=True, slots=True)
class ProductView:
    """A product as its page shows it; only what was known by the day."""

    product: Product
    status: StatusSince | None
    statuses: tuple[StatusSince, ...]
    notices: tuple[SafetyNotice, ...]
    lifted: tuple[SafetyNotice, ...]
    reports: tuple[ReliabilityReport, ...]
    prices_now: tuple[tuple[str, str, PriceShown | None, str], ...]
    """Region, its name, the price in force, and why there is none."""
    weight: Shown | None
    attributes: tuple[Attribute, ...]
    claims: tuple[Claim, ...]
    links: tuple[LinkRows, ...]
    history: tuple[RegionPrices, ...]
    upkeep: tuple[tuple[str, tuple[DatedPrice, ...]], ...]
    """Spare cells and service, each with the prices that were seen."""
    places: tuple[PlaceWithBuyer, ...]


def product_view(
    desk: Desk, product: Product, missing: Mapping[str, str], places: tuple[PlaceWithBuyer, ...]
) -> ProductView:
    """Gather the page; `missing` says by region why nothing is sold there, empty where it is."""
    day = desk.day
    reports = () if isinstance(product.reliability, str) else product.reliability
    notices = () if isinstance(product.safety_notices, str) else product.safety_notices
    standing = standing_notices(product, day)
    return ProductView(
        product=product,
        status=status(product, day),
        statuses=tuple(sorted((s for s in product.statuses if s.since <= day), key=lambda s: s.since)),
        notices=standing,
        lifted=tuple(n for n in notices if n.date <= day and n not in standing),
        reports=tuple(sorted((r for r in reports if r.date <= day), key=lambda r: r.date, reverse=True)),
        prices_now=tuple(_price_now(desk, product, code, why) for code, why in missing.items()),
        weight=_weight(desk, product, missing),
        attributes=attributes(product, day),
        claims=claims(product, day),
        links=link_rows(product, day),
        history=region_prices(desk.catalog, product.id, day),
        upkeep=_upkeep(desk, product),
        places=places,
    )


def _price_now(
    desk: Desk, product: Product, region: str, missing: str
) -> tuple[str, str, PriceShown | None, str]:
    facts = desk.catalog.settings.regions[region]
    if missing:
        return region, facts.name, None, missing
    paid = desk.market(region, facts.currency).prices[product.id]
    if isinstance(paid, Paid):
        return region, facts.name, price_shown(desk, paid), ""
    return region, facts.name, None, paid.because


def _weight(desk: Desk, product: Product, missing: Mapping[str, str]) -> Shown | None:
    for region, why in missing.items():
        if not why:
            currency = desk.catalog.settings.regions[region].currency
            return shown(desk.market(region, currency).standings[product.id]["weight"])
    return None


def _upkeep(desk: Desk, product: Product) -> tuple[tuple[str, tuple[DatedPrice, ...]], ...]:
    found = []
    if isinstance(product.battery, Battery) and not isinstance(product.battery.spare_prices, str):
        found.append((f"one set of spare cells ({product.battery.type})", product.battery.spare_prices))
    if isinstance(product.service, Service) and not isinstance(product.service.prices, str):
        found.append((product.service.what, product.service.prices))
    return tuple((what, tuple(p for p in prices if p.date <= desk.day)) for what, prices in found)
