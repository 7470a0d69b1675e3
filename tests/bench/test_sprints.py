import numpy as np
import pytest

from spindlewise.bench.alignment import align
from spindlewise.bench.sprints import centred_means, find_sprints, sprint_readings
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

PLAN = [
    Stretch(600, 180),
    Stretch(12, 850, 110),
    Stretch(10, 0, 0),
    Stretch(300, 170),
    Stretch(12, 900),
    Stretch(200, 150),
]


def test_sprints_are_found_where_they_are():
    power = record(ride(PLAN, 3), Meter("a", noise_w=4), 3).power_w
    assert np.array(find_sprints(power)) == pytest.approx(np.array([[600, 612], [922, 934]]), abs=3)


def test_hard_riding_is_no_sprint():
    power = np.concatenate((np.full(600, 150.0), np.full(120, 500.0), np.full(300, 150.0)))
    assert find_sprints(power) == ()
    assert find_sprints(np.zeros(60)) == ()
    assert find_sprints(np.full(60, np.nan)) == ()
    assert find_sprints(np.array([100.0, 100.0])) == ()


def test_a_breath_within_a_sprint_is_ridden_through():
    power = np.concatenate(
        (np.full(100, 150.0), np.full(6, 800.0), np.full(4, 200.0), np.full(6, 800.0), np.full(60, 150.0))
    )
    assert len(find_sprints(power)) == 1


def test_the_delay_and_the_best_seconds_of_each_recording():
    truth = ride(PLAN, 3, variability=0.03)
    prompt = record(truth, Meter("prompt", noise_w=2), 3)
    slow = record(truth, Meter("slow", noise_w=2, scale=0.97, late_s=0.8), 3)
    power = np.array([prompt.power_w[1:], slow.power_w])
    one, two = sprint_readings(prompt.times_s[1:], power, ("prompt", "slow"), 0, 600, 612)
    assert one.delay_s == 0
    assert two.delay_s == pytest.approx(0.8, abs=0.25)
    assert one.onset_s == pytest.approx(601, abs=1)
    assert one.best_w[0] >= one.best_w[1] >= one.best_w[2]
    assert two.best_w[1] / one.best_w[1] == pytest.approx(0.97, abs=0.01)


def test_a_lost_sprint_has_no_moment():
    truth = ride(PLAN, 3)
    a = record(truth, Meter("a", noise_w=2), 3)
    b = record(truth, Meter("b", noise_w=2, dropouts=(Dropout(580, 45, "missing"),)), 3)
    c = record(truth, Meter("c", noise_w=2, dropouts=(Dropout(598, 26),)), 3)
    aligned = align([a, b, c], "a")
    _, missing, zero = sprint_readings(aligned.seconds, aligned.power_w, aligned.names, 0, 600, 612)
    assert (missing.onset_s, missing.delay_s, missing.best_w) == (None, None, (None, None, None))
    assert zero.onset_s is None
    turned = sprint_readings(aligned.seconds, aligned.power_w, aligned.names, 1, 600, 612)
    assert (turned[0].onset_s is None, turned[0].delay_s) == (False, None)


def test_a_sprint_from_the_first_second_has_no_before():
    power = np.array([[800.0] * 10 + [150.0] * 20])
    assert sprint_readings(np.arange(30.0), power, ("a",), 0, 0, 10)[0].onset_s is None


def test_a_fall_alone_is_no_moment():
    power = np.array([[900.0] * 5 + [100.0] * 25])
    assert sprint_readings(np.arange(30.0), power, ("a",), 0, 12, 18)[0].onset_s is None


def test_means_need_all_their_seconds():
    means = centred_means(np.array([1.0, 1, 1, np.nan, 1, 1, 1]), 3)
    assert np.isfinite(means).tolist() == [False, True, False, False, False, True, False]
    assert np.isnan(centred_means(np.array([1.0]), 3)).all()
