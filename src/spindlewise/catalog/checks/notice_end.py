"""notice-end: a safety notice is not lifted before it was issued.

PASS: `date: 2025-06-02` with `ended: 2025-08-29`, or `ended: none`
FAIL: `date: 2025-06-02` with `ended: 2024-08-29`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each notice that ended before its own day."""
    for product in catalog.products.values():
        notices = product.safety_notices
        for index, notice in enumerate(() if isinstance(notices, str) else notices):
            if not isinstance(notice.ended, str) and notice.ended < notice.date:
                told = f"{notice.ended.isoformat()} lies before the notice itself ({notice.date.isoformat()})"
                path = ("safety_notices", index, "ended")
                yield at_value(
                    catalog, product.id, path, "notice-end", told, "correct one of the days, or write none"
                )
