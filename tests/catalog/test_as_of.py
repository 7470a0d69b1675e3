from datetime import date
from typing import Any

import pytest

from spindlewise.catalog.as_of import LinkState, links, standing_notices, state, status
from spindlewise.catalog.product import Product
from worlds import plain, product

JAN, MARCH, JUNE, SEPTEMBER = (date(2026, month, 1) for month in (1, 3, 6, 9))


def _statuses(*dated: tuple[str, date]) -> Product:
    return product("moor-peak", statuses=tuple({"state": s, "since": d, "source": "s"} for s, d in dated))


def _notice(day: date, ended: date | str) -> dict[str, Any]:
    return {"date": day, "ended": ended, "what": "w", "action": "a", "issued_by": "i"}


def _said(what: str, how: str, since: date | str, firmware: str = "not applicable") -> dict[str, Any]:
    return {"what": what, "how": how, "since": since, "firmware": firmware, "source": "s"}


def _linked(*said: dict[str, Any]) -> Product:
    return product("moor-peak", links=({"protocol": "Bluetooth", "carries": said},))


def _one(made: Product, day: date, with_promised: bool = False) -> LinkState:
    (found,) = links(made, day, with_promised)
    return found


def test_the_status_of_a_day_is_the_newest_by_then() -> None:
    made = _statuses(("current", JAN), ("superseded", JUNE))
    assert status(made, date(2025, 12, 31)) is None
    assert state(made, date(2025, 12, 31)) == "not yet sold"
    assert state(made, JAN) == state(made, date(2026, 5, 31)) == "current"
    assert state(made, JUNE) == "superseded"


def test_the_order_in_the_file_is_nothing_but_a_tie() -> None:
    assert state(_statuses(("superseded", JUNE), ("current", JAN)), SEPTEMBER) == "superseded"
    assert state(_statuses(("current", JAN), ("clearance", JAN)), JAN) == "clearance"


def test_a_notice_stands_from_its_day_until_it_is_lifted() -> None:
    made = product("moor-peak", safety_notices=(_notice(MARCH, JUNE), _notice(JUNE, "none")))
    assert standing_notices(made, JAN) == ()
    assert [n.date for n in standing_notices(made, MARCH)] == [MARCH]
    assert [n.date for n in standing_notices(made, JUNE)] == [JUNE]
    assert [n.date for n in standing_notices(made, SEPTEMBER)] == [JUNE]
    assert standing_notices(product("moor-peak"), SEPTEMBER) == ()


@pytest.mark.parametrize("made", [plain("moor-flat"), product("moor-peak", links="unknown")])
def test_a_product_without_links_has_none_on_any_day(made: Product) -> None:
    assert links(made, SEPTEMBER) == ()


def test_what_nobody_states_is_not_carried() -> None:
    found = _one(_linked(_said("balance", "carried", JAN)), MARCH)
    assert (found.power, found.balance, found.stroke_metrics) == ("none", "carried", "absent")
    assert (found.since, found.firmware, found.promised) == (None, None, ())


def test_a_statement_counts_from_its_day_and_the_newest_counts() -> None:
    made = _linked(
        _said("power", "both sides", JUNE, "2.0"),
        _said("power", "one side doubled", JAN),
        _said("balance", "carried", JUNE),
    )
    before, after = _one(made, MARCH), _one(made, JUNE)
    assert (before.power, before.balance, before.since) == ("one side doubled", "absent", JAN)
    assert (after.power, after.balance, after.since, after.firmware) == ("both sides", "carried", JUNE, "2.0")
    assert _one(made, date(2025, 1, 1)).power == "none"


def test_of_two_statements_of_one_day_the_later_listed_counts() -> None:
    made = _linked(_said("power", "one side doubled", JAN), _said("power", "two channels", JAN))
    assert _one(made, JAN).power == "two channels"


def test_what_is_promised_is_absent_unless_a_what_if_asks() -> None:
    made = _linked(_said("power", "one side doubled", JAN), _said("power", "both sides", "promised", "3.0"))
    today, some_day = _one(made, JUNE), _one(made, JUNE, with_promised=True)
    assert (today.power, today.since, len(today.promised)) == ("one side doubled", JAN, 1)
    assert (some_day.power, some_day.since, some_day.firmware) == ("both sides", None, "3.0")


@pytest.mark.parametrize(
    ("versions", "newest"),
    [
        (("2.9", "2.10"), "2.10"),
        (("2.10", "2.9"), "2.10"),
        (("unknown", "1.0"), "1.0"),
        (("unknown", "not applicable"), None),
        (("1.0b", "1.0"), "1.0"),
        (("1.²", "1.1"), "1.1"),
        (("1", "1.0.1"), "1.0.1"),
    ],
)
def test_all_of_a_link_needs_its_newest_firmware(versions: tuple[str, str], newest: str | None) -> None:
    made = _linked(
        _said("power", "both sides", JAN, versions[0]), _said("balance", "carried", JAN, versions[1])
    )
    assert _one(made, JUNE).firmware == newest
