import struct
import sys
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from bench import fit_bytes
from spindlewise.bench import fit_recording as module
from spindlewise.bench.fit_recording import fit_recording, read_fit_recording

pytest.importorskip("fitdecode")
START = 1_000_000_000
EPOCH = datetime(1989, 12, 31, tzinfo=UTC)


def rules(problems):
    return [problem.rule for problem in problems]


def test_records_become_rows_from_the_first_time_on(tmp_path):
    path = tmp_path / "ride.fit"
    raw = fit_bytes.ride([200, 210, None, 190], cadence=[90, 91, None, 92], altitude=[3700, 3705, 3710, None])
    path.write_bytes(raw)
    recording, problems = read_fit_recording(path, "ride.fit", "pedals")
    assert problems == []
    assert recording.started_at == EPOCH + timedelta(seconds=START)
    assert recording.times_s.tolist() == [0, 1, 2, 3]
    np.testing.assert_array_equal(recording.power_w, [200, 210, np.nan, 190])
    np.testing.assert_array_equal(recording.cadence_rpm, [90, 91, np.nan, 92])
    np.testing.assert_array_equal(recording.altitude_m, [240, 241, 242, np.nan])
    assert np.isnan(recording.left_share).all()
    assert recording.name == "pedals"
    assert recording.source == "ride.fit"


def test_the_balance_is_the_left_share_only_where_the_file_says_whose_it_is():
    raw = fit_bytes.ride([200] * 4, left_right_balance=[0x80 | 48, 48, None, 0x80 | 120])
    recording, _ = fit_recording(raw, "r.fit", "pedals")
    np.testing.assert_allclose(recording.left_share, [0.52, np.nan, np.nan, np.nan])


def test_the_finer_altitude_and_cadence_are_used():
    raw = fit_bytes.ride(
        [200, 200], enhanced_altitude=[3702, 3705], cadence=[90, 91], fractional_cadence=[64, None]
    )
    recording, _ = fit_recording(raw, "r.fit", "pedals")
    np.testing.assert_allclose(recording.altitude_m, [240.4, 241.0])
    np.testing.assert_allclose(recording.cadence_rpm, [90.5, 91.0])


def test_laps_begin_with_the_row_at_their_start():
    rows = [{"timestamp": START + i, "power": 200} for i in range(10)]
    messages = fit_bytes.records(rows, ["timestamp", "power"])
    messages += fit_bytes.laps([START, START + 4, START + 500, fit_bytes.NONE["I"]])
    recording, problems = fit_recording(fit_bytes.whole(messages), "r.fit", "pedals")
    assert problems == []
    assert recording.laps_s == (4.0,)


def test_other_messages_say_nothing():
    other = struct.pack("<BBBHBBBB", 0x42, 0, 0, 0, 1, 0, 1, 0x00) + b"\x02\x04"
    rows = [{"timestamp": START + i, "power": 200} for i in range(2)]
    raw = fit_bytes.whole(other + fit_bytes.records(rows, ["timestamp", "power"]))
    recording, problems = fit_recording(raw, "r.fit", "pedals")
    assert problems == []
    assert recording.power_w.tolist() == [200, 200]


def test_a_clock_that_was_set_under_way_keeps_the_dated_rows():
    rows = [{"timestamp": 100 + i, "power": 150} for i in range(3)]
    rows += [{"timestamp": START + i, "power": 200} for i in range(5)]
    raw = fit_bytes.whole(fit_bytes.records(rows, ["timestamp", "power"]))
    recording, _ = fit_recording(raw, "r.fit", "pedals")
    assert recording.power_w.tolist() == [200] * 5
    assert recording.started_at == EPOCH + timedelta(seconds=START)


def test_a_device_that_never_knew_the_date_has_no_start():
    recording, _ = fit_recording(fit_bytes.ride([200, 201], start=500), "r.fit", "pedals")
    assert recording.started_at is None
    assert recording.times_s.tolist() == [0, 1]


def test_another_field_can_hold_the_power():
    raw = fit_bytes.ride([None, None], cadence=[200, 201])
    recording, _ = fit_recording(raw, "r.fit", "hub", power_field="cadence")
    assert recording.power_w.tolist() == [200, 201]


@pytest.mark.parametrize("raw", [b"", b"seconds,power\n0,200\n", b"\x0e\x20\x00\x00" * 5])
def test_a_file_without_the_header_is_refused(raw):
    recording, problems = fit_recording(raw, "r.fit", "pedals")
    assert recording is None
    assert [(p.level, p.rule, p.place.file) for p in problems] == [("error", "fit-header", "r.fit")]


def test_a_header_that_cannot_be_read_is_said():
    raw = bytearray(fit_bytes.ride([200, 210]))
    raw[0] = 13
    recording, problems = fit_recording(bytes(raw), "r.fit", "pedals")
    assert recording is None
    assert rules(problems) == ["fit-header", "recording-no-power"]


def test_a_truncated_file_keeps_what_is_there_and_says_so():
    raw = fit_bytes.ride([200 + i for i in range(100)])
    recording, problems = fit_recording(raw[:-350], "r.fit", "pedals")
    assert rules(problems) == ["recording-truncated"]
    assert problems[0].level == "warning"
    assert 40 < len(recording.times_s) < 60
    assert recording.power_w[0] == 200
    assert recording.problems == tuple(problems)


def test_a_wrong_checksum_is_said():
    rows = [{"timestamp": START + i, "power": 200} for i in range(3)]
    raw = fit_bytes.whole(fit_bytes.records(rows, ["timestamp", "power"]), crc=1)
    recording, problems = fit_recording(raw, "r.fit", "pedals")
    assert len(recording.times_s) == 3
    assert rules(problems) == ["fit-checksum"]


def test_damage_in_the_middle_keeps_what_came_before():
    rows = [{"timestamp": START + i, "power": 200} for i in range(5)]
    messages = fit_bytes.records(rows, ["timestamp", "power"]) + b"\x05\x00\x00\x00"
    recording, problems = fit_recording(fit_bytes.whole(messages), "r.fit", "pedals")
    assert len(recording.times_s) == 5
    assert rules(problems) == ["fit-damaged"]
    assert "5 records" in problems[0].message


def test_a_file_without_power_or_without_records_is_refused():
    recording, problems = fit_recording(fit_bytes.ride([None, None]), "r.fit", "pedals")
    assert recording is None
    assert rules(problems) == ["recording-no-power"]
    recording, problems = fit_recording(fit_bytes.whole(fit_bytes.laps([START])), "r.fit", "pedals")
    assert recording is None
    assert "no records" in problems[0].message


def test_records_without_a_time_are_no_recording():
    raw = fit_bytes.whole(fit_bytes.records([{"power": 200}] * 3, ["timestamp", "power"]))
    recording, problems = fit_recording(raw, "r.fit", "pedals")
    assert recording is None
    assert rules(problems) == ["recording-no-time"]


def test_without_the_extra_the_command_that_installs_it_is_named(monkeypatch):
    monkeypatch.setitem(sys.modules, "fitdecode", None)
    recording, problems = fit_recording(fit_bytes.ride([200, 210]), "r.fit", "pedals")
    assert recording is None
    assert problems[0].rule == "fit-reader"
    assert problems[0].tip == "pip install 'spindlewise[fit]'"


def test_a_file_that_is_not_there_is_said(tmp_path):
    recording, problems = read_fit_recording(tmp_path / "no.fit", "no.fit", "pedals")
    assert recording is None
    assert rules(problems) == ["recording-missing"]


def test_whatever_byte_is_damaged_nothing_is_raised():
    raw = fit_bytes.ride([200, 210, 220], cadence=[90, 91, 92])
    for at in range(len(raw)):
        for byte in (0, 0x40, 0x7F, 0xFF):
            damaged = raw[:at] + bytes([byte]) + raw[at + 1 :]
            recording, problems = fit_recording(damaged, "r.fit", "pedals")
            assert recording is not None or problems
        recording, problems = fit_recording(raw[:at], "r.fit", "pedals")
        assert problems


def test_a_text_where_a_number_is_expected_is_no_number():
    class Field:
        name, value, raw_value = "power", "x", "x"

    assert module._number({"power": Field}, "power") is None


def test_the_hand_made_bytes_have_the_checksum_of_the_standard():
    assert struct.unpack("<H", fit_bytes.ride([200])[-2:])[0] == fit_bytes.checksum(
        fit_bytes.ride([200])[:-2]
    )
