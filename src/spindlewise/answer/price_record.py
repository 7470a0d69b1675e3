"""What a product has cost: every observed price with its state on a day and the price before it."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Literal

from spindlewise.catalog.price_log import offered
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.price_rows import rows_of

State = Literal["in force", "expired", "replaced"]


@dataclass(frozen=True, slots=True)
class PriceLine:
    """One observation: whether it still holds, and the observation of the same offer just before it."""

    row: PriceRow
    state: State
    before: PriceRow | None


def price_record(rows: Iterable[PriceRow], product: str, day: date) -> tuple[PriceLine, ...]:
    """All prices of the product seen by the day, in order of date; nothing dated later is seen.

    A price is replaced by a newer one of the same offer, and a fall is told only against such a one: same
    region, seller, kind, currency and tax basis.
    """
    seen = [row for row in rows_of(rows, product) if row.date <= day]
    seen.sort(key=lambda row: (row.date, row.line))
    last: dict[tuple[str, ...], PriceRow] = {}
    before: list[PriceRow | None] = []
    for row in seen:
        key = (row.region, *offered(row))
        before.append(last.get(key))
        last[key] = row
    standing = list(last.values())
    return tuple(
        PriceLine(row, _state(row, standing, day), earlier) for row, earlier in zip(seen, before, strict=True)
    )


def _state(row: PriceRow, standing: list[PriceRow], day: date) -> State:
    if not any(row is newest for newest in standing):
        return "replaced"
    return "in force" if row.in_force(day) else "expired"
