import pytest
from pydantic import ValidationError

from bench.sheets import meter_data, sheet_data
from spindlewise.bench.ride_sheet import RideSheet, missing


def refused(data, told):
    with pytest.raises(ValidationError, match=told):
        RideSheet.model_validate(data)


def test_a_whole_sheet_lacks_nothing_but_what_it_says_is_unknown():
    assert missing(RideSheet.model_validate(sheet_data())) == ("meters.pedals.recording.sha256",)


def test_what_nobody_noted_is_named_by_the_meter():
    hub = meter_data(
        "hub", firmware="unknown", zero_offset={"done": "unknown", "left": "unknown", "right": 0}
    )
    sheet = RideSheet.model_validate(sheet_data(meter_data(), hub, crank_mm="unknown"))
    assert missing(sheet) == (
        "crank_mm",
        "meters.pedals.recording.sha256",
        "meters.hub.firmware",
        "meters.hub.zero_offset.done",
        "meters.hub.zero_offset.left",
        "meters.hub.recording.sha256",
    )


def test_a_sheet_that_does_not_hang_together_is_refused():
    refused(sheet_data(meter_data(), meter_data()), "two meters of one id")
    refused(sheet_data(percent_of="hub"), "percent_of names no meter")
    refused(sheet_data(meters=()), "at least 1 item")
    refused(sheet_data(standing={"state": "void", "because": "not applicable"}), "any other one does")
    refused(sheet_data(standing={"state": "counts", "because": "rain"}), "a ride that counts needs no reason")
    refused(sheet_data(mood="good"), "Extra inputs")
    refused(sheet_data(schema="spindlewise ride 2"), "spindlewise ride 1")


def test_given_segments_have_their_order_and_their_reason():
    segment = {"kind": "void", "name": "the yard", "start_s": 0, "end_s": 30, "because": "still starting"}
    sheet = RideSheet.model_validate(sheet_data(segments=(segment,)))
    assert sheet.segments[0].because == "still starting"
    refused(sheet_data(segments=(segment | {"end_s": 0},)), "ends before it begins")
    refused(sheet_data(segments=({k: v for k, v in segment.items() if k != "because"},)), "without a reason")
    assert RideSheet.model_validate(
        sheet_data(segments=(segment | {"kind": "climb", "because": "not applicable"},))
    )


def test_fit_and_csv_are_told_apart_by_their_format():
    fit = {"format": "FIT", "file": "pedals.fit", "sha256": "0" * 64}
    sheet = RideSheet.model_validate(sheet_data(meter_data(recording=fit)))
    assert sheet.meters[0].recording.power_field == "power"
    refused(sheet_data(meter_data(recording=fit | {"columns": {}})), "Extra inputs")
    refused(
        sheet_data(meter_data(recording=fit | {"format": "TXT"})), "does not match any of the expected tags"
    )
    refused(sheet_data(meter_data(recording=fit | {"file": "../pedals.fit"})), "not a plain file name")
