from datetime import date
from typing import Any

import pytest
from pydantic import ValidationError

from spindlewise.catalog.product import ReliabilityReport
from worlds import link, plain, product

BATTERY = {"type": "AAA", "count": 2, "cell_weight_g": 11.5, "spare_prices": "unknown"}


def test_a_power_pedal_and_a_plain_one() -> None:
    assert product("moor-peak").sides == "both"
    assert product("moor-peak", battery=BATTERY, links="unknown")
    assert product("moor-peak", links="none")
    assert plain("moor-flat").links == "not applicable"
    assert plain("moor-flat").battery == "not applicable"


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        (
            {"sides": "not applicable"},
            r"a power pedal measures somewhere \| write sides: both, left or right",
        ),
        (
            {"links": "not applicable"},
            r"a power pedal sends its power somehow \| write links: unknown or none",
        ),
        ({"battery": "not applicable"}, r"a power pedal is fed by something \| write battery: unknown"),
        ({"kind": "plain pedal"}, r"a plain pedal measures nothing \| write sides: not applicable"),
        ({"kind": "plain pedal", "sides": "not applicable"}, r"a plain pedal has no link \| write links"),
        (
            {"kind": "plain pedal", "sides": "not applicable", "links": "none", "battery": BATTERY},
            r"a plain pedal has no battery \| write battery: not applicable",
        ),
    ],
)
def test_kind_sides_links_and_battery_hang_together(changes: dict[str, Any], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        product("moor-peak", **changes)


@pytest.mark.parametrize(
    "changes",
    [
        {"statuses": ()},
        {"statuses": ({"state": "sold", "since": date(2026, 1, 1), "source": "s"},)},
        {"links": (link("ANT"),)},
        {"links": ()},
        {"family": "Not an id"},
        {"tools": {"fitting": ()}},
        {"tools": {"fitting": "none"}},
        {"battery": {**BATTERY, "count": 13}},
        {"battery": {**BATTERY, "cell_weight_g": 0.0}},
        {"service": {"what": "seals", "prices": ()}},
        {"reliability": ()},
        {"safety_notices": "unknown"},
        {"safety_notices": ()},
    ],
)
def test_what_a_product_cannot_be(changes: dict[str, Any]) -> None:
    with pytest.raises(ValidationError):
        product("moor-peak", **changes)


def test_of_so_many_units_no_more_can_be_in_trouble() -> None:
    report = {
        "date": date(2026, 1, 1),
        "what": "play",
        "count": 4,
        "of_units": 4,
        "grade": "reported",
        "status": "open",
        "source": "letters",
    }
    assert ReliabilityReport.model_validate(report)
    assert ReliabilityReport.model_validate({**report, "of_units": "unknown"})
    with pytest.raises(ValidationError, match=r"5 of 4 units \| exchange them"):
        ReliabilityReport.model_validate({**report, "count": 5})
