"""price-jump: a price that more than doubles or halves against the same offer is looked at once (warning).

PASS: 899.00, then 799.00
FAIL: 899.00, then 89.90
"""

from collections.abc import Iterator, Sequence

from spindlewise.catalog.by_columns import ByColumns, Offered
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_price
from spindlewise.catalog.price_log import offered
from spindlewise.catalog.price_row import PriceRow
from spindlewise.problems import Problem
from spindlewise.units import money_text

MOST = 2
"""Times up or down. Design choice, no source: a slip of the decimal point makes ten."""


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each row whose amount is more than twice, or less than half, of the row before it of the same offer."""
    for before, row in _jumps(catalog.prices):
        told = (
            f"{money_text(row.amount, row.currency)} after {money_text(before.amount, before.currency)} "
            f"of {before.date.isoformat()} in line {before.line}"
        )
        tip = "compare with the source; append a corrected row where it is a slip"
        yield at_price(catalog, row, "amount", "price-jump", told, tip, "warning")


def _jumps(rows: Sequence[PriceRow]) -> Iterator[tuple[PriceRow, PriceRow]]:
    """Each such row and the one before it."""
    if isinstance(rows, ByColumns):
        yield from rows.jumps(MOST)
        return
    last: dict[Offered, PriceRow] = {}
    for row in sorted(rows, key=lambda r: (r.date, r.line)):
        before = last.get(offered(row))
        if before is not None and not before.amount / MOST <= row.amount <= before.amount * MOST:
            yield before, row
        last[offered(row)] = row
