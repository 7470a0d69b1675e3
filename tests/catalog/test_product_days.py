from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

import worlds
from spindlewise.catalog.product_days import product_days, stretch


def test_every_date_of_a_record_counts_however_deep() -> None:
    notice = {
        "date": date(2026, 3, 1), "ended": date(2026, 4, 1), "what": "It cracks.", "action": "Stop.",
        "issued_by": "maker",
    }  # fmt: skip
    found = product_days(worlds.product("heron", safety_notices=(notice,)))
    assert found == (date(2025, 1, 1), date(2026, 1, 10), date(2026, 3, 1), date(2026, 4, 1))


DAYS = st.dates(date(2026, 1, 1), date(2026, 3, 1))


@given(st.sets(DAYS, max_size=6), DAYS, DAYS)
def test_days_of_one_stretch_lie_alike_to_every_date(dates: set[date], one: date, other: date) -> None:
    """Both after a date's beginning or neither, both past its end or neither: so every entry holds alike."""
    days = tuple(sorted(dates))
    alike = all((d <= one, d < one) == (d <= other, d < other) for d in days)
    assert (stretch(days, one) == stretch(days, other)) is alike
    assert stretch((), one) == stretch((), one + timedelta(1)) == (0, 0)
