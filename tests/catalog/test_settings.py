from datetime import date
from typing import Any

import pytest
from pydantic import ValidationError

from small_catalog import GOOD
from spindlewise.catalog.reading import read_record
from spindlewise.catalog.settings import Settings

RIGHT: dict[str, Any] = {
    "schema": "spindlewise catalog 1",
    "title": "Test",
    "invented": "no",
    "as_of": "today",
    "regions": {"EU": {"name": "Union", "currency": "EUR"}},
    "price_age_days": 120,
    "cautions": ("Small steps.",),
}


def test_a_catalog_may_pin_its_day() -> None:
    settings, _, problems = read_record(Settings, GOOD / "catalog.yaml")
    assert problems == []
    assert settings is not None
    assert settings.as_of == date(2026, 11, 20)
    assert settings.regions["JP"].currency == "JPY"
    assert Settings.model_validate(RIGHT).as_of == "today"


@pytest.mark.parametrize(
    "changes",
    [
        {"schema": "spindlewise catalog 2"},
        {"as_of": "tomorrow"},
        {"regions": {}},
        {"regions": {"eu": {"name": "Union", "currency": "EUR"}}},
        {"regions": {"EU": {"name": "Union", "currency": "EUX"}}},
        {"regions": {"EU": {"name": "Union", "currency": "EUR", "tax": 20}}},
        {"price_age_days": 0},
        {"price_age_days": 1.5},
        {"cautions": ()},
        {"title": ""},
    ],
)
def test_what_a_catalog_cannot_be(changes: dict[str, Any]) -> None:
    with pytest.raises(ValidationError):
        Settings.model_validate({**RIGHT, **changes})
