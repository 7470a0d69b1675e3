import worlds
from small_answers import desk
from spindlewise.answer.bench_sheet import pre_test
from spindlewise.render.as_text import as_text
from spindlewise.render.words_sheet import BLANK, sheet_blocks


def text(product, *beside: str) -> str:
    return " ".join(as_text(sheet_blocks(pre_test(product, worlds.DAY, beside)), 200).split())


def test_everything_that_a_report_would_miss_has_a_blank() -> None:
    told = text(worlds.product("some-pedal"), "spider", "crank")
    for what in (
        "Firmware", "Battery", "Zero offset, left", "Zero offset, right", "Temperature at the start",
        "Crank length set, mm", "Fitted with, N m", "Unit", "Recorder", "Ridden before",
    ):  # fmt: skip
        assert f"{what}" in told
    assert told.count(BLANK) > 25
    assert "Fit with 35 N m (bench/weighings.csv). The left pedal has a left-hand thread." in told
    assert "With looseness or play anywhere there is no ride: see a mechanic." in told
    assert "Maker's tolerance, ± 1.5 %" in told


def test_a_side_that_reads_nothing_has_no_offset_to_note() -> None:
    left = worlds.product("some-pedal", sides="left")
    assert f"Zero offset, left {BLANK} none Zero offset, right none none" in text(left, "spider")
    right = worlds.product("some-pedal", sides="right")
    assert f"Zero offset, left none none Zero offset, right {BLANK} none" in text(right, "spider")


def test_what_the_maker_asks_for_and_the_newest_firmware_are_said() -> None:
    product = desk().catalog.products["brellowick-ferrowen-2"]
    told = text(product, "hub")
    assert "The maker asks for" in told
    assert "The newest firmware in the catalog is" in told
    silent = worlds.product("some-pedal", {"fitting_torque_nm": "unknown", "tolerance_pct": "unknown"})
    assert "which the catalog does not know: ask the maker" in text(silent, "hub")
    assert f"Maker's tolerance, ± {BLANK}" in text(silent, "hub")
