"""One line of the price log."""

from dataclasses import FrozenInstanceError, replace
from datetime import date
from decimal import Decimal

import pytest

from spindlewise.catalog.price_row import HEADER, PriceRow

OFFER = PriceRow(
    7,
    date(2026, 11, 18),
    "brellowick-ferrowen",
    "EU",
    "EUR",
    Decimal("749.00"),
    "in",
    "offer",
    "Saltgate Post",
    date(2026, 11, 24),
    "shop page",
)


@pytest.mark.parametrize(
    ("day", "holds"),
    [
        (date(2026, 11, 17), False),  # not seen yet
        (date(2026, 11, 18), True),
        (date(2026, 11, 24), True),  # the last day counts
        (date(2026, 11, 25), False),
    ],
)
def test_an_offer_holds_from_the_day_it_was_seen_to_its_last_day(day: date, holds: bool) -> None:
    assert OFFER.in_force(day) == holds


def test_a_price_without_a_last_day_holds_on() -> None:
    assert replace(OFFER, kind="street", valid_until=None).in_force(date(2030, 1, 1))


def test_the_cells_stand_in_the_order_of_the_header() -> None:
    assert dict(zip(HEADER, OFFER.cells(), strict=True)) == {
        "date": "2026-11-18",
        "product": "brellowick-ferrowen",
        "region": "EU",
        "currency": "EUR",
        "amount": "749.00",
        "tax": "in",
        "kind": "offer",
        "seller": "Saltgate Post",
        "valid_until": "2026-11-24",
        "source": "shop page",
    }
    assert replace(OFFER, valid_until=None).cells()[8:] == ("", "shop page")
    assert replace(OFFER, amount=Decimal("1E+5")).cells()[4] == "100000"


def test_a_row_once_made_stays_as_it_is() -> None:
    with pytest.raises(FrozenInstanceError):
        OFFER.amount = Decimal(1)  # type: ignore[misc]
