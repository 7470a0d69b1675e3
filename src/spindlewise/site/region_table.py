"""A region's table: every power pedal with price, figures and score; plain and unpriced ones beside it."""

from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.ranking import Placed, Ranking, Span, rank
from spindlewise.catalog.as_of import links, state
from spindlewise.catalog.product import Product
from spindlewise.site.charts import Point
from spindlewise.site.places import place_text
from spindlewise.site.shown import Shown, shown
from spindlewise.site.usual import usual_buyer
from spindlewise.units import amount_text, money_text, number_text


@dataclass(frozen=True, slots=True)
class PriceShown:
    """A price in force as a cell; `old` says that it was seen longer ago than the catalog trusts a price."""

    text: str
    amount: str
    seller: str
    kind: str
    date: str
    until: str
    old: bool
    conversion: str


@dataclass(frozen=True, slots=True)
class RankedRow:
    """One power pedal of the table."""

    product: Product
    state: str
    place: str
    score: Span
    price: PriceShown
    weight: Shown
    reading: Shown
    detail: Shown
    detail_merit: float
    """By which the column sorts: words have no order of their own."""
    running_time: Shown
    warranty: Shown
    held_back: bool
    promised: bool


@dataclass(frozen=True, slots=True)
class PlainRow:
    """One plain pedal: the usual thing swapped out."""

    product: Product
    price: PriceShown | None
    price_missing: str
    weight: Shown
    stack: Shown


@dataclass(frozen=True, slots=True)
class RegionTable:
    """All that a region's page shows; `missing` says why there is no table."""

    code: str
    name: str
    currency: str
    missing: str
    weights: tuple[tuple[str, str], ...]
    """Title and share in percent of each criterion that the score weighs."""
    ranked: tuple[RankedRow, ...]
    plain: tuple[PlainRow, ...]
    left_out: tuple[tuple[Product, str], ...]


def region_table(desk: Desk, region: str) -> RegionTable:
    """Work out the table of one region under the weights that stand in where nobody states any."""
    facts = desk.catalog.settings.regions[region]
    try:
        ranking = rank(desk, usual_buyer(desk.catalog, region))
    except NoMarket as none:
        return RegionTable(region, facts.name, facts.currency, str(none), (), (), (), ())
    products = desk.catalog.products
    weights = tuple(
        (desk.yardstick.titles[name], number_text(100 * share, 0))
        for name, share in ranking.weighed.by_name.items()
    )
    return RegionTable(
        code=region,
        name=facts.name,
        currency=facts.currency,
        missing="",
        weights=weights,
        ranked=tuple(_ranked(desk, placed) for placed in ranking.placed),
        plain=tuple(
            _plain(desk, ranking, product) for product in products.values() if product.kind == "plain pedal"
        ),
        left_out=tuple(
            (products[out.product], "; ".join(f.because for f in out.because))
            for out in ranking.excluded
            if products[out.product].kind == "power pedal"
        ),
    )


def chart_points(table: RegionTable) -> tuple[Point, ...]:
    """The table's power pedals as points of its chart."""
    return tuple(
        Point(
            name=f"{row.product.maker} {row.product.name}",
            price=float(row.price.amount),
            price_text=row.price.text,
            low=row.score.low,
            expected=row.score.expected,
            high=row.score.high,
            held_back=row.held_back,
        )
        for row in table.ranked
    )


def _ranked(desk: Desk, placed: Placed) -> RankedRow:
    product = desk.catalog.products[placed.product]
    return RankedRow(
        product=product,
        state=state(product, desk.day),
        place=place_text(placed),
        score=placed.score,
        price=price_shown(desk, placed.paid),
        weight=shown(placed.standings["weight"]),
        reading=shown(placed.standings["reading_uncertainty"]),
        detail=shown(placed.standings["detail"]),
        detail_merit=placed.merits["detail"].expected,
        running_time=shown(placed.standings["running_time"]),
        warranty=shown(placed.standings["warranty"]),
        held_back=placed.held_back,
        promised=any(link.promised for link in links(product, desk.day)),
    )


def _plain(desk: Desk, ranking: Ranking, product: Product) -> PlainRow:
    paid = ranking.prices[product.id]
    standings = ranking.standings[product.id]
    return PlainRow(
        product,
        price_shown(desk, paid) if isinstance(paid, Paid) else None,
        paid.because if isinstance(paid, Unpriced) else "",
        shown(standings["weight"]),
        shown(standings["stack"]),
    )


def price_shown(desk: Desk, paid: Paid) -> PriceShown:
    """What is paid, and the line of the price log behind it."""
    row = paid.row
    dated = row.valid_until is not None
    return PriceShown(
        text=money_text(paid.amount, paid.currency),
        amount=amount_text(paid.amount, paid.currency),
        seller=row.seller,
        kind=row.kind,
        date=row.date.isoformat(),
        until=row.valid_until.isoformat() if row.valid_until else "",
        old=not dated and paid.age_days > desk.catalog.settings.price_age_days,
        conversion="; ".join(paid.conversion),
    )
