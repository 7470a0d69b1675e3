"""The sheet is read without an error as it stands, and lacks what nobody has noted yet."""

import pytest

import worlds
from small_answers import desk
from spindlewise.answer.bench_sheet import KINDS, pre_test
from spindlewise.bench.ride_sheet import RideSheet, missing
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.render.yaml_sheet import meter_ids, sheet_yaml


def read(product, *beside: str) -> tuple[RideSheet, str]:
    text = sheet_yaml(pre_test(product, worlds.DAY, beside))
    document, problems = read_yaml_text(text, "ride.yaml")
    assert problems == []
    assert document is not None
    sheet, problems = validate(RideSheet, document)
    assert problems == []
    assert sheet is not None
    return sheet, text


def test_every_power_pedal_of_a_catalog_has_a_sheet() -> None:
    pedals = [p for p in desk().catalog.products.values() if p.kind == "power pedal"]
    assert len(pedals) > 3
    for product in pedals:
        sheet, _ = read(product, "spider", "hub")
        assert sheet.meters[0].product == product.id
        assert sheet.percent_of == "spider"
        lacking = missing(sheet)
        for key in ("firmware", "battery", "zero_offset.done", "crank_set_mm", "fitted_nm"):
            assert f"meters.pedals.{key}" in lacking, (product.id, key)
        assert {"temperature_start_c", "crank_mm"} <= set(lacking)


@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_may_stand_beside_it(kind: str) -> None:
    sheet, _ = read(worlds.product("some-pedal"), kind, kind)
    assert [meter.what for meter in sheet.meters] == ["pedals", kind, kind]


def test_two_of_a_kind_have_two_ids() -> None:
    begun = pre_test(worlds.product("some-pedal"), worlds.DAY, ["hub", "pedals", "hub", "hub"])
    assert meter_ids(begun) == ("pedals", "hub", "pedals-2", "hub-2", "hub-3")


def test_what_the_maker_says_stands_as_a_remark() -> None:
    _, text = read(worlds.product("some-pedal"), "hub")
    assert "# The maker says 35 N m (bench/weighings.csv). Write what you used." in text
    assert "tolerance_pct: 1.5" in text
    _, text = read(
        worlds.product("some-pedal", {"fitting_torque_nm": "unknown", "tolerance_pct": "unknown"}), "hub"
    )
    assert "# The maker's torque is not known: ask the maker." in text


def test_a_left_pedal_has_no_right_offset() -> None:
    left, _ = read(worlds.product("some-pedal", sides="left"), "hub")
    assert (left.meters[0].side, left.meters[0].zero_offset.right) == ("left doubled", "not applicable")
    right, _ = read(worlds.product("some-pedal", sides="right"), "hub")
    assert right.meters[0].zero_offset.left == "not applicable"


def test_odd_names_and_long_ids_do_no_harm() -> None:
    sheet, _ = read(
        worlds.product("a" * 60).model_copy(update={"name": "Off: #1 'x'", "maker": "- Works"}), "hub"
    )
    assert sheet.title == "- Works Off: #1 'x' beside hub"
    assert len(sheet.id) <= 60
