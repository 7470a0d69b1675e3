import hashlib

import pytest

from bench import fit_bytes
from bench.sheets import meter_data, sheet_data
from spindlewise.bench.ride_files import read_ride
from spindlewise.bench.ride_sheet import RideSheet

GOOD = b"s,w\n0,200\n1,201\n"


def fit(file="hub.fit", **more):
    return {"format": "FIT", "file": file, "sha256": "unknown"} | more


def test_a_bad_file_leaves_the_others_to_be_compared(tmp_path):
    pytest.importorskip("fitdecode")
    (tmp_path / "pedals.csv").write_bytes(GOOD)
    (tmp_path / "hub.fit").write_bytes(fit_bytes.ride([190, 191]))
    (tmp_path / "spider.csv").write_bytes(b"nothing of use\n")
    meters = [meter_data(), meter_data("hub", recording=fit()), meter_data("spider"), meter_data("crank")]
    found = read_ride(RideSheet.model_validate(sheet_data(*meters)), tmp_path, "rides/a")
    assert [recording.name for recording in found.recordings] == ["pedals", "hub"]
    assert found.unread == ("spider", "crank")
    assert [(p.place.file, p.rule) for p in found.problems] == [
        ("rides/a/spider.csv", "recording-column"),
        ("rides/a/spider.csv", "recording-column"),
        ("rides/a/crank.csv", "recording-missing"),
    ]


def test_a_file_that_was_exchanged_is_not_compared(tmp_path):
    (tmp_path / "pedals.csv").write_bytes(GOOD)
    stated = hashlib.sha256(GOOD).hexdigest()
    meter = meter_data()
    meter["recording"]["sha256"] = stated
    sheet = RideSheet.model_validate(sheet_data(meter))
    assert read_ride(sheet, tmp_path, "a").problems == ()
    (tmp_path / "pedals.csv").write_bytes(GOOD.replace(b"201", b"211"))
    found = read_ride(sheet, tmp_path, "a")
    assert (found.recordings, found.unread) == ((), ("pedals",))
    assert [p.rule for p in found.problems] == ["recording-changed"]
