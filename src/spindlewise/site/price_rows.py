"""A product's price history: each line of the log by the day, whether it holds, and each fall seen."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.price_log import newest, offered, price_falls
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.price_rows import rows_of
from spindlewise.units import money_text, percent_text


@dataclass(frozen=True, slots=True)
class PriceLine:
    """One line of the log; `fall` is empty unless the same offer was seen at a higher price before."""

    date: str
    price: str
    amount: str
    tax: str
    kind: str
    seller: str
    until: str
    state: str
    """`in force`, `expired` or `replaced`."""
    fall: str
    source: str


@dataclass(frozen=True, slots=True)
class RegionPrices:
    """The history in one region, newest first."""

    code: str
    name: str
    lines: tuple[PriceLine, ...]


def region_prices(catalog: Catalog, product: str, day: date) -> tuple[RegionPrices, ...]:
    """The history of one product in every region in which a price of it was seen by the day."""
    own = [row for row in rows_of(catalog.prices, product) if row.date <= day]
    found = []
    for code, facts in catalog.settings.regions.items():
        rows = [row for row in own if row.region == code]
        if rows:
            found.append(RegionPrices(code, facts.name, _lines(rows, code, day)))
    return tuple(found)


def _lines(rows: Sequence[PriceRow], region: str, day: date) -> tuple[PriceLine, ...]:
    standing = newest(rows, region, day)
    falls = {fall.now.line: fall for fall in price_falls(rows, region, date.min, day)}
    lines = []
    for row in sorted(rows, key=lambda r: (r.date, r.line), reverse=True):
        fall = falls.get(row.line)
        said = ""
        if fall:
            said = (
                f"{money_text(fall.by, row.currency)} less ({percent_text(fall.share_pct)}) "
                f"than the {money_text(fall.before.amount, row.currency)} seen on {fall.before.date}"
            )
        lines.append(_line(row, standing[offered(row)], day, said))
    return tuple(lines)


def _line(row: PriceRow, standing: PriceRow, day: date, fall: str) -> PriceLine:
    state = "replaced" if standing is not row else "in force" if row.in_force(day) else "expired"
    return PriceLine(
        date=row.date.isoformat(),
        price=money_text(row.amount, row.currency),
        amount=f"{row.amount:f}",
        tax=row.tax,
        kind=row.kind,
        seller=row.seller,
        until=row.valid_until.isoformat() if row.valid_until else "",
        state=state,
        fall=fall,
        source=row.source,
    )
