import numpy as np
import pytest

from spindlewise.bench.recording import implausible, recording_of


def test_a_recording_copies_what_it_is_given_and_cannot_be_written_to():
    power = np.array([200.0, 210.0])
    recording = recording_of("pedals", [0, 1], power)
    power[0] = 0
    assert recording.power_w.tolist() == [200, 210]
    with pytest.raises(ValueError, match="read-only"):
        recording.power_w[0] = 1
    assert np.isnan(recording.cadence_rpm).all()


def test_the_duration_is_from_the_first_row_to_the_last():
    assert recording_of("p", [3, 4.5], [1, 2]).duration_s == 1.5
    assert recording_of("p", [], []).duration_s == 0


def test_columns_of_unlike_length_are_refused():
    with pytest.raises(ValueError, match="the same number"):
        recording_of("pedals", [0, 1], [200])


@pytest.mark.parametrize("times", [[1, 0], [0, np.nan], [0, np.inf]])
def test_times_that_go_backwards_or_are_none_are_refused(times):
    with pytest.raises(ValueError, match="never go backwards"):
        recording_of("pedals", times, [200, 200])


def test_what_no_ride_has_is_implausible():
    assert implausible("power_w", np.array([-600.0, -20, 2500, 65535, np.inf])).tolist() == [1, 0, 0, 1, 1]
    with pytest.raises(KeyError):
        implausible("speed", np.array([1.0]))
