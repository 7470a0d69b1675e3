import pytest

from bench.sheets import meter_data, sheet_data
from spindlewise.answer.bench_noted import noted_words
from spindlewise.bench.ride_sheet import RideSheet, missing

SINGLE = (
    "unit",
    "ridden_km",
    "firmware",
    "battery",
    "crank_set_mm",
    "fitted_nm",
    "tolerance_pct",
    "recorder",
)
OFFSETS = ("done", "left", "right")
UNKNOWN = {**dict.fromkeys(SINGLE, "unknown"), "zero_offset": dict.fromkeys(OFFSETS, "unknown")}
RIDE = dict.fromkeys(("temperature_start_c", "temperature_end_c", "crank_mm"), "unknown")


def test_whatever_a_sheet_may_lack_has_words():
    sheet = RideSheet.model_validate(sheet_data(meter_data(**UNKNOWN), **RIDE))
    paths = missing(sheet)
    assert len(paths) == 15
    for path in paths:
        words = noted_words(path)
        assert "_" not in words
        assert words.endswith("(pedals)") == path.startswith("meters.")


@pytest.mark.parametrize("path", ["something_new", "meters.hub", "meters.hub.new_thing"])
def test_what_has_no_words_keeps_its_name(path):
    assert path.split(".")[-1] in noted_words(path)
