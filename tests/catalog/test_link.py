from datetime import date
from typing import Any

import pytest
from pydantic import ValidationError

from spindlewise.catalog.link import CARRIED_WAYS, POWER_WAYS, Carried, Link


def _said(what: str, how: str, since: Any = date(2026, 1, 1)) -> Carried:
    return Carried.model_validate(
        {"what": what, "how": how, "since": since, "firmware": "not applicable", "source": "bench"}
    )


@pytest.mark.parametrize("how", sorted({*POWER_WAYS, *CARRIED_WAYS}))
def test_power_goes_in_ways_of_its_own(how: str) -> None:
    for what, ways in (("power", POWER_WAYS), ("balance", CARRIED_WAYS), ("stroke metrics", CARRIED_WAYS)):
        if how in ways:
            assert _said(what, how).how == how
        else:
            with pytest.raises(
                ValidationError, match=f"{what} cannot be '{how}' \\| write one of: {ways[0]}"
            ):
                _said(what, how)


def test_a_promise_has_no_day() -> None:
    assert _said("power", "both sides", "promised").since == "promised"
    for since in ("soon", "2026-01-01", 2026):
        with pytest.raises(ValidationError):
            _said("power", "both sides", since)


def test_a_link_carries_something_over_a_known_protocol() -> None:
    assert Link(protocol="ANT+", carries=(_said("power", "none"),))
    with pytest.raises(ValidationError):
        Link(protocol="ANT+", carries=())
    with pytest.raises(ValidationError):
        Link.model_validate({"protocol": "ANT", "carries": (_said("power", "none"),)})
