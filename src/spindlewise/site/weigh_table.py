"""The ranking that stands in the page before, or without, its script: the usual weighting of one region."""

from dataclasses import dataclass

from spindlewise.answer.break_evens import BreakEvens, break_evens
from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Placed, Ranking, Span, rank
from spindlewise.render.naming import naming
from spindlewise.render.words_rank import first_at_words, weights_words
from spindlewise.site.places import place_text
from spindlewise.site.region_table import price_shown
from spindlewise.site.shown import Shown, shown
from spindlewise.site.usual import usual_buyer
from spindlewise.units import points_text


@dataclass(frozen=True, slots=True)
class EarnedCell:
    """What a product earns on one criterion: `earned` of `most` points, and the figure behind it."""

    title: str
    figure: Shown
    small: str
    earned: str
    most: str
    room: float
    """How long the bar of `most` is, in percent of the longest one of the table."""
    filled: float
    """How much of the bar is filled, in percent of it."""


@dataclass(frozen=True, slots=True)
class WeighRow:
    """One place of the table."""

    product: str
    name: str
    maker: str
    place: str
    held_back: bool
    score: Span
    price: str
    price_small: str
    cells: tuple[EarnedCell, ...]
    first_at: str


@dataclass(frozen=True, slots=True)
class WeighTable:
    """The whole table; `columns` are the titles of the criteria weighed, price among them."""

    region: str
    currency: str
    counts: str
    columns: tuple[str, ...]
    rows: tuple[WeighRow, ...]


def weigh_table(desk: Desk, region: str) -> WeighTable:
    """The usual buyer's ranking; raises NoMarket where the region cannot be served."""
    buyer = usual_buyer(desk.catalog, region)
    ranking = rank(desk, buyer)
    even = break_evens(desk, ranking)
    criteria = ranking.weighed.criteria
    return WeighTable(
        region=region,
        currency=buyer.currency,
        counts=weights_words(ranking, naming(desk.catalog)),
        columns=tuple(desk.yardstick.titles[name] for name in criteria),
        rows=tuple(_row(desk, ranking, even, placed) for placed in ranking.placed),
    )


def _row(desk: Desk, ranking: Ranking, even: BreakEvens, placed: Placed) -> WeighRow:
    product = desk.catalog.products[placed.product]
    price = price_shown(desk, placed.paid)
    found = even.against_leader.get(placed.product)
    until = f" until {price.until}" if price.until else f", old: {price.date}" if price.old else ""
    small = f"{price.kind}{until}"
    shares = ranking.weighed.by_name
    longest = max(shares.values())
    cells = []
    for name, share in shares.items():
        merit = placed.merits[name].expected
        figure = shown(placed.standings[name])
        is_price = name == "price"
        cells.append(
            EarnedCell(
                title=desk.yardstick.titles[name],
                figure=Shown(price.text, "", figure.origin, "") if is_price else figure,
                small=small if is_price else "",
                earned=points_text(100 * share * merit),
                most=points_text(100 * share),
                room=100 * share / longest,
                filled=100 * merit,
            )
        )
    return WeighRow(
        product=product.id,
        name=product.name,
        maker=product.maker,
        place=place_text(placed),
        held_back=placed.held_back,
        score=placed.score,
        price=price.text,
        price_small=small,
        cells=tuple(cells),
        first_at=first_at_words(found, placed.paid.currency) if found else "stands first",
    )
