from datetime import date

import pytest

import worlds
from spindlewise.answer.bench_sheet import KINDS, pre_test
from spindlewise.catalog.figure import Absent, Known


def link(firmware: str, since: str):
    carried = {"what": "power", "how": "both sides", "since": date.fromisoformat(since), "firmware": firmware}
    return {"protocol": "ANT+", "carries": ({**carried, "source": "bench"},)}


def test_what_the_maker_says_is_filled_in() -> None:
    found = pre_test(worlds.product("some-pedal"), worlds.DAY, ["hub"])
    assert isinstance(found.torque, Known)
    assert isinstance(found.tolerance, Known)
    assert (found.torque.value, found.tolerance.value, found.side) == (35.0, 1.5, "both")
    assert (found.beside, found.firmware) == (("hub",), "")


def test_what_nobody_says_stays_absent() -> None:
    silent = worlds.product(
        "some-pedal",
        {"fitting_torque_nm": "unknown", "tolerance_pct": "unknown"},
        links="unknown",
        sides="left",
    )
    found = pre_test(silent, worlds.DAY, ["spider"])
    assert isinstance(found.torque, Absent)
    assert isinstance(found.tolerance, Absent)
    assert found.side == "left doubled"


def test_the_newest_firmware_that_has_arrived_is_the_hint() -> None:
    links = (link("1.2", "2026-01-01") | {"protocol": "Bluetooth"}, link("1.3", "2026-05-01"))
    pedal = worlds.product("some-pedal", links=links)
    assert pre_test(pedal, worlds.DAY, ["hub"]).firmware == "1.3"
    assert pre_test(pedal, date(2026, 3, 1), ["hub"]).firmware == "1.2"


@pytest.mark.parametrize("beside", [[], ["wheel"], ["hub", "watch"]])
def test_only_kinds_of_meter_stand_beside_it(beside: list[str]) -> None:
    with pytest.raises(ValueError, match=", ".join(KINDS)):
        pre_test(worlds.product("some-pedal"), worlds.DAY, beside)


def test_a_plain_pedal_reads_nothing() -> None:
    with pytest.raises(ValueError, match="is a plain pedal"):
        pre_test(worlds.plain("some-pedal"), worlds.DAY, ["hub"])
